import type { PlanFacts, ProductionPlan } from '@rootclock/domain';
import { Refusal } from '../../../../refusal.ts';
import { Thread } from '../../../../thread/thread.ts';

/** As long as a person waits for a plan, from when it is begun. */
const PATIENCE_MS = 20_000;

/** Reckons plans in a worker thread, one after the other. Refuses with `plan-takes-too-long` what does not answer in time. */
export class Planner extends Thread<PlanFacts, ProductionPlan> {
  constructor(patienceMs = PATIENCE_MS) {
    super({
      entry: new URL('./entry.mjs', import.meta.url),
      patienceMs,
      tooLong: (seconds) => new Refusal('plan-takes-too-long', { seconds }),
    });
  }
}

/** One thread a process, kept warm between plans. */
export const planner = new Planner();
