import { type Fact, memory } from './fact.ts';
import { noSprayHost } from './handling.ts';
import {
  CAUTION_KEYS,
  type CommonName,
  type PlantCaution,
  type PlantFacts,
  type ReferencePlant,
  type Synonym,
} from './plant-shape.ts';
import type { HandlingRule } from '@rootclock/domain';

/** The international avoirdupois pound, exact. */
export const GRAMS_PER_POUND = 453.59237;

export interface PlantRow {
  readonly code: string;
  readonly name: string;
  readonly author: Fact<string>;
  readonly family: string;
  /** The vernacular name first. */
  readonly common: readonly [string, ...string[]];
  readonly synonyms: readonly (readonly [name: string, author: string])[];
  readonly handling: readonly Fact<HandlingRule>[];
  readonly facts: Omit<PlantFacts, 'seedsPerGram'>;
}

/** Rounded to a tenth, which is finer than any seed count is printed; the figure it came from keeps its standing. */
function perGram(perPound: Fact<number | null>): Fact<number | null> {
  if (perPound.value === null) return perPound;
  const converted = `converted from seeds per pound at ${GRAMS_PER_POUND} g`;
  return {
    ...perPound,
    value: Math.round((perPound.value / GRAMS_PER_POUND) * 10) / 10,
    source: perPound.source === null ? converted : `${perPound.source}; ${converted}`,
  };
}

function cautionsOf(facts: PlantFacts): PlantCaution[] {
  return CAUTION_KEYS.flatMap((key) => {
    const fact = facts[key];
    return fact === undefined || fact.value === null
      ? []
      : [{ key, text: fact.value, standing: fact.standing, source: fact.source }];
  });
}

/** Builds a species from its row. Host plants for larvae get the rule against spraying without being told. */
export function plant(row: PlantRow): ReferencePlant {
  const [genus = '', specificEpithet = ''] = row.name.split(' ');
  const facts: PlantFacts = { ...row.facts, seedsPerGram: perGram(row.facts.seedsPerPound) };
  return {
    code: row.code,
    scientificName: row.name,
    scientificNameAuthorship: row.author.value,
    nameStanding: row.author.standing,
    nameSource: row.author.source,
    taxonRank: 'species',
    family: row.family,
    genus,
    specificEpithet,
    infraspecificEpithet: null,
    cultivarEpithet: null,
    vernacularName: row.common[0],
    commonNames: row.common.map((name): CommonName => ({ name, standing: 'from memory' })),
    synonyms: row.synonyms.map(([scientificName, scientificNameAuthorship]): Synonym => ({
      scientificName,
      scientificNameAuthorship,
      standing: 'from memory',
    })),
    facts,
    cautions: cautionsOf(facts),
    handling: facts.larvalHost.value ? [...row.handling, noSprayHost] : row.handling,
  };
}

export interface CultivarRow {
  readonly code: string;
  /** Without quotes, capitalised: the code of nomenclature for cultivated plants puts it in single quotes. */
  readonly epithet: string;
  readonly common: readonly [string, ...string[]];
}

/** What is merely taken over from the species is an assumption, whatever standing it has there. */
function takenOver<V>(fact: Fact<V>, species: string): Fact<V> {
  return { value: fact.value, standing: 'assumed', source: null, note: `taken over from ${species}` };
}

/** Builds a cultivar of a species. It has no native range: a selection is no wild type. */
export function cultivar(species: ReferencePlant, row: CultivarRow): ReferencePlant {
  const entries = Object.entries(species.facts).map(([key, fact]) => [
    key,
    takenOver<unknown>(fact, species.scientificName),
  ]);
  const facts: PlantFacts = {
    ...(Object.fromEntries(entries) as PlantFacts),
    nativeRegions: memory([], 'a selection is no wild type'),
    establishmentMeans: memory('uncertain', 'raised in cultivation'),
  };
  return {
    ...species,
    code: row.code,
    scientificName: `${species.scientificName} '${row.epithet}'`,
    scientificNameAuthorship: '',
    nameStanding: 'from memory',
    nameSource: null,
    taxonRank: 'cultivar',
    cultivarEpithet: row.epithet,
    vernacularName: row.common[0],
    commonNames: row.common.map((name): CommonName => ({ name, standing: 'from memory' })),
    synonyms: [],
    facts,
    cautions: cautionsOf(facts),
  };
}
