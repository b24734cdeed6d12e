// Every npm script enters here, with nothing installed yet. This file uses no syntax or import that an old Node
// would stumble over, so that the answer to an old Node is a sentence and not a stack trace.
const version = process.versions.node.split('.').map(Number);
const oldEnough = version[0] > 20 || (version[0] === 20 && version[1] >= 19);

if (!oldEnough) {
  console.error(
    'Rootclock needs Node 20.19 or newer; this is Node ' +
      process.versions.node +
      ' (' +
      process.execPath +
      ').\n' +
      'Install a current Node from your system or from nodejs.org and run the same command again.',
  );
  process.exit(1);
}

import('./commands.mjs')
  .then(function (commands) {
    return commands.run(process.argv.slice(2));
  })
  .catch(function (error) {
    // A refusal carries its own sentence; anything else is a fault of ours and needs its stack.
    console.error(error && error.refusal ? 'Rootclock: ' + error.message : error);
    process.exitCode = 1;
  });
