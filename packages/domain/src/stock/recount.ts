import { requireWhole, MAX_UNITS } from '../kernel/input.ts';

/** What a recount says against what the ledger thought: units up are found, units down unexplained, whatever the cause. */
export type Recount = { kind: 'found' | 'unexplained'; units: number } | { kind: 'as-expected' };

/** Whole units, 0 to MAX_UNITS. Throws InputError naming the argument otherwise. */
export function recount(expectedUnits: number, countedUnits: number): Recount {
  const change =
    requireWhole('countedUnits', countedUnits, 0, MAX_UNITS) -
    requireWhole('expectedUnits', expectedUnits, 0, MAX_UNITS);
  if (change === 0) return { kind: 'as-expected' };
  return change > 0 ? { kind: 'found', units: change } : { kind: 'unexplained', units: -change };
}
