/** Where propagules, or bought plants, came from. */
export const SOURCE_KINDS = [
  'seed-collection',
  'bought-seed',
  'mother-plants',
  'in-ground-bed',
  'bought-plants',
  'unknown',
] as const;
export type SourceKind = (typeof SOURCE_KINDS)[number];

export const SOURCE_ORIGINS = ['wild', 'cultivated', 'unknown'] as const;
export type SourceOrigin = (typeof SOURCE_ORIGINS)[number];
