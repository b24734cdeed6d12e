/** What was planted in a garden, by bed and plant, with the lot each came from. */
import type { gardens as contracts } from '@rootclock/contracts';
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { TextLink } from '../../../ui/action/index.ts';
import { EmptyState } from '../../../ui/feedback/index.ts';
import { DataTable, type Column } from '../../../ui/table/index.ts';
import { Taxon } from '../../plants/taxon.tsx';

export function PlantedTable({ rows }: { rows: readonly contracts.PlantedRow[] }) {
  const { clients: words } = useMessages();
  const columns = useColumns();
  return (
    <DataTable
      caption={words.plantedCaption(rows.length)}
      quietCaption
      rows={rows}
      rowId={(row) => `${row.lineId}/${row.lotId}`}
      rowName={(row) => row.scientificName}
      columns={columns}
      empty={<EmptyState kind="nothing-yet" title={words.nothingPlanted} />}
    />
  );
}

function useColumns(): Column<contracts.PlantedRow>[] {
  const { clients: words, orders } = useMessages();
  const { dates, numbers } = useFormat();
  return [
    { key: 'plant', header: orders.plant, title: true, cell: ({ scientificName }) => <Taxon name={scientificName} /> },
    { key: 'units', header: orders.units, figure: true, cell: ({ units }) => numbers.count(units) },
    { key: 'bed', header: orders.bed, cell: ({ bedName }) => bedName ?? orders.noBed },
    { key: 'container', header: orders.container, cell: ({ containerCode }) => containerCode },
    {
      key: 'lot',
      header: words.lot,
      cell: ({ lotId, lotCode }) => <TextLink to={paths.lot(lotId)}>{lotCode}</TextLink>,
    },
    {
      key: 'order',
      header: orders.list.code,
      cell: ({ orderId, orderCode }) => <TextLink to={paths.order(orderId)}>{orderCode}</TextLink>,
    },
    {
      key: 'on',
      header: words.plantedOn,
      cell: ({ lastPlantedOn }) => <time dateTime={lastPlantedOn}>{dates.short(lastPlantedOn)}</time>,
    },
  ];
}
