/** What is attached to a subject, and where its files are. */
import { useQuery } from '@tanstack/react-query';
import type { files as contracts } from '@rootclock/contracts';
import type { FileSize, FileSubject } from '@rootclock/domain';
import { trpc } from '../../lib/api/index.ts';

export interface Subject {
  kind: FileSubject;
  id: string;
}

export type Attachment = contracts.AttachmentRow;

/** Nothing while they are being read, and nothing where reading failed: photos stand beside a page and never in its way. */
export function useAttachments(subject: Subject): readonly Attachment[] {
  return useQuery(trpc.files.listAttachments.queryOptions({ subject })).data ?? [];
}

export const photosOf = (attachments: readonly Attachment[]): Attachment[] =>
  attachments.filter(({ kind }) => kind === 'photo');

export const fileAddress = (id: string, size: FileSize): string => `/files/${id}/${size}`;
