/** The batches at a place, each a row that leads to its page. */
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import { type Column, DataTable } from '../../../ui/table/index.ts';
import { CodeLink } from '../code-link.tsx';
import type { Story } from './place-story.tsx';

type Row = Story['batchRows'][number];

export function PlaceBatches({ rows }: { rows: readonly Row[] }) {
  const { places } = useMessages().stockIn;
  const columns = useColumns();
  return (
    <Section title={places.batches}>
      <DataTable
        caption={places.batches}
        quietCaption
        rows={rows}
        rowId={(row) => `${row.batchId}/${row.placeCode}`}
        rowName={(row) => row.code}
        columns={columns}
        empty={null}
      />
    </Section>
  );
}

function useColumns(): Column<Row>[] {
  const {
    stockIn: { table },
    propagation,
  } = useMessages();
  const { dates } = useFormat();
  return [
    {
      key: 'code',
      header: propagation.list.batch,
      title: true,
      cell: (row) => <CodeLink to={paths.batch(row.batchId)}>{row.code}</CodeLink>,
    },
    { key: 'plant', header: table.plant, cell: (row) => <i>{row.scientificName}</i> },
    { key: 'units', header: table.here, figure: true, cell: (row) => propagation.units(row.units, row.unit) },
    { key: 'place', header: table.places, cell: (row) => row.placeCode },
    { key: 'plantBy', header: table.clock, cell: (row) => (row.plantByOn ? dates.short(row.plantByOn) : '') },
  ];
}
