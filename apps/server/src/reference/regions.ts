/** Postal codes of the states for which the plants' native ranges are kept: the Upper Midwest and its neighbours. */
export const REGION_CODES = ['IA', 'IL', 'IN', 'MI', 'MN', 'MO', 'ND', 'OH', 'SD', 'WI'] as const;
export type RegionCode = (typeof REGION_CODES)[number];

export interface ReferenceRegion {
  readonly code: RegionCode;
  readonly name: string;
}

const NAMES: Record<RegionCode, string> = {
  IA: 'Iowa',
  IL: 'Illinois',
  IN: 'Indiana',
  MI: 'Michigan',
  MN: 'Minnesota',
  MO: 'Missouri',
  ND: 'North Dakota',
  OH: 'Ohio',
  SD: 'South Dakota',
  WI: 'Wisconsin',
};

/** A site elsewhere has no region here, and then nothing can be said about what is native to it. */
export const referenceRegions: readonly ReferenceRegion[] = REGION_CODES.map((code) => ({ code, name: NAMES[code] }));
