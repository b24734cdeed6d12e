/** TakenIn: the lots an entry made, with the codes that go on their labels. */
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { ButtonLink } from '../../../ui/action/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import { type Column, DataTable } from '../../../ui/table/index.ts';
import { CodeLink } from '../code-link.tsx';

export interface TakenRow {
  lotId: string;
  code: string;
  plant: string;
  units: number;
  place: string;
}

export function TakenIn({ rows }: { rows: readonly TakenRow[] }) {
  const { intake } = useMessages().stockIn;
  const columns = useColumns();
  return (
    <Section
      title={intake.takenIn}
      aside={intake.takenInText}
      actions={<ButtonLink to={paths.lots()}>{intake.toTable}</ButtonLink>}
    >
      <DataTable
        caption={intake.takenIn}
        quietCaption
        rows={rows}
        rowId={(row) => row.lotId}
        rowName={(row) => row.code}
        columns={columns}
        empty={null}
      />
    </Section>
  );
}

function useColumns(): Column<TakenRow>[] {
  const { table } = useMessages().stockIn;
  const { numbers } = useFormat();
  return [
    {
      key: 'code',
      header: table.lot,
      title: true,
      cell: (row) => <CodeLink to={paths.lot(row.lotId)}>{row.code}</CodeLink>,
    },
    { key: 'plant', header: table.plant, cell: (row) => <i>{row.plant}</i> },
    { key: 'units', header: table.onHand, figure: true, cell: (row) => numbers.count(row.units) },
    { key: 'place', header: table.places, cell: (row) => row.place },
  ];
}
