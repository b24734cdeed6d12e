// What runs in each worker thread that solves large scopes.
import { setPriority } from 'node:os';
import { answerQuestions } from '../../../thread/answering.ts';
import { type Reckoning, reckonings } from './reckonings.ts';

const LOW_PRIORITY = 5;

// On Linux this holds for the one thread that asks; elsewhere it would slow down the whole server.
if (process.platform === 'linux') setPriority(LOW_PRIORITY);

answerQuestions(({ name, asked }: Reckoning): unknown => (reckonings[name] as (asked: unknown) => unknown)(asked));
