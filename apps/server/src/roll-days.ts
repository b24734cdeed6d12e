import type { FastifyInstance } from 'fastify';
import { DayTimer, type DayTimerParts } from './db/day-timer.ts';
import { later } from './later.ts';

/** Rolls the day of every nursery for as long as the server runs, also where nobody writes. */
export function rollDays(app: FastifyInstance, parts: Pick<DayTimerParts, 'database' | 'runner'>): void {
  const timer = new DayTimer({
    ...parts,
    after: later,
    chance: Math.random,
    failed: (error) => app.log.warn({ err: error }, 'a day could not be rolled, and is tried again'),
  });
  app.addHook('onReady', () => timer.start());
  app.addHook('preClose', () => timer.stop());
}
