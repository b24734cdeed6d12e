/**
 * Why a lot is refused for a line. What is not known is a reason of its own: a client who asked for untreated plants is not
 * served from a lot of which nobody can say, and the grower may find it out and answer.
 */
export const REFUSAL_REASONS = [
  'held',
  'provenance-zone',
  'provenance-unknown',
  'not-wild-type',
  'wild-type-unknown',
  'treated',
  'treatment-unknown',
] as const;
export type RefusalReason = (typeof REFUSAL_REASONS)[number];

/** What is known of a lot, its source and its whole lineage. Null means unknown. */
export interface LotFacts {
  /** Seed or provenance zone of the source. */
  provenanceZone: string | null;
  /** True for plants of wild origin that nobody selected, false for cultivars and selections. */
  wildType: boolean | null;
  /** Whether any pesticide was applied, here or before, to the lot or what it came from. */
  treated: boolean | null;
  held: boolean;
}

/** What a line asks of the lots that serve it. */
export interface LotConditions {
  /** Zones that are good enough; none given means any. */
  provenanceZones?: readonly string[] | null;
  wildTypeOnly?: boolean;
  untreatedOnly?: boolean;
}

/** All reasons to refuse a lot for a line, in the order of REFUSAL_REASONS; none means that it is fit. */
export function judgeLot(facts: LotFacts, conditions: LotConditions): RefusalReason[] {
  const zones = conditions.provenanceZones ?? [];
  const found = new Set<RefusalReason>();
  if (facts.held) found.add('held');
  if (zones.length > 0 && facts.provenanceZone === null) found.add('provenance-unknown');
  else if (zones.length > 0 && !zones.some((zone) => zone === facts.provenanceZone)) found.add('provenance-zone');
  if (conditions.wildTypeOnly === true && facts.wildType !== true)
    found.add(facts.wildType === null ? 'wild-type-unknown' : 'not-wild-type');
  if (conditions.untreatedOnly === true && facts.treated !== false) found.add(facts.treated === null ? 'treatment-unknown' : 'treated');
  return REFUSAL_REASONS.filter((reason) => found.has(reason));
}
