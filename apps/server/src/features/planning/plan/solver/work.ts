// What runs in the worker thread: it reckons one plan after the other, so that no request of the server waits for arithmetic.
import { parentPort } from 'node:worker_threads';
import { type PlanFacts, productionPlan } from '@rootclock/domain';
import { createSolver } from './highs.ts';
import type { Asked, Told } from './messages.ts';

const port = parentPort;
if (!port) throw new Error('this file is the inside of a worker thread');
const solver = createSolver();
const tell = (told: Told) => port.postMessage(told);

async function reckon(facts: PlanFacts): Promise<Told> {
  try {
    return { plan: await productionPlan(facts, await solver), error: null };
  } catch (error) {
    return { plan: null, error: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}

port.on('message', ({ facts }: Asked) => void reckon(facts).then(tell));
await solver;
tell('ready');
