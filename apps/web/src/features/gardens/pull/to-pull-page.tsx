/** Orders that are due soon, with how much of each is still to be pulled: the list of lists. */
import { useQuery } from '@tanstack/react-query';
import type { gardens as contracts } from '@rootclock/contracts';
import { trpc } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { RowLink } from '../../../ui/action/index.ts';
import { EmptyState } from '../../../ui/feedback/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { DataTable, type Column } from '../../../ui/table/index.ts';
import { GardensTabs } from '../../orders/gardens-tabs.tsx';
import { StateBadge } from '../../promises/marks/progress.tsx';

const WITHIN_DAYS = 14;

export function ToPullPage() {
  const { gardens } = useMessages();
  const words = gardens.pull;
  const query = useQuery(trpc.gardens.listToPull.queryOptions({ withinDays: WITHIN_DAYS }));
  const columns = useColumns();
  return (
    <>
      <PageHeader title={words.toPullTitle} facts={words.toPullLead} />
      <GardensTabs />
      <Read query={query}>
        {(rows) => (
          <DataTable
            caption={words.toPullCaption(rows.length)}
            rows={rows}
            rowId={({ orderId }) => orderId}
            rowName={({ code }) => code}
            columns={columns}
            empty={
              <EmptyState kind="all-done" title={words.nothingToPull}>
                {words.nothingToPullText}
              </EmptyState>
            }
          />
        )}
      </Read>
    </>
  );
}

function useColumns(): Column<contracts.ToPullRow>[] {
  const { gardens, orders, promises } = useMessages();
  const words = gardens.pull;
  const { dates } = useFormat();
  return [
    {
      key: 'order',
      header: orders.list.code,
      title: true,
      cell: (row) => (
        <RowLink to={paths.pullList(row.orderId)}>{orders.list.titleFor(row.code, row.clientName)}</RowLink>
      ),
    },
    {
      key: 'due',
      header: orders.list.due,
      cell: (row) => <time dateTime={row.dueOn}>{orders.dueOn(row.dueOn, dates.fromToday(row.dueOn))}</time>,
    },
    { key: 'where', header: orders.list.where, cell: (row) => row.siteName ?? orders.kinds[row.kind] },
    {
      key: 'toPull',
      header: words.toPullTitle,
      cell: (row) =>
        [words.toPull(row.toPullUnits), row.stagedUnits > 0 && promises.marks.pulled(row.stagedUnits)]
          .filter(Boolean)
          .join(' · '),
    },
    {
      key: 'state',
      header: orders.list.progress,
      cell: (row) => <StateBadge state="open" {...row} reservedUnits={row.toPullUnits} />,
    },
  ];
}
