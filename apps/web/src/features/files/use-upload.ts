/** The way of a chosen file to the server, with what is said of it. The same file keeps its command id, so that pressing again after a lost answer does no harm. */
import { MOST_FILE_BYTES, MOST_FILE_MEGABYTES } from '@rootclock/domain';
import type { files as contracts } from '@rootclock/contracts';
import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import type * as z from 'zod/mini';
import { CommandError, readFailure, tabPerson, type Failure } from '../../lib/api/index.ts';
import { markStale } from '../../lib/api/features.ts';
import { sendUpload } from '../../lib/api/upload.ts';
import { newCommandId } from '../../lib/ids.ts';

export const isPaper = (file: File): boolean => file.type === 'application/pdf';

type Entry = z.input<typeof contracts.fileEntry>;

export function useUpload(file: File) {
  const queryClient = useQueryClient();
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<Failure | null>(() =>
    file.size > MOST_FILE_BYTES
      ? { code: 'file-too-large', class: 'input', data: { mostMegabytes: MOST_FILE_MEGABYTES } }
      : null,
  );
  const sent = useRef<{ text: string; id: string } | null>(null);

  /** Answers whether the server has it. */
  const send = async (body: Entry): Promise<boolean> => {
    const text = JSON.stringify(body);
    if (sent.current?.text !== text) sent.current = { text, id: newCommandId() };
    setBusy(true);
    setFailure(null);
    try {
      const personId = tabPerson();
      if (personId === null) throw new CommandError({ code: 'not-signed-in', class: 'access' });
      const name = isPaper(file) ? 'files.addPaper' : 'files.addPhoto';
      await sendUpload({ id: sent.current.id, name, body, personId }, file);
      markStale(queryClient, ['files']);
      return true;
    } catch (error) {
      setFailure(readFailure(error));
      return false;
    } finally {
      setBusy(false);
    }
  };
  return { send, busy, failure, isTooLarge: file.size > MOST_FILE_BYTES };
}
