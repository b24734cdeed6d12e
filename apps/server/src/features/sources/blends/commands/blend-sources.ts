import { sources } from '@rootclock/contracts';
import { FIELD, toMilligram } from '@rootclock/domain';
import { found, refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { nextCodes } from '../../codes-store.ts';
import { yearOfSource } from '../../describe.ts';
import { insertSources, loadSources } from '../../store.ts';
import { requireSeedDay } from '../../stores/describe-seed.ts';
import { requireSeed, requireSeedKind } from '../../stores/require-seed.ts';
import { insertSeedMovements } from '../../stores/store.ts';
import { describeBlend } from '../describe-blend.ts';
import { insertParts } from '../store.ts';

/** Makes one source of several by weight. Their seed leaves their stores for its own, and it stays known what it was made of. */
export const blendSources = command({
  name: 'blendSources',
  input: sources.blendSources,
  roles: FIELD,
  run: async (context, { sourceId: blendId, parts, happenedOn, storage, note }) => {
    if (parts.length < 2) refuse('blend-needs-parts', { parts: parts.length });
    const known = await loadSources(
      context,
      parts.map(({ sourceId }) => sourceId),
    );
    const chosen = parts.map(({ sourceId, grams }, at) => ({
      source: found(known.get(sourceId), 'source', `parts.${at}.sourceId`),
      grams,
      at,
    }));
    const [first] = chosen;
    const plant = found(first, 'source', 'parts').source;
    const met = new Set<string>();
    for (const { source, at } of chosen) {
      const field = `parts.${at}.sourceId`;
      if (source.plantId !== plant.plantId)
        refuse(
          'blend-of-different-plants',
          { source: source.code, plant: source.scientificName, wanted: plant.scientificName },
          field,
        );
      requireSeedKind(source, field);
      if (source.retired) refuse('source-retired', { source: source.code }, field);
      if (met.has(source.id)) refuse('blend-part-twice', { source: source.code }, field);
      met.add(source.id);
      requireSeedDay(context, happenedOn, source.gatheredOn);
    }
    await requireSeed(
      context,
      chosen.map(({ source, grams, at }) => ({ source, grams, field: `parts.${at}.grams` })),
    );
    const { fields, shares, mixed } = describeBlend(chosen, { storage: storage ?? null, storedOn: happenedOn, note });
    const [code = ''] = await nextCodes(context, plant.plantCode, yearOfSource(fields.gatheredOn, context.today), 1);
    await insertSources(context, [{ ...fields, id: blendId, code, plantId: plant.plantId }]);
    await insertParts(context, blendId, parts);
    const grams = toMilligram(parts.reduce((sum, part) => sum + part.grams, 0));
    await insertSeedMovements(context, [
      ...parts.map((part) => ({
        sourceId: part.sourceId,
        kind: 'blended-out' as const,
        grams: -part.grams,
        happenedOn,
        note,
      })),
      { sourceId: blendId, kind: 'blended-in', grams, happenedOn, note },
    ]);
    return { sourceId: blendId, code, grams, shares, mixed };
  },
});
