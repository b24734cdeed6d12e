import type { files } from '@rootclock/contracts';
import type * as z from 'zod/mini';
import type { NurseryFiles } from '../../files/file-store.ts';
import { checkPaper } from '../../files/papers.ts';
import { makePicture } from '../../files/pictures.ts';
import { refuse } from '../../refusal.ts';
import type { CommandContext } from '../../trpc/operation.ts';
import { insertAttachment, insertFile, type StoredContent } from './store.ts';

type Sent = z.output<typeof files.addPhoto>;

/** What was sent, with its file in the store. The bytes stay at hand: until the row is committed nothing else keeps them there. */
interface Arrived {
  sent: Omit<Sent, 'bytes'>;
  content: StoredContent;
  parts: readonly Uint8Array[];
  /** The day that the file itself tells. */
  toldOn: string | null;
}

export async function takePhoto({ bytes, ...sent }: Sent, store: NurseryFiles): Promise<Arrived> {
  const { full, view, thumb, mediaType, width, height, takenOn } = await makePicture(bytes);
  const part = async (each: Buffer) => ({ sha256: await store.put(each), bytes: each.length });
  return {
    sent,
    content: {
      ...(await part(full)),
      kind: 'photo',
      mediaType,
      picture: { width, height, view: await part(view), thumb: await part(thumb) },
    },
    parts: [full, view, thumb],
    toldOn: takenOn,
  };
}

export async function takePaper({ bytes, ...sent }: Sent, store: NurseryFiles): Promise<Arrived> {
  checkPaper(bytes);
  const sha256 = await store.put(bytes);
  return {
    sent,
    content: { sha256, bytes: bytes.length, kind: 'paper', mediaType: 'application/pdf', picture: null },
    parts: [bytes],
    toldOn: null,
  };
}

/** Attaches what has arrived. The nursery is locked by now, and what takes files out of its store takes the same lock. */
export async function attach(
  context: CommandContext,
  { sent, content, parts, toldOn }: Arrived,
): Promise<{ attachmentId: string }> {
  const { today, files, touched } = context;
  if (sent.takenOn !== undefined && sent.takenOn > today)
    refuse('day-in-future', { day: sent.takenOn, today }, 'takenOn');
  const hashes = [content.sha256, content.picture?.view.sha256, content.picture?.thumb.sha256];
  for (const [at, bytes] of parts.entries())
    // The same content may have been blanked elsewhere since it was put.
    if ((await files.size(hashes[at] ?? '')) !== bytes.length) await files.put(bytes);
  const fileId = await insertFile(context, content);
  // A camera whose clock runs ahead tells no day that can be.
  const told = toldOn !== null && toldOn <= today ? toldOn : today;
  await insertAttachment(context, { ...sent, takenOn: sent.takenOn ?? told, fileId });
  touched.features.add('files');
  return { attachmentId: sent.attachmentId };
}
