/** A place: what stands there and in all that lies in it, whether it may be entered, and what happened to it. */
import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { FIELD, GROWERS } from '@rootclock/domain';
import { useState } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useListSearch } from '../../../lib/list/index.ts';
import { isMending, useCommand } from '../../../lib/outbox/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button, Menu } from '../../../ui/action/index.ts';
import { Callout, EmptyState, toast } from '../../../ui/feedback/index.ts';
import { DefinitionList, PageHeader, Section } from '../../../ui/layout/index.ts';
import { HeadPhoto } from '../../files/photo-tile.tsx';
import { PhotosSection } from '../../files/photos-section.tsx';
import { BulkActions } from '../lots/bulk-actions.tsx';
import { NotUpPanel } from '../lots/winter/not-up-panel.tsx';
import { SpringSheet } from '../lots/winter/spring-sheet.tsx';
import { StockTabs } from '../stock-tabs.tsx';
import { LIST_DEFAULTS, LotsTable } from '../table/lots-table.tsx';
import { ClosingForm, OpeningForm } from './closing-form.tsx';
import { PlaceBatches } from './place-batches.tsx';
import { PlaceForm } from './place-form.tsx';
import { PlaceStory, type Story } from './place-story.tsx';
import { PlaceTree } from './place-tree.tsx';

export function PlacePage() {
  const { placeId } = useParams({ strict: false });
  const query = useQuery(trpc.stock.readPlace.queryOptions({ placeId: placeId ?? '' }));
  return (
    <>
      <StockTabs />
      <Read query={query}>{(place) => <Place place={place} />}</Read>
    </>
  );
}

function Place({ place }: { place: Story }) {
  const { places, placeKinds, table, ...say } = useMessages().stockIn;
  const { dates } = useFormat();
  const list = useListSearch(LIST_DEFAULTS);
  const parent = place.path.at(-1);
  return (
    <>
      <PageHeader
        back={
          parent ? { to: paths.place(parent.placeId), label: parent.code } : { to: paths.places(), label: places.title }
        }
        kicker={placeKinds[place.kind]}
        title={place.name === place.code ? place.code : `${place.code}, ${place.name}`}
        facts={[
          place.unitsWithin > 0 && say.units(place.unitsWithin),
          place.winterCover && places.sheltered,
          place.retired && places.retired,
        ]
          .filter(Boolean)
          .join(' · ')}
        sign={<HeadPhoto subject={{ kind: 'place', id: place.placeId }} />}
        actions={<PlaceActions place={place} />}
      />
      {place.closedBy && place.closedUntilAt && (
        <div className="place-closed">
          <Callout tone="caution">
            {places.closedBy(place.closedBy.code, dates.instant(place.closedUntilAt), place.closedReason ?? '')}
          </Callout>
        </div>
      )}
      <WinterFacts place={place} />
      <NotUpPanel placeId={place.placeId} />
      <Section title={places.standing} actions={place.unitsWithin > 0 && <WholePlace placeId={place.placeId} />}>
        <LotsTable
          here
          list={list}
          filter={{ placeId: place.placeId }}
          caption={table.caption}
          empty={
            <EmptyState kind="nothing-yet" title={places.nothing}>
              {places.nothingText}
            </EmptyState>
          }
        />
      </Section>
      {place.batchRows.length > 0 && <PlaceBatches rows={place.batchRows} />}
      {place.children.length > 0 && (
        <Section title={places.inside}>
          <PlaceTree rows={place.children} label={places.inside} />
        </Section>
      )}
      <PhotosSection subject={{ kind: 'place', id: place.placeId }} />
      {place.events.length > 0 && <PlaceStory events={place.events} />}
    </>
  );
}

/** Everything that stands here, moved, treated, held or lost in one entry. */
function WholePlace({ placeId }: { placeId: string }) {
  const { places } = useMessages().stockIn;
  return (
    <>
      <span>{places.allOfIt}</span>
      <BulkActions lotIds={[]} placeId={placeId} onDone={() => {}} />
    </>
  );
}

/** What plants can stand on here, and what is due here each winter. */
function WinterFacts({ place }: { place: Story }) {
  const { winter: say } = useMessages();
  const { dates, measures } = useFormat();
  const due = (md: string | null) => md && dates.yearly(md);
  if (place.benchAreaM2 === null && !place.coverMd && !place.baitMd && !place.uncoverMd) return null;
  return (
    <DefinitionList
      facts={[
        { term: say.benchArea, value: place.benchAreaM2 === null ? null : measures.area(place.benchAreaM2) },
        { term: say.cover, value: due(place.coverMd) },
        { term: say.bait, value: due(place.baitMd) },
        { term: say.uncover, value: due(place.uncoverMd) },
      ]}
    />
  );
}

type Open = 'edit' | 'within' | 'close' | 'open' | 'spring' | null;

function PlaceActions({ place }: { place: Story }) {
  const { places } = useMessages().stockIn;
  const { ui, winter } = useMessages();
  const { mayBe } = useSession();
  const [open, setOpen] = useState<Open>(() =>
    isMending('stock.editPlace') ? 'edit' : isMending('stock.openPlace') ? 'open' : null,
  );
  const retire = useCommand('stock.retirePlace', { title: `${places.retire}: ${place.code}` });
  const restore = useCommand('stock.restorePlace', { title: `${places.restore}: ${place.code}` });
  const said = { placeId: place.placeId, code: place.code, edition: place.edition, closedUntilAt: place.closedUntilAt };
  const bringBack = () =>
    void restore
      .send({ placeId: place.placeId })
      .then(() => toast({ text: places.restoredNow(place.code) }), tellRefused);
  const giveUp = () =>
    void retire
      .send({ placeId: place.placeId })
      .then(() => toast({ text: places.retiredNow(place.code), undo: bringBack }), tellRefused);
  const onClose = () => setOpen(null);
  return (
    <>
      {mayBe(FIELD) && place.unitsWithin > 0 && <Button onClick={() => setOpen('spring')}>{winter.count}</Button>}
      {mayBe(FIELD) && !place.retired && <Button onClick={() => setOpen('close')}>{places.close}</Button>}
      {mayBe(GROWERS) && (
        <Menu
          label={ui.more}
          actions={[
            ...(place.closedBy?.placeId === place.placeId
              ? [{ id: 'open', label: places.open, danger: true, onAction: () => setOpen('open') }]
              : []),
            { id: 'edit', label: places.edit, onAction: () => setOpen('edit') },
            { id: 'within', label: places.addWithin, disabled: place.retired, onAction: () => setOpen('within') },
            place.retired
              ? { id: 'restore', label: places.restore, onAction: bringBack }
              : { id: 'retire', label: places.retire, onAction: giveUp },
          ]}
        />
      )}
      {open === 'spring' && <SpringSheet placeId={place.placeId} name={place.code} onClose={onClose} />}
      {open === 'close' && <ClosingForm place={said} onClose={onClose} />}
      {open === 'open' && <OpeningForm place={said} onClose={onClose} />}
      {open === 'within' && (
        <PlaceForm within={{ id: place.placeId, code: place.code, winterCover: place.winterCover }} onClose={onClose} />
      )}
      {open === 'edit' && <PlaceForm place={place} onClose={onClose} />}
    </>
  );
}
