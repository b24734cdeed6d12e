// `npm test`: everything that must be green, one after the other, and one line at the end that counts it all.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { nodeTool, start } from './child.mjs';

const staticChecks = [
  ['types', ['node_modules', 'typescript', 'bin', 'tsc'], ['-p', '.', '--noEmit']],
  ['lint', ['node_modules', 'oxlint', 'bin', 'oxlint'], ['--deny-warnings']],
];

const run = async ([node, tool], args) =>
  start(node, [tool, ...args], { stdio: ['ignore', 'inherit', 'inherit'] }).ended;

/**
 * Counts what vitest wrote down. A file that could not be loaded has no tests of its own and counts as one failure; so
 * does a run that failed without a failed test (a fault outside any test), left nothing to read, or skipped a test.
 */
function tally(report, exitCode) {
  const files = report?.testResults ?? [];
  const of = (status) => files.flatMap((file) => file.assertionResults).filter((test) => status(test.status)).length;
  const passed = of((status) => status === 'passed');
  const unloaded = files.filter((file) => file.status === 'failed' && file.assertionResults.length === 0).length;
  const failed = of((status) => status !== 'passed') + unloaded;
  const silent = failed === 0 && (exitCode !== 0 || passed === 0) ? 1 : 0;
  return { passed, failed: failed + silent };
}

async function runVitest(args) {
  const folder = mkdtempSync(path.join(tmpdir(), 'rootclock-report-'));
  // At the exit, since a signal ends this process in the middle of the run.
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  const file = path.join(folder, 'report.json');
  const code = await run(nodeTool('node_modules', 'vitest', 'vitest.mjs'), [
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${file}`,
    ...args,
  ]);
  let report;
  try {
    report = JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    // Nothing was written: the tally counts that as a failure.
  }
  return tally(report, code);
}

/** Runs all checks, or with arguments the static checks and those tests alone. Answers the exit code. */
export async function runSuite(args) {
  let passed = 0;
  let failed = 0;
  for (const [name, tool, toolArgs] of staticChecks) {
    const code = await run(nodeTool(...tool), toolArgs);
    console.log(`${code === 0 ? 'passed' : 'FAILED'}: ${name}`);
    if (code === 0) passed += 1;
    else failed += 1;
  }
  const tests = await runVitest(args);
  passed += tests.passed;
  failed += tests.failed;
  console.log(`${passed} passed, ${failed} failed`);
  return failed === 0 && tests.passed > 0 ? 0 : 1;
}
