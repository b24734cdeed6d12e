import { FILE_SUBJECTS } from '@rootclock/domain';
import { samplePhoto, samplePdf } from '../pictures.ts';
import type { SampleBodies, SampleIds } from './bodies.ts';

const subjectsOf = (ids: SampleIds) => {
  const { lotId: lot, batchId: batch, placeId: place, plantId: plant, siteId: site } = ids;
  const idOf = { lot, batch, place, plant, site };
  return FILE_SUBJECTS.map((kind) => ({ kind, id: idOf[kind] }));
};

export const files: SampleBodies<'files'> = {
  addPhoto: (ids) =>
    subjectsOf(ids).map((subject) => ({
      attachmentId: ids.made('attachmentId'),
      subject,
      caption: 'First bloom',
      bytes: samplePhoto,
    })),
  addPaper: (ids) =>
    subjectsOf(ids).map((subject) => ({ attachmentId: ids.made('attachmentId'), subject, bytes: samplePdf })),
  editAttachment: (ids) => [{ attachmentId: ids.attachmentId, caption: 'In full bloom', takenOn: '2026-05-18' }],
  removeAttachment: (ids) => [{ attachmentId: ids.attachmentId }],
  restoreAttachment: (ids) => [{ attachmentId: ids.attachmentId }],
  listAttachments: (ids) => subjectsOf(ids).map((subject) => ({ subject })),
};
