/** A source and all that came of it: batches, lots, sources gathered from those, and the gardens it was planted in. */
import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { type DayPrecision, GROWERS } from '@rootclock/domain';
import { useState } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { isMending, useCommand } from '../../../lib/outbox/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button, TextLink } from '../../../ui/action/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { DefinitionList, PageHeader, Section } from '../../../ui/layout/index.ts';
import { StockTabs } from '../stock-tabs.tsx';
import { ReIdentifySourceSheet } from './re-identify-source-sheet.tsx';
import { SourceForm } from './source-form.tsx';
import type { SourceStory } from './source-story.ts';
import { SourceTrace } from './source-trace.tsx';
import { BlendParts, BlendsOf } from './blend/blend-section.tsx';
import { TakenSection } from './taken-section.tsx';
import { seedDraftOf } from './seed-fields.tsx';
import { SeedCalculator } from './sowing/seed-calculator.tsx';
import { StoreSection } from './store/store-section.tsx';
import { TestsSection } from './viability/tests-section.tsx';

export function SourcePage() {
  const { sourceId } = useParams({ strict: false });
  const query = useQuery(trpc.sources.readSource.queryOptions({ sourceId: sourceId ?? '' }));
  return (
    <>
      <StockTabs />
      <Read query={query}>{(source) => <Source source={source} />}</Read>
    </>
  );
}

/** The text from which a stored rough day was read. */
function roughText(on: string | null, precision: DayPrecision | null): string {
  if (on === null) return '';
  if (precision === 'year') return on.slice(0, 4);
  if (precision === 'month') return on.slice(0, 7);
  if (precision !== 'season') return on;
  const season = { '03': 'spring', '06': 'summer', '09': 'autumn', '12': 'winter' }[on.slice(5, 7)] ?? 'spring';
  return `${Number(on.slice(0, 4)) + (season === 'winter' ? 1 : 0)}-${season}`;
}

function Source({ source }: { source: SourceStory }) {
  const { sources, ui, lots, seed } = useMessages();
  const mixedValue = (values: readonly string[]) =>
    new Set(values).size > 1 ? seed.mixed([...new Set(values)].join(', ')) : null;
  const { dates } = useFormat();
  const { mayBe } = useSession();
  const [editing, setEditing] = useState(() => isMending('sources.editSource'));
  const [renaming, setRenaming] = useState(false);
  const retire = useCommand('sources.retireSource', { title: `${sources.retire}: ${source.code}` });
  const restore = useCommand('sources.restoreSource', { title: `${sources.restore}: ${source.code}` });
  const { sourceId, code } = source;
  const bringBack = () =>
    void restore.send({ sourceId }).then(() => toast({ text: sources.restoredNow(code) }), tellRefused);
  const retireIt = () =>
    void retire.send({ sourceId }).then(() => toast({ text: sources.retiredNow(code), undo: bringBack }), tellRefused);
  return (
    <>
      <PageHeader
        back={{ to: paths.sources(), label: sources.title }}
        kicker={source.parts.length > 0 ? seed.blended : sources.kinds[source.kind]}
        title={code}
        facts={
          <>
            <TextLink to={paths.plant(source.plantId)}>
              <i>{source.scientificName}</i>
            </TextLink>{' '}
            {source.vernacularName}
            {source.retired && ` · ${sources.retired}`}
          </>
        }
        actions={
          mayBe(GROWERS) && (
            <>
              <Button onClick={() => setEditing(true)}>{sources.edit}</Button>
              <Button onClick={() => setRenaming(true)}>{lots.actions.reIdentify}</Button>
              {source.retired ? (
                <Button onClick={bringBack}>{sources.restore}</Button>
              ) : (
                <Button onClick={retireIt}>{sources.retire}</Button>
              )}
            </>
          )
        }
      />
      <DefinitionList
        facts={[
          { term: sources.provenance, value: source.provenance },
          {
            term: sources.seedZone,
            value: mixedValue(source.parts.map((part) => part.seedZone ?? seed.unknownZone)) ?? source.seedZone,
          },
          {
            term: sources.origin,
            value:
              mixedValue(source.parts.map((part) => sources.origins[part.origin])) ?? sources.origins[source.origin],
          },
          {
            term: sources.gathered,
            value:
              source.gatheredOn &&
              dates.rough(source.gatheredOn, source.gatheredPrecision ?? 'day', (season) => ui[season]),
          },
          { term: sources.collector, value: source.collector },
          { term: sources.permit, value: source.permit },
          { term: sources.vendor, value: source.vendor },
          { term: sources.vendorLot, value: source.vendorLot },
          { term: sources.pesticideStatement, value: source.pesticideStatement },
          {
            term: sources.motherLot,
            value: source.motherLotId && <TextLink to={paths.lot(source.motherLotId)}>{source.motherLotCode}</TextLink>,
          },
          { term: sources.note, value: source.note },
        ]}
      />
      <div className="source-parts">
        <BlendParts source={source} />
        {source.seed && (
          <>
            <StoreSection
              source={source}
              seed={{
                ...source.seed,
                germination: source.seed.testMethod === 'germination' ? source.seed.germination : null,
              }}
            />
            <TestsSection source={source} seed={source.seed} />
            <Section title={seed.sowing.title}>
              {/* Figures of another test or weight begin anew from what is known now. */}
              <SeedCalculator
                key={JSON.stringify([source.seed.germination, source.seed.purity, source.seed.seedsPerGram])}
                seed={source.seed}
              />
            </Section>
          </>
        )}
        {(source.kind === 'mother-plants' || source.kind === 'in-ground-bed') && <TakenSection source={source} />}
        <BlendsOf source={source} />
      </div>
      <div className="source-trace">
        <Section title={sources.what}>
          <SourceTrace source={source} />
        </Section>
      </div>
      {renaming && <ReIdentifySourceSheet sourceId={sourceId} code={code} onClose={() => setRenaming(false)} />}
      {editing && (
        <SourceForm
          source={{
            sourceId,
            edition: source.edition,
            code,
            plant: { id: source.plantId, scientificName: source.scientificName },
            kind: source.kind,
            provenance: source.provenance,
            seedZone: source.seedZone ?? '',
            origin: source.origin,
            gathered: roughText(source.gatheredOn, source.gatheredPrecision),
            collector: source.collector ?? '',
            permit: source.permit ?? '',
            vendor: source.vendor ?? '',
            vendorLot: source.vendorLot ?? '',
            pesticideStatement: source.pesticideStatement ?? '',
            motherLot: source.motherLotId ? { id: source.motherLotId, code: source.motherLotCode ?? '' } : null,
            note: source.note,
            ...seedDraftOf(source),
          }}
          onClose={() => setEditing(false)}
        />
      )}
    </>
  );
}
