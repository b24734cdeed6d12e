import type { PlanFacts, ProductionPlan } from '@rootclock/domain';

/** What the worker thread is asked, one at a time. */
export interface Asked {
  facts: PlanFacts;
}

/** What it tells: once that it is ready, and then an answer to each question. */
export type Told = 'ready' | { plan: ProductionPlan; error: null } | { plan: null; error: string };
