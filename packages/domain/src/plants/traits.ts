/** How a plant roots, which decides its container and the clock that counts for it. A corm or bulb is a tuber here. */
export const ROOT_HABITS = ['taproot', 'fibrous', 'rhizome', 'tuber', 'woody'] as const;
export type RootHabit = (typeof ROOT_HABITS)[number];

/** Darwin Core taxonRank, as far as a nursery grows plants by it. */
export const TAXON_RANKS = ['genus', 'species', 'subspecies', 'variety', 'form', 'cultivar'] as const;
export type TaxonRank = (typeof TAXON_RANKS)[number];

/** Darwin Core establishmentMeans (TDWG vocabulary), for what a plant is in a site's region. */
export const ESTABLISHMENT_MEANS = [
  'native',
  'nativeReintroduced',
  'introduced',
  'introducedAssistedColonisation',
  'vagrant',
  'uncertain',
  'nativeEndemic',
] as const;
export type EstablishmentMeans = (typeof ESTABLISHMENT_MEANS)[number];

/**
 * What a crew may and must do with a plant, set by species and printed on pull lists. All of them are common practice of
 * the trade without a published source. Whether a root ball may be loosened is never a general rule: a taproot broken
 * at planting can kill the plant, while a fibrous ball that has gone round its pot wants loosening.
 */
export const HANDLING_RULES = [
  'leave-root-ball-intact',
  'may-loosen-root-ball',
  'may-divide',
  'no-spray-host',
  'keep-crown-clear',
  'no-compost',
  'protect-from-browse',
  'keep-from-livestock',
  'wear-gloves',
  'plant-shallow',
] as const;
export type HandlingRule = (typeof HANDLING_RULES)[number];
