import type { files } from '@rootclock/contracts';
import type { FileKind } from '@rootclock/domain';
import * as z from 'zod/mini';
import { columns, editedRow } from '../../db/editions.ts';
import type { Tx } from '../../db/pool.ts';
import { raw, sql } from '../../db/sql.ts';
import { found, refuse } from '../../refusal.ts';
import type { CommandContext, ReadContext } from '../../trpc/operation.ts';

type Said = z.output<typeof files.editAttachment>;
export type Subject = z.output<typeof files.listAttachments>['subject'];

const keyRow = z.strictObject({ id: z.string() });

/** What people say of an attachment, field by field. */
export const saidColumns = columns('caption');

const subjectColumn = ({ kind }: Subject) => raw(`${kind}_id`);
export const ofSubject = (subject: Subject) => sql`r.${subjectColumn(subject)} = ${subject.id}::uuid`;

/** What the store holds of one content, with the hashes under which it does. */
export interface StoredContent {
  sha256: string;
  kind: FileKind;
  mediaType: string;
  bytes: number;
  picture: { width: number; height: number; view: StoredPart; thumb: StoredPart } | null;
}
interface StoredPart {
  sha256: string;
  bytes: number;
}

/** Notes that the store holds a content, and answers its row; one that was blanked before and is brought anew is there again. */
export async function insertFile({ tx, nurseryId, now }: CommandContext, content: StoredContent): Promise<string> {
  const { sha256, kind, mediaType, bytes, picture } = content;
  const row = await tx.row(keyRow)`
    INSERT INTO file (nursery_id, sha256, kind, media_type, bytes, width, height, view_sha256, view_bytes,
                           thumb_sha256, thumb_bytes, stored_at)
    VALUES (${nurseryId}::uuid, ${sha256}, ${kind}, ${mediaType}, ${bytes}::int,
            ${picture?.width ?? null}::int, ${picture?.height ?? null}::int,
            ${picture?.view.sha256 ?? null}, ${picture?.view.bytes ?? null}::int,
            ${picture?.thumb.sha256 ?? null}, ${picture?.thumb.bytes ?? null}::int, ${now})
    ON CONFLICT (nursery_id, sha256) DO UPDATE
       SET emptied_at = NULL, view_sha256 = excluded.view_sha256, view_bytes = excluded.view_bytes,
           thumb_sha256 = excluded.thumb_sha256, thumb_bytes = excluded.thumb_bytes
    RETURNING id::text`;
  return found(row, 'file').id;
}

export async function insertAttachment(
  { tx, nurseryId, personId, now }: CommandContext,
  attachment: Omit<Said, 'edition' | 'was'> & { subject: Subject; fileId: string },
): Promise<void> {
  const { attachmentId, fileId, subject, caption, takenOn } = attachment;
  await tx.run`
    INSERT INTO attachment (nursery_id, id, file_id, ${subjectColumn(subject)}, caption, taken_on, added_at, person_id)
    VALUES (${nurseryId}::uuid, ${attachmentId}::uuid, ${fileId}::uuid, ${subject.id}::uuid, ${caption}, ${takenOn}::date,
            ${now}, nullif(${personId}, '')::uuid)`;
}

export async function updateAttachment({ tx, nurseryId }: CommandContext, attachment: Said): Promise<void> {
  await tx.run`
    UPDATE attachment SET caption = ${attachment.caption}, taken_on = ${attachment.takenOn}::date
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${attachment.attachmentId}::uuid`;
}

/** Refuses what is not there, and what was blanked: of that nothing is left to change or to bring back. */
export async function requireAttachment({ tx, nurseryId }: ReadContext, id: string): Promise<void> {
  const row = await tx.row(z.strictObject({ isBlanked: z.boolean() }))`
    SELECT blanked_at IS NOT NULL AS "isBlanked" FROM attachment
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
  if (found(row, 'attachment', 'attachmentId').isBlanked) refuse('file-blanked', undefined);
}

/** Takes an attachment out of sight, or for null back into it. */
export async function setRemoved({ tx, nurseryId }: CommandContext, id: string, at: Date | null): Promise<void> {
  await tx.run`
    UPDATE attachment SET removed_at = ${at} WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
}

export const attachmentEdits = editedRow<{ attachmentId: string }>({
  table: 'attachment',
  row: ({ attachmentId }) => sql`r.id = ${attachmentId}::uuid`,
  fields: { ...saidColumns, takenOn: 'r.taken_on' },
});

/** Blanks all that belongs to these sites. Answers the hashes of what nothing else shows. */
export async function blankAttachments(
  { tx, nurseryId, now }: CommandContext,
  siteIds: readonly string[],
): Promise<string[]> {
  await tx.run`
    UPDATE attachment SET caption = '', blanked_at = ${now}, removed_at = coalesce(removed_at, ${now})
     WHERE nursery_id = ${nurseryId}::uuid AND site_id = ANY (${[...siteIds]}::uuid[]) AND blanked_at IS NULL`;
  const rows = await tx.rows(z.strictObject({ hashes: z.array(z.string()) }))`
    UPDATE file f SET emptied_at = ${now}
     WHERE f.nursery_id = ${nurseryId}::uuid AND f.emptied_at IS NULL
       AND EXISTS (SELECT FROM attachment a WHERE a.nursery_id = f.nursery_id AND a.file_id = f.id
                      AND a.site_id = ANY (${[...siteIds]}::uuid[]))
       AND NOT EXISTS (SELECT FROM attachment a WHERE a.nursery_id = f.nursery_id AND a.file_id = f.id
                          AND a.blanked_at IS NULL)
    RETURNING array_remove(ARRAY[f.sha256, f.view_sha256, f.thumb_sha256], NULL) AS hashes`;
  return rows.flatMap(({ hashes }) => hashes);
}

/** Of these hashes those that a file's row still counts on. */
export async function hashesNeeded(tx: Tx, nurseryId: string, hashes: readonly string[]): Promise<Set<string>> {
  const rows = await tx.rows(z.strictObject({ hash: z.string() }))`
    SELECT DISTINCT h AS hash FROM file f, unnest(ARRAY[f.sha256, f.view_sha256, f.thumb_sha256]) h
     WHERE f.nursery_id = ${nurseryId}::uuid AND f.emptied_at IS NULL AND h = ANY (${[...hashes]}::text[])`;
  return new Set(rows.map(({ hash }) => hash));
}
