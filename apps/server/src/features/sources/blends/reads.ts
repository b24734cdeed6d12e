import { SOURCE_ORIGINS } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { ReadContext } from '../../../trpc/operation.ts';

export const blendPartRow = z.strictObject({
  sourceId: z.string(),
  code: z.string(),
  grams: z.number(),
  provenance: z.string(),
  seedZone: z.nullable(z.string()),
  origin: z.enum(SOURCE_ORIGINS),
  gatheredOn: z.nullable(z.string()),
  /** Itself a blend. */
  blended: z.boolean(),
});
export type BlendPartRow = z.infer<typeof blendPartRow>;

/** What a source was blended from, the largest part first; nothing where it is no blend. */
export async function readParts({ tx, nurseryId }: ReadContext, blendId: string): Promise<BlendPartRow[]> {
  return tx.rows(blendPartRow)`
    SELECT s.id::text AS "sourceId", s.code, p.grams::float8 AS grams, s.provenance, s.seed_zone AS "seedZone", s.origin, s.gathered_on::text AS "gatheredOn",
           EXISTS (SELECT 1 FROM source_part b WHERE b.nursery_id = s.nursery_id AND b.source_id = s.id) AS blended
      FROM source_part p JOIN source s ON s.nursery_id = p.nursery_id AND s.id = p.part_source_id
     WHERE p.nursery_id = ${nurseryId}::uuid AND p.source_id = ${blendId}::uuid ORDER BY p.grams DESC, s.code`;
}

export const blendRow = z.strictObject({
  sourceId: z.string(),
  code: z.string(),
  /** Of this source in the blend, and of the whole blend as it was made. */
  grams: z.number(),
  ofGrams: z.number(),
  /** The blend was taken back, and its seed with it. */
  takenBack: z.boolean(),
});
export type BlendRow = z.infer<typeof blendRow>;

/** The blends that a source went into. */
export async function readBlends({ tx, nurseryId }: ReadContext, partId: string): Promise<BlendRow[]> {
  return tx.rows(blendRow)`
    SELECT s.id::text AS "sourceId", s.code, p.grams::float8 AS grams,
           (SELECT sum(o.grams)::float8 FROM source_part o WHERE o.nursery_id = p.nursery_id AND o.source_id = p.source_id) AS "ofGrams",
           EXISTS (SELECT 1 FROM seed_movement m JOIN seed_movement r ON r.nursery_id = m.nursery_id AND r.reverses_id = m.id
                    WHERE m.nursery_id = p.nursery_id AND m.source_id = p.source_id AND m.kind = 'blended-in') AS "takenBack"
      FROM source_part p JOIN source s ON s.nursery_id = p.nursery_id AND s.id = p.source_id
     WHERE p.nursery_id = ${nurseryId}::uuid AND p.part_source_id = ${partId}::uuid ORDER BY s.code`;
}
