import { type CalendarDate, daysBetween } from '../kernel/dates.ts';
import type { SeedStorage } from './seed-words.ts';

/** 'sow-fresh-passed': such seed loses its life within days, and those have gone by. 'never-dry-stored-dry': it dies where it lies. */
export type SeedCaution = 'sow-fresh-passed' | 'never-dry-stored-dry';

/** Days for which seed that is to be sown fresh is taken to keep. Common practice says days; a fortnight is our own setting. */
export const SOW_FRESH_DAYS = 14;

export interface SeedKeeping {
  sowFresh: boolean;
  neverDry: boolean;
  storage: SeedStorage | null;
  /** The earliest possible day of gathering, or null where nobody knows. */
  gatheredOn: CalendarDate | null;
  storedOn: CalendarDate | null;
}

const KEEPS_MOIST: readonly (SeedStorage | null)[] = ['cold-moist', null];

/** What is to be said of seed before it is sown. Age counts from gathering, else from storing; seed of unknown age raises nothing for it. */
export function seedCautions(
  { sowFresh, neverDry, storage, gatheredOn, storedOn }: SeedKeeping,
  today: CalendarDate,
): SeedCaution[] {
  const since = gatheredOn ?? storedOn;
  return [
    ...(sowFresh && since !== null && daysBetween(since, today) > SOW_FRESH_DAYS
      ? (['sow-fresh-passed'] as const)
      : []),
    ...(neverDry && !KEEPS_MOIST.includes(storage) ? (['never-dry-stored-dry'] as const) : []),
  ];
}
