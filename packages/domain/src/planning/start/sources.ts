import type { CalendarDate } from '../../kernel/dates.ts';
import { compareText } from '../../kernel/text.ts';
import type { PropagationMethod } from '../../propagation/words.ts';
import { seedCautions } from '../../sources/seed-cautions.ts';
import { SEED_KINDS } from '../../sources/seed-words.ts';
import type { SourceKind } from '../../sources/source-words.ts';
import type { PlanPlant, PlanSource } from './facts.ts';

/** What a source has to be like for those who are served from it. */
export interface SourceWish {
  seedZone: string | null;
  wildType: boolean;
}

const MOTHER_KINDS: readonly SourceKind[] = ['mother-plants', 'in-ground-bed', 'unknown'];

/** Sources that a method can take from: seed from seed, cuttings and divisions from plants. */
export const kindsFor = (method: PropagationMethod): readonly SourceKind[] =>
  method === 'seed' ? SEED_KINDS : MOTHER_KINDS;

/** Sources of the plant that fit a method and what is asked of them, whatever is left of them. */
export function sourcesFor(
  sources: readonly PlanSource[],
  plant: PlanPlant,
  method: PropagationMethod,
  { seedZone, wildType }: SourceWish,
): PlanSource[] {
  return sources.filter(
    (source) =>
      source.plantId === plant.id &&
      kindsFor(method).includes(source.kind) &&
      (seedZone === null || source.seedZone === seedZone) &&
      (!wildType || (source.origin === 'wild' && !plant.isCultivar)),
  );
}

/** Whether seed that must be sown fresh can still be sown on a day. */
export const isFreshOn = (source: PlanSource, on: CalendarDate): boolean =>
  !seedCautions(
    { sowFresh: source.sowFresh, neverDry: false, storage: null, gatheredOn: source.gatheredOn, storedOn: null },
    on,
  ).includes('sow-fresh-passed');

/**
 * The best source first: one that is known to hold something before one that was never weighed, the latest gathered before older ones, then by code.
 * `leftOf` says what is left when earlier lines of the plan have taken theirs.
 */
export function inOrderOfUse(
  sources: readonly PlanSource[],
  leftOf: (source: PlanSource) => number | null,
): PlanSource[] {
  const rank = (source: PlanSource) => {
    const left = leftOf(source);
    return left === null ? 1 : left > 0 ? 0 : 2;
  };
  return [...sources].sort(
    (a, b) =>
      rank(a) - rank(b) ||
      compareText(b.gatheredOn ?? '', a.gatheredOn ?? '') ||
      compareText(a.code, b.code) ||
      compareText(a.id, b.id),
  );
}
