import * as z from 'zod/mini';
import { columns, editedRow } from '../../../db/editions.ts';
import { sql } from '../../../db/sql.ts';
import { found, refuse } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

export const storedKit = z.strictObject({
  id: z.string(),
  edition: z.number(),
  name: z.string(),
  note: z.string(),
  components: z.array(
    z.strictObject({
      plantId: z.string(),
      scientificName: z.string(),
      containerId: z.string(),
      containerCode: z.string(),
      containerName: z.string(),
      cells: z.nullable(z.number()),
      units: z.number(),
    }),
  ),
  isRetired: z.boolean(),
});
export type StoredKit = z.infer<typeof storedKit>;

const kitRow = z.strictObject({ row: storedKit });

/** Kits with their components; without ids all that are offered, by name. */
export async function loadKits(
  { tx, nurseryId }: ReadContext,
  ids: readonly string[] | null = null,
): Promise<StoredKit[]> {
  const rows = await tx.rows(kitRow)`
    SELECT jsonb_build_object('id', k.id, 'edition', k.edition, 'name', k.name, 'note', k.note, 'isRetired', k.retired_on IS NOT NULL,
             'components', (SELECT jsonb_agg(jsonb_build_object('plantId', p.id, 'scientificName', p.scientific_name, 'containerId', c.id, 'containerCode', c.code, 'containerName', c.name,
                                                                'cells', c.cells, 'units', x.units) ORDER BY p.scientific_name, c.code, p.id, c.id)
                              FROM kit_component x JOIN plant_named p ON p.nursery_id = x.nursery_id AND p.id = x.plant_id JOIN container_named c ON c.nursery_id = x.nursery_id AND c.id = x.container_id
                             WHERE x.nursery_id = k.nursery_id AND x.kit_id = k.id)) AS row
      FROM kit k
     WHERE k.nursery_id = ${nurseryId}::uuid AND CASE WHEN ${ids === null} THEN k.retired_on IS NULL ELSE k.id = ANY (${[...(ids ?? [])]}::uuid[]) END
     ORDER BY lower(k.name), k.id`;
  return rows.map(({ row }) => row);
}

/** A kit that can still be asked for; one that is not this nursery's answers as not found. */
export async function loadKit(context: ReadContext, id: string, field = 'kitId'): Promise<StoredKit> {
  const kit = found((await loadKits(context, [id]))[0], 'kit', field);
  if (kit.isRetired) refuse('kit-retired', { kit: kit.name }, field);
  return kit;
}

const nameTaken = z.strictObject({ taken: z.boolean() });

/** Whether another kit that is offered has this name. */
export async function isNameTaken(
  { tx, nurseryId }: ReadContext,
  { kitId, name }: { kitId: string; name: string },
): Promise<boolean> {
  const row = await tx.row(nameTaken)`
    SELECT EXISTS (SELECT 1 FROM kit WHERE nursery_id = ${nurseryId}::uuid AND id <> ${kitId}::uuid AND lower(name) = lower(${name}) AND retired_on IS NULL) AS taken`;
  return row?.taken ?? false;
}

interface KitInput {
  kitId: string;
  name: string;
  note: string;
  components: readonly { plantId: string; containerId: string; units: number }[];
}

/** Adds a kit. Answers false when its id is taken. */
export async function insertKit(context: CommandContext, kit: KitInput): Promise<boolean> {
  const { tx, nurseryId } = context;
  const added =
    await tx.run`INSERT INTO kit (nursery_id, id, name, note) VALUES (${nurseryId}::uuid, ${kit.kitId}::uuid, ${kit.name}, ${kit.note}) ON CONFLICT (nursery_id, id) DO NOTHING`;
  if (added !== 1) return false;
  await insertComponents(context, kit);
  return true;
}

export async function updateKit(context: CommandContext, kit: KitInput): Promise<void> {
  const { tx, nurseryId } = context;
  await tx.run`UPDATE kit SET name = ${kit.name}, note = ${kit.note} WHERE nursery_id = ${nurseryId}::uuid AND id = ${kit.kitId}::uuid`;
  await tx.run`DELETE FROM kit_component WHERE nursery_id = ${nurseryId}::uuid AND kit_id = ${kit.kitId}::uuid`;
  await insertComponents(context, kit);
}

async function insertComponents({ tx, nurseryId }: CommandContext, { kitId, components }: KitInput): Promise<void> {
  await tx.run`
    INSERT INTO kit_component (nursery_id, kit_id, plant_id, container_id, units)
    SELECT ${nurseryId}::uuid, ${kitId}::uuid, n."plantId", n."containerId", n.units
      FROM jsonb_to_recordset(${JSON.stringify(components)}::jsonb) AS n ("plantId" uuid, "containerId" uuid, units int)`;
}

export async function markKitRetired({ tx, nurseryId, today }: CommandContext, kitId: string): Promise<void> {
  await tx.run`UPDATE kit SET retired_on = ${today}::date WHERE nursery_id = ${nurseryId}::uuid AND id = ${kitId}::uuid`;
}

export const kitEdits = editedRow<{ kitId: string }>({
  table: 'kit',
  row: ({ kitId }) => sql`r.id = ${kitId}::uuid`,
  fields: {
    ...columns('name', 'note'),
    components: `(SELECT jsonb_agg(jsonb_build_object('plantId', c.plant_id, 'containerId', c.container_id, 'units', c.units)) FROM kit_component c
                   WHERE c.nursery_id = r.nursery_id AND c.kit_id = r.id)`,
  },
});
