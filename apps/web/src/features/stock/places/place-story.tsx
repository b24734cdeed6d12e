/** What happened to a place and to those in which it lies: closings, openings, treatments. */
import type { inferRouterOutputs } from '@trpc/server';
import type { AppRouter } from '@rootclock/server/router';
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Section, Timeline } from '../../../ui/layout/index.ts';

export type Story = inferRouterOutputs<AppRouter>['stock']['readPlace'];

export function PlaceStory({ events }: { events: Story['events'] }) {
  const { places } = useMessages().stockIn;
  const { dates } = useFormat();
  return (
    <Section title={places.story}>
      <Timeline
        label={places.story}
        items={events.map((event) => {
          const what = places.storyKinds[event.kind];
          return {
            id: event.entryId,
            day: dates.long(event.happenedOn),
            dayOn: event.happenedOn,
            reversed: event.reversed,
            title: event.untilAt ? places.storyUntil(what, dates.instant(event.untilAt)) : what,
            children: <p>{[event.product, event.note].filter(Boolean).join(': ')}</p>,
            note: places.storyAt(event.placeCode, event.person ?? '?'),
          };
        })}
      />
    </Section>
  );
}
