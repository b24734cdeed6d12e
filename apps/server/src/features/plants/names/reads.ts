import { plants } from '@rootclock/contracts';
import { ROOT_HABITS, EVERYONE, matchName, nameKey } from '@rootclock/domain';
import * as z from 'zod/mini';
import { query, type ReadContext } from '../../../trpc/operation.ts';
import { keysOf } from './keys.ts';

const MOST_SUGGESTIONS = 12;

const knownRow = z.strictObject({
  id: z.string(),
  code: z.string(),
  scientificName: z.string(),
  vernacularName: z.string(),
  rootHabit: z.enum(ROOT_HABITS),
  larvalHost: z.boolean(),
  synonyms: z.array(z.string()),
  vernacularNames: z.array(z.string()),
});
type Known = z.infer<typeof knownRow>;

/** Plants that are grown, with all their names: those that bear one of the keys or are of that genus, or all of them. */
async function loadKnown({ tx, nurseryId }: ReadContext, keys: readonly string[] | 'all'): Promise<Known[]> {
  const isAll = keys === 'all';
  const wanted = isAll ? [] : [...keys];
  const genera = wanted
    .map((key) => key.replace(/ spp?$/, ''))
    .filter((key) => key !== '' && !key.includes(' '))
    .map((key) => `${key} %`);
  return tx.rows(knownRow)`
    SELECT p.id::text, p.code, p.scientific_name AS "scientificName", p.vernacular_name AS "vernacularName", p.root_habit AS "rootHabit", p.larval_host AS "larvalHost",
           coalesce(array_agg(n.name ORDER BY n.name) FILTER (WHERE n.kind = 'synonym'), '{}') AS synonyms,
           coalesce(array_agg(n.name ORDER BY n.name) FILTER (WHERE n.kind = 'common'), '{}') AS "vernacularNames"
      FROM plant p LEFT JOIN plant_name n ON n.nursery_id = p.nursery_id AND n.plant_id = p.id
     WHERE p.nursery_id = ${nurseryId}::uuid AND p.retired_at IS NULL
       AND (${isAll} OR p.id IN (SELECT k.plant_id FROM plant_name k WHERE k.nursery_id = ${nurseryId}::uuid
                                   AND (k.name_key = ANY (${wanted}) OR k.kind = 'scientific' AND k.name_key LIKE ANY (${genera}))))
     GROUP BY p.nursery_id, p.id`;
}

const suggestedName = z.strictObject({
  id: z.string(),
  code: z.string(),
  scientificName: z.string(),
  vernacularName: z.string(),
  rootHabit: z.enum(ROOT_HABITS),
  larvalHost: z.boolean(),
  name: z.string(),
  kind: z.enum(['scientific', 'synonym', 'common']),
});

/** The plant with that code, then plants one of whose names begins with the key, then those in which a later word or the code does; of each plant the name that shows it best. */
async function suggest({ tx, nurseryId }: ReadContext, key: string): Promise<plants.FoundPlant['suggestions']> {
  if (key === '') return [];
  const rows = await tx.rows(suggestedName)`
    SELECT p.id::text, p.code, p.scientific_name AS "scientificName", p.vernacular_name AS "vernacularName", p.root_habit AS "rootHabit", p.larval_host AS "larvalHost", h.name, h.kind
      FROM (SELECT DISTINCT ON (n.plant_id) n.plant_id, n.name, n.kind, n.name_key LIKE ${`${key}%`} AS begins
              FROM plant_name n JOIN plant g ON g.nursery_id = n.nursery_id AND g.id = n.plant_id AND g.retired_at IS NULL
             WHERE n.nursery_id = ${nurseryId}::uuid AND (n.name_key LIKE ${`${key}%`} OR n.name_key LIKE ${`% ${key}%`} OR g.code LIKE ${`${key.toUpperCase()}%`})
             ORDER BY n.plant_id, n.name_key LIKE ${`${key}%`} DESC, n.kind = 'scientific' DESC, n.kind = 'common' DESC, n.name) h
      JOIN plant p ON p.nursery_id = ${nurseryId}::uuid AND p.id = h.plant_id
     ORDER BY p.code = ${key.toUpperCase()} DESC, h.begins DESC, p.scientific_name LIMIT ${MOST_SUGGESTIONS}`;
  return rows.map(({ name, kind, ...plant }) => ({ plant, name, kind }));
}

function asMatch(text: string, known: readonly Known[]): plants.PlantMatch {
  const byId = new Map(
    known.map(({ id, code, scientificName, vernacularName, rootHabit, larvalHost }) => [
      id,
      { id, code, scientificName, vernacularName, rootHabit, larvalHost },
    ]),
  );
  const of = (ids: readonly string[]) =>
    ids.flatMap((id) => byId.get(id) ?? []).sort((a, b) => (a.scientificName < b.scientificName ? -1 : 1));
  const match = matchName(text, known);
  switch (match.kind) {
    case 'ambiguous':
      return { kind: 'ambiguous', plants: of(match.plantIds) };
    case 'unknown':
      return {
        kind: 'unknown',
        nearMisses: match.nearMisses.flatMap(({ plantId, name }) => of([plantId]).map((plant) => ({ plant, name }))),
      };
    default: {
      const [plant] = of([match.plantId]);
      return plant
        ? { kind: match.kind, plant, name: 'name' in match ? match.name : plant.scientificName }
        : { kind: 'unknown', nearMisses: [] };
    }
  }
}

/** What a written name means, and what it may be the beginning of. A name of several plants is never guessed. */
export const findPlant = query({
  name: 'findPlant',
  input: plants.findPlant,
  roles: EVERYONE,
  read: async (context, { text }): Promise<plants.FoundPlant> => {
    const suggestions = await suggest(context, nameKey(text));
    const bearers = await loadKnown(context, keysOf(text));
    const match = asMatch(text, bearers);
    if (match.kind !== 'unknown' || suggestions.length > 0) return { match, suggestions };
    // Only a name that begins nothing is compared letter by letter with all the others.
    return { match: asMatch(text, await loadKnown(context, 'all')), suggestions };
  },
});
