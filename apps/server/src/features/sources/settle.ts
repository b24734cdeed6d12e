import { randomUUID } from 'node:crypto';
import { refuse } from '../../refusal.ts';
import type { CommandContext } from '../../trpc/operation.ts';
import { assignCodes } from './assign-codes.ts';
import { yearOfSource } from './describe.ts';
import {
  insertSources,
  loadOpenSourcesOf,
  loadSources,
  type NewSource,
  NOTHING_OF_SEED,
  type PlantName,
  type SourceFields,
} from './store.ts';

/** Where plants that come in are from: a source that stands, or words from which one is made. */
export interface SourceWanted {
  plant: PlantName;
  sourceId: string | null;
  /** Read only without a source. */
  words: Pick<
    SourceFields,
    'kind' | 'provenance' | 'seedZone' | 'origin' | 'vendor' | 'vendorLot' | 'pesticideStatement'
  >;
  /** Where errors of the source are shown. */
  field: string;
}

export interface SourceSettled {
  id: string;
  code: string;
  gatheredOn: string | null;
}

/**
 * Gives each its source. Words that describe a source in use, and nothing more is known of that one, mean the same source, so that a
 * list of fifty rows does not leave fifty unknown sources behind.
 */
export async function settleSources(
  context: CommandContext,
  wanted: readonly SourceWanted[],
): Promise<SourceSettled[]> {
  const named = await loadSources(
    context,
    wanted.flatMap(({ sourceId }) => (sourceId ? [sourceId] : [])),
  );
  const inUse = await loadOpenSourcesOf(context, [
    ...new Set(wanted.filter(({ sourceId }) => !sourceId).map(({ plant }) => plant.id)),
  ]);
  const byWords = new Map(inUse.filter(isPlain).map((source) => [wordsKey(source.plantId, source), source]));
  const fresh: (Omit<NewSource, 'code'> & { plantCode: string })[] = [];
  const ids = wanted.map(({ plant, sourceId, words, field }) => {
    if (sourceId) {
      const source = named.get(sourceId);
      if (!source) return refuse('not-found', { what: 'source' }, field);
      if (source.plantId !== plant.id)
        refuse('source-of-other-plant', { source: source.code, plant: plant.scientificName }, field);
      if (source.retired) refuse('source-retired', { source: source.code }, field);
      return source.id;
    }
    const key = wordsKey(plant.id, words);
    const known = byWords.get(key);
    if (known) return known.id;
    const made = {
      ...NOTHING_OF_SEED,
      ...words,
      id: randomUUID(),
      plantId: plant.id,
      plantCode: plant.code,
      gatheredOn: null,
      gatheredPrecision: null,
      collector: null,
      permit: null,
      motherLotId: null,
      note: '',
    };
    fresh.push(made);
    byWords.set(key, { ...made, code: '' });
    return made.id;
  });
  const codes = await assignCodes(
    context,
    fresh.map(({ plantCode }) => ({ plantCode, year: yearOfSource(null, context.today) })),
  );
  const added = fresh.map(({ plantCode: _plantCode, ...source }, index) => ({ ...source, code: codes[index] ?? '' }));
  await insertSources(context, added);
  const all = new Map<string, SourceSettled>(
    [...named.values(), ...inUse, ...added].map(({ id, code, gatheredOn }) => [id, { id, code, gatheredOn }]),
  );
  return ids.map((id) => all.get(id) ?? { id, code: '', gatheredOn: null });
}

/** Nothing is known of it that words in a list do not say. */
const isPlain = (source: NewSource): boolean =>
  source.gatheredOn === null &&
  source.collector === null &&
  source.permit === null &&
  source.motherLotId === null &&
  source.cleanedGrams === null &&
  source.rawGrams === null;

function wordsKey(
  plantId: string,
  { kind, provenance, seedZone, origin, vendor, vendorLot, pesticideStatement }: SourceWanted['words'],
): string {
  const said = [provenance, seedZone, vendor, vendorLot, pesticideStatement].map((text) =>
    (text ?? '').trim().toLowerCase(),
  );
  return JSON.stringify([plantId, kind, origin, ...said]);
}
