import { files } from '@rootclock/contracts';
import { EVERYONE, FILE_KINDS, FILE_SIZES } from '@rootclock/domain';
import * as z from 'zod/mini';
import { raw } from '../../db/sql.ts';
import { found } from '../../refusal.ts';
import { query } from '../../trpc/operation.ts';
import { ofSubject, saidColumns } from './store.ts';

const said = raw(
  Object.entries(saidColumns)
    .map(([field, column]) => `${column} AS "${field}"`)
    .join(', '),
);

const attachmentRow = z.strictObject({
  ...files.said.shape,
  id: z.string(),
  edition: z.number(),
  kind: z.enum(FILE_KINDS),
  takenOn: z.string(),
  addedBy: z.nullable(z.string()),
  width: z.nullable(z.number()),
  height: z.nullable(z.number()),
});

/** What is attached to a subject and not removed, the newest day first. */
export const listAttachments = query({
  name: 'listAttachments',
  input: files.listAttachments,
  roles: EVERYONE,
  read: async ({ tx, nurseryId }, { subject }): Promise<files.AttachmentRow[]> =>
    tx.rows(attachmentRow)`
      SELECT r.id::text, r.edition, ${said}, r.taken_on::text AS "takenOn", n.name AS "addedBy",
             f.kind, f.width, f.height
        FROM attachment r JOIN file f ON f.nursery_id = r.nursery_id AND f.id = r.file_id
        LEFT JOIN nursery_people() n ON n.person_id = r.person_id
       WHERE r.nursery_id = ${nurseryId}::uuid AND ${ofSubject(subject)} AND r.removed_at IS NULL
       ORDER BY r.taken_on DESC, r.added_at DESC, r.id`,
});

const servedFile = z.strictObject({ sha256: z.nullable(z.string()), mediaType: z.string(), takenOn: z.string() });
export type ServedFile = z.output<typeof servedFile> & { sha256: string };

/** Which content stands behind an attachment. One that was removed is still shown to whoever has its address; one that was blanked is not. */
export const readFileOf = query({
  name: 'readFileOf',
  input: z.strictObject({ attachmentId: z.uuid(), size: z.enum(FILE_SIZES) }),
  roles: EVERYONE,
  read: async ({ tx, nurseryId }, { attachmentId, size }): Promise<ServedFile> => {
    const row = await tx.row(servedFile)`
      SELECT f.media_type AS "mediaType", r.taken_on::text AS "takenOn",
             CASE ${size} WHEN 'thumb' THEN f.thumb_sha256 WHEN 'view' THEN f.view_sha256 ELSE f.sha256 END AS sha256
        FROM attachment r JOIN file f ON f.nursery_id = r.nursery_id AND f.id = r.file_id
       WHERE r.nursery_id = ${nurseryId}::uuid AND r.id = ${attachmentId}::uuid AND r.blanked_at IS NULL`;
    const { sha256, ...rest } = found(row, 'file');
    // A paper has nothing but its whole.
    const file = { ...rest, sha256: found(sha256, 'file') };
    // What is made from a photo is always of one kind, whatever the photo itself is kept as.
    return size === 'full' ? file : { ...file, mediaType: 'image/webp' };
  },
});
