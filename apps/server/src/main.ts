import { runVerb } from './cli/verbs.ts';

// The exit code is set and not forced, so that what was written to a pipe is read to its end; `serve` leaves nothing open.
process.exitCode = await runVerb(process.argv.slice(2));
