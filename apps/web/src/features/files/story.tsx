/** Photos among what happened, each on its day. */
import { useFormat } from '../../lib/format/index.ts';
import { useMessages } from '../../messages/index.ts';
import type { TimelineItem } from '../../ui/layout/index.ts';
import { photosOf, type Subject, useAttachments } from './attachments.ts';
import { PhotoTile } from './photo-tile.tsx';

/** The items of a story, newest first, with the subject's photos between them. Of a story that goes on beyond its last item no older photos are shown yet. */
export function useWithPhotos(subject: Subject, items: readonly TimelineItem[], goesOn = false): TimelineItem[] {
  const { files: say } = useMessages();
  const { dates } = useFormat();
  const last = items.at(-1);
  const photos = photosOf(useAttachments(subject))
    .filter(({ takenOn }) => !goesOn || last === undefined || takenOn >= last.dayOn)
    .map((photo): TimelineItem => ({
      id: photo.id,
      day: dates.short(photo.takenOn),
      dayOn: photo.takenOn,
      title: photo.caption || say.inStory,
      children: <PhotoTile photo={photo} size="list" />,
      note: photo.addedBy && say.by(photo.addedBy),
    }));
  // A photo shows how a day ended, so it stands before what happened on it; the sort keeps what is of one day in order.
  return [...photos, ...items].sort((a, b) => (a.dayOn === b.dayOn ? 0 : a.dayOn < b.dayOn ? 1 : -1));
}
