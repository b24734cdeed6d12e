import type { SourceOrigin } from '@rootclock/domain';
import type { ReadContext } from '../../../trpc/operation.ts';

export interface BlendPartRow {
  sourceId: string;
  code: string;
  grams: number;
  provenance: string;
  seedZone: string | null;
  origin: SourceOrigin;
  gatheredOn: string | null;
  /** Itself a blend. */
  blended: boolean;
}

/** What a source was blended from, the largest part first; nothing where it is no blend. */
export async function readParts({ tx, nurseryId }: ReadContext, blendId: string): Promise<BlendPartRow[]> {
  return tx.$queryRaw<BlendPartRow[]>`
    SELECT s.id::text AS "sourceId", s.code, p.grams::float8 AS grams, s.provenance, s.seed_zone AS "seedZone", s.origin, s.gathered_on::text AS "gatheredOn",
           EXISTS (SELECT 1 FROM source_part b WHERE b.nursery_id = s.nursery_id AND b.source_id = s.id) AS blended
      FROM source_part p JOIN source s ON s.nursery_id = p.nursery_id AND s.id = p.part_source_id
     WHERE p.nursery_id = ${nurseryId}::uuid AND p.source_id = ${blendId}::uuid ORDER BY p.grams DESC, s.code`;
}

export interface BlendRow {
  sourceId: string;
  code: string;
  /** Of this source in the blend, and of the whole blend as it was made. */
  grams: number;
  ofGrams: number;
  /** The blend was taken back, and its seed with it. */
  takenBack: boolean;
}

/** The blends that a source went into. */
export async function readBlends({ tx, nurseryId }: ReadContext, partId: string): Promise<BlendRow[]> {
  return tx.$queryRaw<BlendRow[]>`
    SELECT s.id::text AS "sourceId", s.code, p.grams::float8 AS grams,
           (SELECT sum(o.grams)::float8 FROM source_part o WHERE o.nursery_id = p.nursery_id AND o.source_id = p.source_id) AS "ofGrams",
           EXISTS (SELECT 1 FROM seed_movement m JOIN seed_movement r ON r.nursery_id = m.nursery_id AND r.reverses_id = m.id
                    WHERE m.nursery_id = p.nursery_id AND m.source_id = p.source_id AND m.kind = 'blended-in') AS "takenBack"
      FROM source_part p JOIN source s ON s.nursery_id = p.nursery_id AND s.id = p.source_id
     WHERE p.nursery_id = ${nurseryId}::uuid AND p.part_source_id = ${partId}::uuid ORDER BY s.code`;
}
