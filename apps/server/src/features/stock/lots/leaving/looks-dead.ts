import { type LossCause, looksDeadTooSoon } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import type { LotFacts } from '../store.ts';

/** Asks once more before plants are written off that may only be dormant: many milkweeds come up late in spring. */
export function askIfDormant(
  lots: readonly LotFacts[],
  { cause, happenedOn, confirmed }: { cause: LossCause; happenedOn: string; confirmed: boolean },
  field = 'cause',
): void {
  if (cause !== 'looks-dead' || confirmed) return;
  const dormant = lots.find(({ dormantMonths, lastEmergenceMd }) =>
    looksDeadTooSoon({ dormantMonths, lastEmergenceMd, on: happenedOn }),
  );
  if (dormant)
    refuse('may-be-dormant', { plant: dormant.scientificName, lastEmergenceMd: dormant.lastEmergenceMd }, field);
}
