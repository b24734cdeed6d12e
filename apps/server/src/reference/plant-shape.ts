import type { EstablishmentMeans, HandlingRule, MonthDay, RootHabit, Standing, TaxonRank } from '@rootclock/domain';
import type { Fact, Range } from './fact.ts';
import type { RegionCode } from './regions.ts';

/** Facts every plant of the reference data has, though the value may be null where nothing was found. */
export interface PlantFactValues {
  /** The habit the product reasons with; `rootHabitPrinted` keeps the words it was read from. */
  rootHabit: RootHabit;
  rootHabitPrinted: string;
  propagationMethods: readonly string[];
  stratificationDays: Range | null;
  pretreatment: string | null;
  seedsPerPound: number | null;
  seedsPerGram: number | null;
  germinationPercent: Range | null;
  /** From seed; the later year where sources or years differ, so that no bloom is missed too early. */
  yearOfFirstBloom: number;
  /** Months 1 to 12. */
  bloomMonths: readonly number[];
  /** Months 1 to 12 in which the plant may stand without a living leaf, Upper Midwest, outdoors. */
  dormantMonths: readonly number[];
  /** A plant not up by this day may be written off, Upper Midwest, outdoors; late rather than early. */
  lastEmergenceMd: MonthDay;
  heightCm: Range;
  spreadCm: Range;
  sun: string;
  moisture: string;
  larvalHostOf: readonly string[] | null;
  larvalHost: boolean;
  /** Within the regions of regions.ts only, and only where it is surely native: an empty list is no claim elsewhere. */
  nativeRegions: readonly RegionCode[];
  /** Within the same regions: native means native to at least one of them. */
  establishmentMeans: EstablishmentMeans;
  caution: string | null;
}

/** Facts only some plants have. */
export interface FurtherFactValues {
  sapCaution: string;
  identityCaution: string;
  spreadCaution: string;
  plantingCaution: string;
  hardinessZones: Range;
  phenology: string;
  seedCollection: string;
  timeToGrowMonths: number;
  growingNote: string;
  secondGrowingNote: string;
}

export type FactKey = keyof PlantFactValues | keyof FurtherFactValues;

export type PlantFacts = { readonly [K in keyof PlantFactValues]: Fact<PlantFactValues[K]> } & {
  readonly [K in keyof FurtherFactValues]?: Fact<FurtherFactValues[K]>;
};

/** The facts that warn, in the order in which a page shows them. */
export const CAUTION_KEYS = ['caution', 'sapCaution', 'identityCaution', 'plantingCaution', 'spreadCaution'] as const;
export type CautionKey = (typeof CAUTION_KEYS)[number];

export interface PlantCaution {
  readonly key: CautionKey;
  readonly text: string;
  readonly standing: Standing;
  readonly source: string | null;
}

export interface CommonName {
  readonly name: string;
  readonly standing: Standing;
}

export interface Synonym {
  readonly scientificName: string;
  readonly scientificNameAuthorship: string;
  readonly standing: Standing;
}

/** One plant. The name fields carry the names of Darwin Core terms; `code` is two letters of genus and two of species, a letter settling clashes. */
export interface ReferencePlant {
  readonly code: string;
  /** Without its author. */
  readonly scientificName: string;
  /** Empty for a cultivar, whose name has no author. */
  readonly scientificNameAuthorship: string;
  readonly nameStanding: Standing;
  readonly nameSource: string | null;
  readonly taxonRank: TaxonRank;
  readonly family: string;
  readonly genus: string;
  readonly specificEpithet: string;
  readonly infraspecificEpithet: string | null;
  readonly cultivarEpithet: string | null;
  readonly vernacularName: string;
  /** The vernacular name first. One name may stand at several plants. */
  readonly commonNames: readonly CommonName[];
  readonly synonyms: readonly Synonym[];
  readonly facts: PlantFacts;
  readonly cautions: readonly PlantCaution[];
  readonly handling: readonly Fact<HandlingRule>[];
}
