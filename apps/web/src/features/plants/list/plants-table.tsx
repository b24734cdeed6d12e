/** The rows of the list of plants: scientific name first, the common name under it. */
import type { plants as contracts } from '@rootclock/contracts';
import type { ReactNode } from 'react';
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { RowLink } from '../../../ui/action/index.ts';
import { DataTable, type Column, type Sort } from '../../../ui/table/index.ts';
import { PlantName } from '../plant-name.tsx';
import '../plants.css';

interface Words {
  plants: ReturnType<typeof useMessages>['plants'];
  count: (value: number) => string;
}

function columnsIn({ plants: { list: say, rootHabits }, count }: Words): Column<contracts.PlantRow>[] {
  return [
    {
      key: 'name',
      header: say.columns.name,
      title: true,
      sortable: true,
      cell: (plant) => (
        <>
          <RowLink to={paths.plant(plant.id)}>
            <PlantName name={plant.scientificName} />
          </RowLink>
          <span className="plant-common">{plant.vernacularName}</span>
        </>
      ),
    },
    { key: 'code', header: say.columns.code, cell: (plant) => <span className="plant-code">{plant.code}</span> },
    { key: 'rootHabit', header: say.columns.rootHabit, cell: (plant) => rootHabits[plant.rootHabit] },
    {
      key: 'units',
      header: say.columns.units,
      figure: true,
      sortable: true,
      cell: (plant) => (plant.units === 0 ? say.none : count(plant.units)),
    },
    {
      key: 'lots',
      header: say.columns.lots,
      figure: true,
      wideOnly: true,
      cell: (plant) => (plant.lots === 0 ? '' : count(plant.lots)),
    },
  ];
}

export interface PlantsTableProps {
  rows: readonly contracts.PlantRow[];
  caption: string;
  sort: Sort;
  onSort: (sort: Sort) => void;
  stale: boolean;
  empty: ReactNode;
}

export function PlantsTable(props: PlantsTableProps) {
  const { plants } = useMessages();
  const { numbers } = useFormat();
  return (
    <DataTable
      {...props}
      rowId={(plant) => plant.id}
      rowName={(plant) => plant.scientificName}
      columns={columnsIn({ plants, count: numbers.count })}
    />
  );
}
