/** A batch: what stands, what came up, by when it must leave its cells, and what can be done with it. */
import { FIELD, GROWERS } from '@rootclock/domain';
import { useQuery } from '@tanstack/react-query';
import { useNavigate, useParams } from '@tanstack/react-router';
import { useCallback } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useWantedSheet } from '../../../lib/wanted-sheet.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button, Menu, TextLink } from '../../../ui/action/index.ts';
import { Callout } from '../../../ui/feedback/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { PotSign } from '../../../ui/sign/index.ts';
import { HeadPhoto } from '../../files/photo-tile.tsx';
import { PhotosSection } from '../../files/photos-section.tsx';
import type { BatchPageData } from '../batch-page-data.ts';
import { tiedOf, useShare } from '../pot-life-mark.tsx';
import { BatchSheet, isSheet, type SheetName } from '../sheets/batch-sheet.tsx';
import { YieldsSection } from '../yields/yields-section.tsx';
import { CourseSection } from './course/course-section.tsx';
import { FactsSection } from './facts-section.tsx';
import { DrawnSection, LotsSection, ReservedSection, TreatedSection } from './lots-section.tsx';
import { StagesSection } from './stages-section.tsx';
import { StorySection } from './story-section.tsx';
import './batch.css';

export function BatchPage() {
  const { batchId = '' } = useParams({ strict: false });
  const query = useQuery(trpc.propagation.readBatch.queryOptions({ batchId }));
  return <Read query={query}>{(batch) => <Batch batch={batch} />}</Read>;
}

function Batch({ batch }: { batch: BatchPageData }) {
  const { propagation } = useMessages();
  const { page: say } = propagation;
  const { dates } = useFormat();
  const [sheet, setSheet] = useWantedSheet(isSheet);
  const close = useCallback(() => setSheet(null), [setSheet]);
  const openStage = useCallback(() => setSheet('stage'), [setSheet]);
  const reserved = batch.reservations.reduce((sum, row) => sum + row.units, 0);
  const share = useShare()(batch);
  return (
    <div className="stack">
      <PageHeader
        kicker={say.kicker}
        title={batch.code}
        back={{ to: paths.propagation(), label: say.back }}
        sign={
          <>
            <PotSign
              size={64}
              share={share}
              past={batch.band === 'past' && !batch.closedOn}
              dormant={batch.dormantNow}
              tied={tiedOf(reserved, batch.cautiousUnits)}
            />
            <HeadPhoto subject={{ kind: 'batch', id: batch.batchId }} />
          </>
        }
        facts={
          <>
            <p>
              <TextLink to={paths.plant(batch.plantId)}>
                <i lang="la">{batch.scientificName}</i>
              </TextLink>{' '}
              {batch.vernacularName}
            </p>
            <p>
              {propagation.units(batch.standingUnits, batch.unit)}
              {batch.plantByOn && !batch.closedOn
                ? `. ${say.leaves(dates.short(batch.plantByOn), dates.fromToday(batch.plantByOn))} (${propagation.bands[batch.band]}${batch.dormantNow ? `, ${say.dormant}` : ''})`
                : ''}
            </p>
          </>
        }
      />
      <BatchActions batch={batch} onOpen={setSheet} />
      {batch.closedOn && <Callout tone="note">{say.closed(dates.long(batch.closedOn))}</Callout>}
      {batch.secondWinterOn && !batch.closedOn && (
        <Callout tone="note">{say.winter(dates.long(batch.secondWinterOn))}</Callout>
      )}
      {batch.aliveUnits !== null && !batch.closedOn && batch.cautiousUnits > batch.aliveUnits && (
        <Callout tone="caution">{say.cautiousOver(batch.cautiousUnits, batch.aliveUnits)}</Callout>
      )}
      <StagesSection batch={batch} onOther={openStage} />
      <FactsSection batch={batch} />
      <YieldsSection batch={batch} />
      <CourseSection batch={batch} />
      {batch.unit === 'pack' && <DrawnSection batch={batch} />}
      <LotsSection batch={batch} />
      <ReservedSection batch={batch} />
      {batch.treatments.length > 0 && <TreatedSection batch={batch} />}
      <PhotosSection subject={{ kind: 'batch', id: batch.batchId }} />
      <StorySection batch={batch} />
      <BatchSheet name={sheet} batch={batch} onClose={close} />
    </div>
  );
}

function BatchActions({ batch, onOpen }: { batch: BatchPageData; onOpen: (sheet: SheetName) => void }) {
  const { page: say } = useMessages().propagation;
  const { mayBe } = useSession();
  const navigate = useNavigate();
  if (!mayBe(FIELD) || batch.closedOn) return null;
  const action = (id: SheetName, label: string, danger = false) => ({ id, label, danger, onAction: () => onOpen(id) });
  return (
    <div className="row batch-actions">
      <Button look="primary" onClick={() => onOpen('count')}>
        {say.count}
      </Button>
      <Button onClick={() => onOpen('pot')}>{say.pot}</Button>
      <Button onClick={() => onOpen('lose')}>{say.lose}</Button>
      <Menu
        label={say.more}
        actions={[
          action('thin', say.thin),
          action('move', say.move),
          ...(mayBe(GROWERS) ? [action('forecast', say.forecast)] : []),
          action('correct', say.correct(batch.unit)),
          ...(batch.protocol ? [action('stage', say.beginStage)] : []),
          {
            id: 'what-if',
            label: say.whatIf,
            onAction: () =>
              void navigate({ to: paths.whatIf(), search: { kind: 'change-batch', batch: batch.batchId } }),
          },
          action('winter', say.secondWinter),
          action('close', say.close, true),
        ]}
      />
    </div>
  );
}
