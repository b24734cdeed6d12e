/** What stands of a plant, by container, with what is promised and the first day by which some of it must be out. */
import type { plants as contracts } from '@rootclock/contracts';
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { TextLink } from '../../../ui/action/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import { DataTable, type Column } from '../../../ui/table/index.ts';

type Format = ReturnType<typeof useFormat>;
type Words = ReturnType<typeof useMessages>['plants']['page']['standingColumns'];

function columnsIn(say: Words, code: string, { numbers, dates }: Format): Column<contracts.PlantStandingRow>[] {
  return [
    {
      key: 'container',
      header: say.container,
      title: true,
      cell: (row) => (
        <TextLink to={paths.lots()} search={{ q: code }}>
          {row.containerName}
        </TextLink>
      ),
    },
    { key: 'lots', header: say.lots, figure: true, cell: (row) => numbers.count(row.lots) },
    { key: 'units', header: say.units, figure: true, cell: (row) => numbers.count(row.units) },
    { key: 'reserved', header: say.reserved, figure: true, cell: (row) => numbers.count(row.reserved) },
    {
      key: 'plantBy',
      header: say.plantBy,
      figure: true,
      cell: (row) => (row.plantByOn === null ? '' : dates.short(row.plantByOn)),
    },
  ];
}

export function Standing({ plant }: { plant: contracts.PlantPage }) {
  const { page: say } = useMessages().plants;
  const format = useFormat();
  return (
    <Section title={say.standing} aside={plant.units > 0 ? format.numbers.count(plant.units) : undefined}>
      <DataTable
        caption={say.standing}
        quietCaption
        rows={plant.standing}
        rowId={(row) => row.containerId}
        rowName={(row) => row.containerName}
        columns={columnsIn(say.standingColumns, plant.code, format)}
        empty={<p>{say.standingNone}</p>}
      />
      {plant.openBatches > 0 && <p>{say.openBatches(plant.openBatches)}</p>}
    </Section>
  );
}
