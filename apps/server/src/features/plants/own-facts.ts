import type { NewFact, PlantTraits } from './store.ts';

/** The traits whose word is kept as a fact beside them, so that the plant's page can say on whose word each stands. */
const TOLD_TRAITS = [
  'rootHabit',
  'larvalHost',
  'dormantMonths',
  'lastEmergenceMd',
  'yearOfFirstBloom',
  'nativeRegions',
] as const;
type ToldTrait = (typeof TOLD_TRAITS)[number];

/** Each handling rule is a fact of its own: one may be common practice and the next remembered. */
export const handlingField = (rule: string) => `handling.${rule}`;

/** What the nursery itself says of a plant: all traits, or those that differ from what they were. */
export function factsOf(plantId: string, traits: PlantTraits, before?: PlantTraits): NewFact[] {
  const own = { plantId, standing: 'own setting' as const, source: null, note: null };
  const changed = TOLD_TRAITS.filter((trait) => before === undefined || !isSame(traits[trait], before[trait]));
  const rules = traits.handling.filter((rule) => !before?.handling.includes(rule));
  const gone = (before?.handling ?? []).filter((rule) => !traits.handling.includes(rule));
  return [
    ...changed.map((field) => ({ ...own, field, value: traits[field] })),
    ...rules.map((rule) => ({ ...own, field: handlingField(rule), value: true })),
    ...gone.map((rule) => ({ ...own, field: handlingField(rule), value: false })),
  ];
}

/** The order of months or regions is no content. */
function isSame(a: PlantTraits[ToldTrait], b: PlantTraits[ToldTrait]): boolean {
  if (!Array.isArray(a) || !Array.isArray(b)) return a === b;
  return a.length === b.length && a.every((each) => (b as readonly unknown[]).includes(each));
}
