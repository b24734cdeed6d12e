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
  'not-native',
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
  /** Regions to which the plant is known to be native. An empty list is no claim that it is native nowhere, but nobody can vouch for it. */
  nativeRegions?: readonly string[];
}

/** What a line asks of the lots that serve it. */
export interface LotConditions {
  /** Zones that are good enough; none given means any. */
  provenanceZones?: readonly string[] | null;
  wildTypeOnly?: boolean;
  untreatedOnly?: boolean;
  /** Only plants known to be native to `region`; without a region none is. */
  nativesOnly?: boolean;
  region?: string | null;
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
  if (conditions.untreatedOnly === true && facts.treated !== false)
    found.add(facts.treated === null ? 'treatment-unknown' : 'treated');
  if (conditions.nativesOnly === true && !isNativeTo(facts.nativeRegions ?? [], conditions.region ?? null))
    found.add('not-native');
  return REFUSAL_REASONS.filter((reason) => found.has(reason));
}

/** Whether a plant is known to be native to a region. Its name has no say: one common name stands for plants of many lands. */
export const isNativeTo = (nativeRegions: readonly string[], region: string | null): boolean =>
  region !== null && nativeRegions.includes(region);
