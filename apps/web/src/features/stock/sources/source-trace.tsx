/** What came of a source, in four lists; where a list is long only its beginning is shown, with the whole count. */
import type { ReactNode } from 'react';
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { TextLink } from '../../../ui/action/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import type { SourceStory } from './source-story.ts';
import './source-trace.css';

export function SourceTrace({ source }: { source: SourceStory }) {
  const { sources, propagation } = useMessages();
  const { dates } = useFormat();
  const { batches, lots, gardens, daughters, counts } = source;
  const fromOther = (code: string) => (code === source.code ? '' : ` · ${sources.from(code)}`);
  if (counts.batches + counts.lots === 0) return <p>{sources.nothingYet}</p>;
  return (
    <div className="stack">
      <TraceList title={sources.batches} shown={batches.length} total={counts.batches}>
        {batches.map((batch) => (
          <li key={batch.batchId}>
            <TextLink to={paths.batch(batch.batchId)}>{batch.code}</TextLink> {dates.long(batch.startedOn)} ·{' '}
            {batch.closedOn ? sources.closed : propagation.units(batch.units, batch.unit)}
            {fromOther(batch.sourceCode)}
          </li>
        ))}
      </TraceList>
      <TraceList title={sources.lots} shown={lots.length} total={counts.lots}>
        {lots.map((lot) => (
          <li key={lot.lotId}>
            <TextLink to={paths.lot(lot.lotId)}>{lot.code}</TextLink> {lot.containerName} ·{' '}
            {lot.closedOn ? sources.closed : sources.units(lot.units)}
            {lot.plantName !== source.scientificName && (
              <>
                {' · '}
                <i>{lot.plantName}</i>
              </>
            )}
            {fromOther(lot.sourceCode)}
          </li>
        ))}
      </TraceList>
      <TraceList title={sources.daughters} shown={daughters.length} total={daughters.length}>
        {daughters.map((daughter) => (
          <li key={daughter.sourceId}>
            <TextLink to={paths.source(daughter.sourceId)}>{daughter.code}</TextLink>{' '}
            {sources.from(daughter.motherCode)}
          </li>
        ))}
      </TraceList>
      {gardens.length === 0 && <p>{sources.notPlanted}</p>}
      <TraceList title={sources.gardens} shown={gardens.length} total={counts.gardens}>
        {gardens.map((garden) => (
          <li key={garden.orderId}>
            <TextLink to={paths.order(garden.orderId)}>
              {[garden.clientName, garden.siteName].filter(Boolean).join(', ')}
            </TextLink>{' '}
            {sources.plantedUnits(garden.plantedUnits, dates.long(garden.lastOn))}
          </li>
        ))}
      </TraceList>
    </div>
  );
}

function TraceList({
  title,
  shown,
  total,
  children,
}: {
  title: string;
  shown: number;
  total: number;
  children: ReactNode;
}) {
  const { sources } = useMessages();
  if (total === 0) return null;
  return (
    <Section title={title} level={3} aside={shown < total ? sources.shownOf(shown, total) : String(total)}>
      <ul className="trace-list">{children}</ul>
    </Section>
  );
}
