/** The batch's story by days, every entry with its way back. */
import { FIELD } from '@rootclock/domain';
import { useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { Section, Timeline } from '../../../ui/layout/index.ts';
import { useWithPhotos } from '../../files/story.tsx';
import type { BatchPageData } from '../batch-page-data.ts';
import { useReverse } from '../use-reverse.ts';
import { storyWords } from './story-words.ts';

export function StorySection({ batch }: { batch: BatchPageData }) {
  const { propagation, ui } = useMessages();
  const { page: say, story } = propagation;
  const { dates } = useFormat();
  const { mayBe } = useSession();
  const reverse = useReverse();
  const told = batch.story.map((entry) => ({
    id: entry.entryId,
    day: dates.short(entry.happenedOn),
    dayOn: entry.happenedOn,
    title: storyWords(entry, batch.unit, propagation),
    reversed: entry.reversedById !== null,
    children: (
      <>
        {entry.count && entry.count.unexplainedUnits > 0 && <p>{story.missing(entry.count.unexplainedUnits)}</p>}
        {entry.note && <p>{entry.note}</p>}
      </>
    ),
    note: [entry.reversedById ? say.undone : null, entry.personName ? say.by(entry.personName) : null]
      .filter(Boolean)
      .join(' '),
    actions:
      mayBe(FIELD) && entry.kind !== 'reverse' && entry.reversedById === null ? (
        <Button
          look="quiet"
          aria-label={`${ui.undo}: ${storyWords(entry, batch.unit, propagation)}, ${dates.short(entry.happenedOn)}`}
          onClick={() => reverse(entry.entryId)}
        >
          {ui.undo}
        </Button>
      ) : undefined,
  }));
  const items = useWithPhotos({ kind: 'batch', id: batch.batchId }, told);
  return (
    <Section title={say.storyTitle}>
      <Timeline label={say.storyTitle} items={items} />
    </Section>
  );
}
