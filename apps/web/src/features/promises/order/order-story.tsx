/** What happened for an order, day by day; an entry can be taken back from here as long as its plants have not moved on. */
import type { promises as contracts } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { Timeline } from '../../../ui/layout/index.ts';
import { takeBack } from '../../orders/undo.ts';

export function OrderStory({ order }: { order: contracts.OrderPage }) {
  const { orders } = useMessages();
  const words = orders.list;
  const { mayBe } = useSession();
  const { dates } = useFormat();
  if (order.entries.length === 0) return <p>{words.nothingHappened}</p>;
  return (
    <Timeline
      label={words.storyTitle}
      items={order.entries.map((entry) => ({
        id: entry.id,
        day: dates.short(entry.happenedOn),
        dayOn: entry.happenedOn,
        title: words.entryUnits(words.entries[entry.kind] ?? entry.kind, entry.units),
        note: [entry.personName, entry.note, entry.reversed ? words.takenBack : ''].filter(Boolean).join(' · '),
        reversed: entry.reversed,
        actions: mayBe(FIELD) && !entry.reversed && entry.kind !== 'reverse' && (
          <Button look="quiet" onClick={() => takeBack(entry.id)}>
            {words.takeBack}
          </Button>
        ),
      }))}
    />
  );
}
