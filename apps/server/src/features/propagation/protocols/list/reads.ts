import { propagation } from '@rootclock/contracts';
import { STANDINGS, EVERYONE, nameKey, phaseDays, type PropagationMethod, shareReady } from '@rootclock/domain';
import * as z from 'zod/mini';
import { query, type ReadContext } from '../../../../trpc/operation.ts';
import { missingReference } from '../reference/missing.ts';
import { loadVersionsInUse, planOf, type ProtocolVersion } from '../store.ts';

const plantHead = z.strictObject({
  plantId: z.string(),
  code: z.string(),
  scientificName: z.string(),
  vernacularName: z.string(),
  total: z.number(),
});

const besideRow = z.strictObject({
  protocolId: z.string(),
  isRetired: z.boolean(),
  madeOn: z.string(),
  standing: z.enum(STANDINGS),
  openBatches: z.number(),
});
type Beside = z.infer<typeof besideRow>;

const loadBeside = ({ tx, nurseryId }: ReadContext, plantIds: readonly string[]) => tx.rows(besideRow)`
  SELECT q.id::text AS "protocolId", q.retired_at IS NOT NULL AS "isRetired", v.made_on::text AS "madeOn", v.standing,
         (SELECT count(*)::int FROM batch_named b JOIN protocol_version w ON w.nursery_id = b.nursery_id AND w.id = b.protocol_version_id
           WHERE b.nursery_id = q.nursery_id AND w.protocol_id = q.id AND b.closed_on IS NULL) AS "openBatches"
    FROM protocol q JOIN protocol_version v ON v.nursery_id = q.nursery_id AND v.id = q.current_version_id
   WHERE q.nursery_id = ${nurseryId}::uuid AND q.plant_id = ANY (${[...plantIds]}::uuid[])`;

function rowOf(version: ProtocolVersion, beside: Beside): propagation.ProtocolRow {
  const cold = version.stages.find(({ kind }) => kind === 'stratification');
  return {
    protocolId: version.protocolId,
    versionId: version.versionId,
    method: version.method,
    label: version.label,
    number: version.number,
    madeOn: beside.madeOn,
    standing: beside.standing,
    isRetired: beside.isRetired,
    startUnit: version.startUnit,
    seedsPerCell: version.seedsPerCell,
    totalDays: phaseDays(planOf(version)).total,
    coldDays: cold ? { short: cold.shortDays, usual: cold.usualDays, long: cold.longDays } : null,
    shareReady: shareReady(planOf(version)),
    openBatches: beside.openBatches,
  };
}

/** Plants of the nursery with their protocols; those without any are listed too, so that it is seen what has none. */
export const listProtocols = query({
  name: 'listProtocols',
  input: propagation.listProtocols,
  roles: EVERYONE,
  read: async (
    context,
    { text, method = null, plantId = null, have, retired, page, perPage },
  ): Promise<propagation.ProtocolList> => {
    const heads = await loadPlants(context, {
      key: nameKey(text ?? ''),
      code: codePrefix(text ?? ''),
      method,
      plantId,
      have,
      retired,
      page,
      perPage,
    });
    const plantIds = heads.map((head) => head.plantId);
    const beside = new Map((await loadBeside(context, plantIds)).map((row) => [row.protocolId, row]));
    const versions = (await loadVersionsInUse(context, plantIds, retired)).filter(
      (version) => method === null || version.method === method,
    );
    return {
      rows: heads.map(({ total: _total, ...head }) => ({
        ...head,
        protocols: versions.flatMap((version) => {
          const row = beside.get(version.protocolId);
          return version.plantId === head.plantId && row ? [rowOf(version, row)] : [];
        }),
      })),
      total: heads[0]?.total ?? 0,
      page,
      perPage,
      missingReference: context.role === 'owner' ? (await missingReference(context)).length : 0,
    };
  },
});

// Letters only: a text without any must not become a code that all plants have.
function codePrefix(text: string): string {
  const letters = text.replace(/[^A-Za-z]/g, '').toUpperCase();
  return letters === '' ? '' : `${letters}%`;
}

interface Asked {
  key: string;
  code: string;
  method: PropagationMethod | null;
  plantId: string | null;
  have: (typeof propagation.PROTOCOL_HAVE)[number];
  retired: boolean;
  page: number;
  perPage: number;
}

const loadPlants = (
  { tx, nurseryId }: ReadContext,
  { key, code, method, plantId, have, retired, page, perPage }: Asked,
) => tx.rows(plantHead)`
  SELECT p.id::text AS "plantId", p.code, p.scientific_name AS "scientificName", p.vernacular_name AS "vernacularName", count(*) OVER ()::int AS total
    FROM plant_named p
    JOIN LATERAL (SELECT EXISTS (SELECT 1 FROM protocol q WHERE q.nursery_id = p.nursery_id AND q.plant_id = p.id AND (q.retired_at IS NOT NULL) = ${retired}
                                    AND (${method}::text IS NULL OR q.method = ${method})) AS any_protocol) h ON true
   WHERE p.nursery_id = ${nurseryId}::uuid AND (p.retired_at IS NULL OR h.any_protocol) AND (${plantId}::uuid IS NULL OR p.id = ${plantId}::uuid)
     AND (${key} = '' OR p.code LIKE ${code} OR EXISTS (SELECT 1 FROM plant_called n WHERE n.nursery_id = p.nursery_id AND n.plant_id = p.id
            AND (n.name_key LIKE ${`${key}%`} OR n.name_key LIKE ${`% ${key}%`})))
     AND CASE ${have} WHEN 'with' THEN h.any_protocol WHEN 'without' THEN NOT h.any_protocol ELSE h.any_protocol OR NOT ${retired} END
   ORDER BY p.scientific_name LIMIT ${perPage} OFFSET ${(page - 1) * perPage}`;
