import type { Standing } from '@rootclock/domain';
import { nameKey } from '@rootclock/domain';
import * as z from 'zod/mini';
import { raised } from '../../../db/editions.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';
import { scientificKey } from './keys.ts';

export const nameKind = z.enum(['scientific', 'synonym', 'common']);
export type NameKind = z.infer<typeof nameKind>;

export interface NewName {
  id: string;
  plantId: string;
  kind: NameKind;
  name: string;
  standing: Standing;
}

export const keyOfName = (kind: NameKind, name: string) => (kind === 'common' ? nameKey(name) : scientificKey(name));

/** Adds names; one that the plant bears already is left as it is. */
export async function insertNames({ tx, nurseryId }: CommandContext, names: readonly NewName[]): Promise<void> {
  if (names.length === 0) return;
  const rows = JSON.stringify(names.map((name) => ({ ...name, key: keyOfName(name.kind, name.name) })));
  await tx.run`
    INSERT INTO plant_name (nursery_id, id, plant_id, kind, name, name_key, standing)
    SELECT ${nurseryId}::uuid, n.id, n."plantId", n.kind, n.name, n.key, n.standing
      FROM jsonb_to_recordset(${rows}::jsonb) AS n (id uuid, "plantId" uuid, kind text, name text, key text, standing text)
    ON CONFLICT DO NOTHING`;
}

export const nameBearer = z.strictObject({
  plantId: z.string(),
  scientificName: z.string(),
  code: z.string(),
  kind: nameKind,
  name: z.string(),
  isRetired: z.boolean(),
});
export type NameBearer = z.infer<typeof nameBearer>;

/** Every plant that bears the name, as whatever kind of name. */
export async function findBearers({ tx, nurseryId }: ReadContext, key: string): Promise<NameBearer[]> {
  return tx.rows(nameBearer)`
    SELECT p.id::text AS "plantId", p.scientific_name AS "scientificName", p.code, n.kind, n.name, p.retired_at IS NOT NULL AS "isRetired"
      FROM plant_name n JOIN plant p ON p.nursery_id = n.nursery_id AND p.id = n.plant_id
     WHERE n.nursery_id = ${nurseryId}::uuid AND n.name_key = ${key} ORDER BY p.scientific_name`;
}

export const storedName = z.strictObject({
  id: z.string(),
  plantId: z.string(),
  kind: nameKind,
  name: z.string(),
});
export type StoredName = z.infer<typeof storedName>;

export async function loadName({ tx, nurseryId }: ReadContext, id: string): Promise<StoredName | null> {
  const row = await tx.row(storedName)`
    SELECT id::text, plant_id::text AS "plantId", kind, name FROM plant_name WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
  return row ?? null;
}

export async function deleteName({ tx, nurseryId }: CommandContext, id: string): Promise<void> {
  await tx.run`DELETE FROM plant_name WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
}

/** Puts a plant's accepted name in the place of the one it had. */
export async function replaceScientificName(
  { tx, nurseryId }: CommandContext,
  plantId: string,
  name: string,
): Promise<void> {
  await tx.run`
    UPDATE plant_name SET name = ${name}, name_key = ${keyOfName('scientific', name)}, standing = 'own setting'
     WHERE nursery_id = ${nurseryId}::uuid AND plant_id = ${plantId}::uuid AND kind = 'scientific'`;
}

/** After a common name went: the plant is called by another of its common names, or by none. */
export async function recallVernacularName(context: CommandContext, plantId: string, gone: string): Promise<void> {
  const { tx, nurseryId } = context;
  await tx.run`
    UPDATE plant p SET vernacular_name = coalesce((SELECT n.name FROM plant_name n WHERE n.nursery_id = p.nursery_id AND n.plant_id = p.id AND n.kind = 'common' ORDER BY n.name LIMIT 1), ''),
           ${raised(context)}
     WHERE p.nursery_id = ${nurseryId}::uuid AND p.id = ${plantId}::uuid AND p.vernacular_name = ${gone}`;
}
