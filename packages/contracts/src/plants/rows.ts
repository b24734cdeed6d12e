import type {
  ContainerKind,
  HandlingRule,
  PotLifeBasis,
  RootHabit,
  Standing,
  TaxonRank,
  WinterCarry,
} from '@rootclock/domain';
import type { PlantFactValue } from './facts.ts';

/** A plant as a picker offers it. */
export interface PlantChoice {
  id: string;
  code: string;
  scientificName: string;
  vernacularName: string;
  rootHabit: RootHabit;
  larvalHost: boolean;
}

/** What a written name means here. Of an ambiguous one nothing is guessed: all the plants it could mean are listed. */
export type PlantMatch =
  | { kind: 'exact' | 'synonym' | 'common'; plant: PlantChoice; name: string }
  | { kind: 'ambiguous'; plants: PlantChoice[] }
  | { kind: 'unknown'; nearMisses: { plant: PlantChoice; name: string }[] };

export interface FoundPlant {
  match: PlantMatch;
  /** At most twelve plants with a name of which a word begins so; `name` is the one that does. */
  suggestions: { plant: PlantChoice; name: string; kind: 'scientific' | 'synonym' | 'common' }[];
}

export interface PlantRow extends PlantChoice {
  scientificNameAuthorship: string;
  taxonRank: TaxonRank;
  family: string;
  handling: HandlingRule[];
  isRetired: boolean;
  /** Units in pots at places, and lots they stand in. */
  units: number;
  lots: number;
}

export interface PlantNameRow {
  id: string;
  kind: 'synonym' | 'common';
  name: string;
  standing: Standing;
  /** Other plants of the nursery that carry the same name. */
  alsoMeans: { plantId: string; scientificName: string }[];
}

export interface PlantFactRow {
  field: string;
  edition: number;
  value: PlantFactValue;
  standing: Standing;
  source: string | null;
  note: string | null;
}

/** A rule that reaches the plant, whatever the container it asks for. */
export interface PlantRuleRow {
  id: string;
  basis: PotLifeBasis;
  span: string | null;
  reach: 'plant-container' | 'plant' | 'genus' | 'root-habit-container' | 'root-habit';
  containerName: string | null;
  winterCarry: WinterCarry | null;
  standing: Standing;
  note: string;
}

/** What stands of a plant in one container. */
export interface PlantStandingRow {
  containerId: string;
  containerCode: string;
  containerName: string;
  lots: number;
  units: number;
  reserved: number;
  plantByOn: string | null;
}

export interface PlantPage extends Omit<PlantRow, 'lots'> {
  edition: number;
  names: PlantNameRow[];
  dormantMonths: number[];
  lastEmergenceMd: string | null;
  yearOfFirstBloom: number | null;
  nativeRegions: string[];
  /** Everything known, on whose word; what clocks reason with is among it. */
  facts: PlantFactRow[];
  rules: PlantRuleRow[];
  standing: PlantStandingRow[];
  openBatches: number;
}

export interface ContainerRow {
  id: string;
  edition: number;
  code: string;
  name: string;
  kind: ContainerKind;
  volumeMl: number | null;
  depthMm: number | null;
  widthMm: number | null;
  lengthMm: number | null;
  cells: number | null;
  tradeClass: string | null;
  standing: Standing;
  source: string | null;
  note: string;
  isRetired: boolean;
  /** Lots and batches that stand in it now. */
  inUse: number;
}

export interface RegionRow {
  code: string;
  name: string;
}
