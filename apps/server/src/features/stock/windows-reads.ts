import type { PlantingWindow } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { ReadContext } from '../../trpc/operation.ts';

export const plantingWindow = z.strictObject({
  id: z.string(),
  opensMd: z.string(),
  closesMd: z.string(),
  maxContainerMl: z.optional(z.nullable(z.number())),
  region: z.optional(z.nullable(z.string())),
});

/** The planting windows that count. */
export async function loadWindows({ tx, nurseryId }: ReadContext): Promise<PlantingWindow[]> {
  return tx.rows(plantingWindow)`
    SELECT id::text, opens_md AS "opensMd", closes_md AS "closesMd", max_container_ml AS "maxContainerMl", region FROM window_named
     WHERE nursery_id = ${nurseryId}::uuid AND retired_at IS NULL`;
}
