/** Of mother plants and beds: the cuttings and divisions that batches took from them. Nothing is weighed here, and the mother lot is named with the source's other facts. */
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import { type Column, DataTable } from '../../../ui/table/index.ts';
import { CodeLink } from '../code-link.tsx';
import type { SourceStory } from './source-story.ts';
import { takenByUnit } from './taken-by-unit.ts';

type Batch = SourceStory['batches'][number];

export function TakenSection({ source }: { source: SourceStory }) {
  const { seed, propagation } = useMessages();
  const columns = useColumns();
  // What was taken from plants of it in turn has sources of its own.
  const taken = source.batches.filter(({ sourceCode }) => sourceCode === source.code);
  const total = takenByUnit(taken)
    .map(({ unit, units }) => propagation.units(units, unit))
    .join(', ');
  return (
    <Section title={seed.taken} aside={total === '' ? undefined : seed.takenTotal(total)}>
      <div className="stack">
        {!source.motherLotId && <p>{seed.noMother}</p>}
        <DataTable
          caption={seed.taken}
          quietCaption
          rows={taken}
          rowId={(batch) => batch.batchId}
          rowName={(batch) => batch.code}
          columns={columns}
          empty={<p>{seed.takenNone}</p>}
        />
      </div>
    </Section>
  );
}

function useColumns(): Column<Batch>[] {
  const { seed, sources, propagation } = useMessages();
  const { dates } = useFormat();
  return [
    {
      key: 'batch',
      header: seed.batch,
      title: true,
      cell: (batch) => <CodeLink to={paths.batch(batch.batchId)}>{batch.code}</CodeLink>,
    },
    { key: 'on', header: seed.takenOn, cell: (batch) => dates.long(batch.startedOn) },
    { key: 'how', header: seed.how, cell: (batch) => propagation.methods[batch.method] },
    {
      key: 'began',
      header: seed.began,
      figure: true,
      cell: (batch) => propagation.units(batch.startedUnits, batch.unit),
    },
    {
      key: 'standing',
      header: seed.standing,
      figure: true,
      cell: (batch) => (batch.closedOn ? sources.closed : propagation.units(batch.units, batch.unit)),
    },
  ];
}
