import { InputError } from '../kernel/input.ts';
import { compareText } from '../kernel/text.ts';
import { type HabitFacts, type HabitTrait, type SharedHabit, sharedHabit, untoldTraits } from './habit.ts';
import { rulesReaching, SUBSTITUTION_KINDS, type SubstitutionKind, type SubstitutionRule } from './rules.ts';

export interface SubstitutePlant extends HabitFacts {
  plantId: string;
  scientificName: string;
  genus: string;
  /** Regions to which it is known to be native. */
  nativeRegions: readonly string[];
}

/** A plant in a container that the nursery has or grows. */
export interface SubstituteItem {
  plantId: string;
  containerId: string;
}

export interface SubstituteQuestion {
  asked: SubstituteItem;
  rules: readonly SubstitutionRule[];
  /** The plant asked for and all that might stand in for it. */
  plants: readonly SubstitutePlant[];
  /** What can be had: pots of the asked one's kind, since nobody plants out of a tray what was ordered in a pot. */
  items: readonly SubstituteItem[];
  /** Of the site; null where it names none, and then nothing is known to be native to it. */
  region: string | null;
  nativesOnly: boolean;
}

export interface AlternativeByRule extends SubstituteItem {
  penalty: number;
  ruleId: string;
  kind: SubstitutionKind;
  /** What it shares with the plant asked for; set for `same-habit` alone. */
  shared: SharedHabit | null;
  /** Whether it is known to be native to the region; null without a region. */
  native: boolean | null;
}

/** A rule that reaches the plant and cannot be applied to it. */
export interface IdleRule {
  ruleId: string;
  kind: SubstitutionKind;
  /** The site names no region, so nobody can say what is native to it; or traits of the plant asked for are not told. */
  why: 'no-region' | 'untold';
  untold: HabitTrait[];
}

export interface AlternativesByRule {
  /** The smallest penalty first. */
  alternatives: AlternativeByRule[];
  idle: IdleRule[];
  /** Plants that a rule would have named and that are not known to be native to the region, by scientific name. */
  notNative: string[];
  /** Plants that were passed over because their height, light or bloom is not told. */
  untold: string[];
}

/**
 * What may stand in for an item by the rules of the nursery, each once, by the rule with the smallest penalty. A plant of the same genus is
 * offered only when it is known to be native to the region, whatever its common name; where the order takes only natives, so is everything.
 * Throws InputError when the asked plant is not among the plants, or a rule cannot be applied.
 */
export function alternativesByRule({
  asked,
  rules,
  plants,
  items,
  region,
  nativesOnly,
}: SubstituteQuestion): AlternativesByRule {
  const byId = new Map(plants.map((plant) => [plant.plantId, plant]));
  const plant = byId.get(asked.plantId);
  if (plant === undefined) throw new InputError('asked', 'must be one of the plants');
  const reaching = rulesReaching(rules, plant);
  const idle = reaching.flatMap((rule) => idleOf(rule, plant, region) ?? []);
  const applied = reaching.filter(({ id }) => !idle.some(({ ruleId }) => ruleId === id));
  const notNative = new Set<string>();
  const untold = new Set<string>();
  const best = new Map<string, AlternativeByRule>();
  for (const { id: ruleId, kind, penalty } of applied) {
    for (const item of items) {
      const other = byId.get(item.plantId);
      if (other === undefined || !isMeant(kind, asked, plant, item, other)) continue;
      const shared = kind === 'same-habit' ? sharedHabit(plant, other) : null;
      if (kind === 'same-habit' && shared === null) {
        if (untoldTraits(other).length > 0) untold.add(other.plantId);
        continue;
      }
      const native = region === null ? null : other.nativeRegions.includes(region);
      if ((nativesOnly || kind === 'same-genus') && native !== true) {
        notNative.add(other.plantId);
        continue;
      }
      const key = `${item.plantId}/${item.containerId}`;
      const known = best.get(key);
      // Kinds come in their order, so that of two equal penalties the first kind is told.
      if (known === undefined || penalty < known.penalty)
        best.set(key, { ...item, penalty, ruleId, kind, shared, native });
    }
  }
  const nameOf = (plantId: string) => byId.get(plantId)?.scientificName ?? '';
  const alternatives = [...best.values()].toSorted(
    (a, b) =>
      a.penalty - b.penalty ||
      SUBSTITUTION_KINDS.indexOf(a.kind) - SUBSTITUTION_KINDS.indexOf(b.kind) ||
      compareText(nameOf(a.plantId), nameOf(b.plantId)) ||
      compareText(a.containerId, b.containerId),
  );
  const names = (ids: ReadonlySet<string>) => [...ids].map(nameOf).toSorted(compareText);
  return { alternatives, idle, notNative: names(notNative), untold: names(untold) };
}

function idleOf(
  { id: ruleId, kind }: SubstitutionRule,
  plant: SubstitutePlant,
  region: string | null,
): IdleRule | null {
  if (kind === 'same-genus' && region === null) return { ruleId, kind, why: 'no-region', untold: [] };
  const untold = kind === 'same-habit' ? untoldTraits(plant) : [];
  return untold.length > 0 ? { ruleId, kind, why: 'untold', untold } : null;
}

/** Whether a rule of this kind speaks of the item at all: another pot of the same plant, or another plant in the same pot. */
function isMeant(
  kind: SubstitutionKind,
  asked: SubstituteItem,
  plant: SubstitutePlant,
  item: SubstituteItem,
  other: SubstitutePlant,
): boolean {
  if (kind === 'another-size') return other === plant && item.containerId !== asked.containerId;
  if (other === plant || item.containerId !== asked.containerId) return false;
  return kind === 'same-habit' || other.genus.toLowerCase() === plant.genus.toLowerCase();
}
