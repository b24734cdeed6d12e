/** OrderTable: orders as rows, on a phone as cards. Used by the list, and by the pages of clients and sites. */
import type { promises as contracts } from '@rootclock/contracts';
import type { ReactNode } from 'react';
import { useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { RowLink } from '../../../ui/action/index.ts';
import { DataTable, type Column, type Sort } from '../../../ui/table/index.ts';
import { StateBadge, useProgressWords } from '../marks/progress.tsx';
import './order-table.css';

export interface OrderTableProps {
  rows: readonly contracts.OrderRow[];
  caption: string;
  quietCaption?: boolean;
  sort?: Sort;
  onSort?: (sort: Sort) => void;
  /** Left out on the client's own page, where it would only repeat. */
  withoutClient?: boolean;
  empty: ReactNode;
  stale?: boolean;
}

export function OrderTable({ withoutClient = false, ...table }: OrderTableProps) {
  const columns = useColumns(withoutClient);
  return <DataTable {...table} rowId={(order) => order.id} rowName={(order) => order.code} columns={columns} />;
}

function useColumns(withoutClient: boolean): Column<contracts.OrderRow>[] {
  const { orders } = useMessages();
  const words = orders.list;
  return [
    {
      key: 'code',
      header: words.code,
      title: true,
      sortable: true,
      cell: (order) => (
        <RowLink to={paths.order(order.id)}>
          {withoutClient ? order.code : words.titleFor(order.code, order.clientName)}
        </RowLink>
      ),
    },
    { key: 'due', header: words.due, sortable: true, cell: (order) => <DueDay order={order} /> },
    {
      key: 'where',
      header: words.where,
      cell: (order) => [order.siteName, orders.kinds[order.kind]].filter(Boolean).join(' · '),
    },
    { key: 'short', header: words.progress, sortable: true, cell: (order) => <OrderState order={order} /> },
  ];
}

function DueDay({ order }: { order: contracts.OrderRow }) {
  const { orders } = useMessages();
  const { today } = useSession();
  const { dates } = useFormat();
  const isOverdue = order.state === 'open' && order.dueOn < today;
  return (
    <time dateTime={order.dueOn} className={isOverdue ? 'order-overdue' : undefined}>
      {(isOverdue ? orders.list.overdue : orders.dueOn)(order.dueOn, dates.fromToday(order.dueOn))}
    </time>
  );
}

function OrderState({ order }: { order: contracts.OrderRow }) {
  const { promises } = useMessages();
  const words = useProgressWords(order.kind);
  return (
    <div className="order-state">
      <StateBadge {...order} />
      {order.wantedUnits > 0 && order.state !== 'cancelled' && (
        <span>{[promises.marks.wanted(order.wantedUnits), ...words({ ...order, shortUnits: 0 })].join(' · ')}</span>
      )}
    </div>
  );
}
