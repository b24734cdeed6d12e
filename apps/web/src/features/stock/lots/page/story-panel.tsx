/** The story of a lot, newest first, older pages on asking; each entry can be taken back from here. */
import { useQueryClient } from '@tanstack/react-query';
import { FIELD } from '@rootclock/domain';
import { useState } from 'react';
import { trpc, useSession } from '../../../../lib/api/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { tellRefused } from '../../../../lib/tell-refused.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { Section, Timeline } from '../../../../ui/layout/index.ts';
import { useWithPhotos } from '../../../files/story.tsx';
import type { Lot, LotEntry } from '../lot-data.ts';
import { useTakeBack } from '../undo.ts';
import { entryTitle, movementLines } from './entry-words.ts';

/** The entries that stand on the page, and a way to the older ones. What the live stream makes newer comes with the lot itself. */
function useStory(lot: Lot) {
  const client = useQueryClient();
  const [older, setOlder] = useState<{ entries: LotEntry[]; more: boolean } | null>(null);
  const [busy, setBusy] = useState(false);
  const firstPage = new Set(lot.entries.map((entry) => entry.id));
  const entries = [...lot.entries, ...(older?.entries ?? []).filter((entry) => !firstPage.has(entry.id))];
  const showOlder = async (): Promise<void> => {
    const last = entries.at(-1);
    if (!last) return;
    setBusy(true);
    try {
      const page = await client.fetchQuery(
        trpc.stock.readLotEntries.queryOptions({
          lotId: lot.id,
          before: { happenedOn: last.happenedOn, version: last.version },
        }),
      );
      setOlder({ entries: [...entries, ...page.entries], more: page.moreEntries });
    } catch (error) {
      tellRefused(error);
    } finally {
      setBusy(false);
    }
  };
  return { entries, more: older?.more ?? lot.moreEntries, busy, showOlder };
}

export function StoryPanel({ lot }: { lot: Lot }) {
  const { lots } = useMessages();
  const { story } = lots;
  const { dates } = useFormat();
  const { mayBe } = useSession();
  const takeBack = useTakeBack();
  const { entries, more, busy, showOlder } = useStory(lot);
  const told = entries.map((entry) => {
    const title = entryTitle(entry, lots);
    const mayTakeBack = entry.kind !== 'reverse' && entry.reversedBy === null && mayBe(FIELD);
    return {
      id: entry.id,
      day: dates.short(entry.happenedOn),
      dayOn: entry.happenedOn,
      title,
      reversed: entry.reversedBy !== null,
      children: movementLines(entry, lot.id, lots).map((line) => <p key={line}>{line}</p>),
      note: [
        entry.note,
        entry.person && story.by(entry.person),
        entry.reversedBy && story.takenBackOn(dates.short(entry.reversedBy.happenedOn)),
      ]
        .filter(Boolean)
        .join(' · '),
      actions: mayTakeBack && (
        <Button
          look="quiet"
          aria-label={story.takeBackOf(`${title}, ${dates.short(entry.happenedOn)}`)}
          onClick={() => takeBack(entry.id)}
        >
          {story.takeBack}
        </Button>
      ),
    };
  });
  const items = useWithPhotos({ kind: 'lot', id: lot.id }, told, more);
  return (
    <Section title={story.title}>
      <Timeline label={story.title} items={items} />
      {more && (
        <Button busy={busy} onClick={() => void showOlder()}>
          {story.older}
        </Button>
      )}
    </Section>
  );
}
