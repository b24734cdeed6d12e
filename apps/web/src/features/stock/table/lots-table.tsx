/** LotsTable: lots of the server's page with units and clock; used by the stock table and by a place's page, with the same bulk verbs. */
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { inferRouterInputs, inferRouterOutputs } from '@trpc/server';
import type { AppRouter } from '@rootclock/server/router';
import { FIELD } from '@rootclock/domain';
import { useState, type ReactNode } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import type { useListSearch } from '../../../lib/list/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Badge } from '../../../ui/feedback/index.ts';
import { type Column, DataTable, Pager, type Selection } from '../../../ui/table/index.ts';
import { BulkActions } from '../lots/bulk-actions.tsx';
import { CodeLink } from '../code-link.tsx';
import { LotClock } from './lot-clock.tsx';

export type LotRow = inferRouterOutputs<AppRouter>['stock']['listLots']['rows'][number];
export type LotFilter = Omit<
  inferRouterInputs<AppRouter>['stock']['listLots'],
  'page' | 'sort' | 'descending' | 'perPage'
>;
type LotSort = NonNullable<inferRouterInputs<AppRouter>['stock']['listLots']['sort']>;

const SORTS: readonly LotSort[] = ['code', 'plant', 'plantBy', 'units', 'free', 'potted'];
export const LIST_DEFAULTS = { sort: 'plantBy', filters: ['q', 'place', 'container', 'state', 'held', 'band', 'free'] };

export interface LotsTableProps {
  /** The table is that of a place: its verbs leave alone what stands elsewhere. */
  here?: boolean;
  list: ReturnType<typeof useListSearch>;
  filter: LotFilter;
  caption: (total: number) => string;
  empty: ReactNode;
}

export function LotsTable({ here = false, list, filter, caption, empty }: LotsTableProps) {
  const selection = useSelection(here ? filter.placeId : null);
  const columns = useColumns(filter.placeId !== undefined && filter.placeId !== null);
  const sort = SORTS.find((each) => each === list.state.sort) ?? 'plantBy';
  const query = useQuery({
    ...trpc.stock.listLots.queryOptions({ ...filter, page: list.state.page, sort, descending: list.state.descending }),
    placeholderData: keepPreviousData,
  });
  return (
    <Read query={query}>
      {({ rows, total, page, perPage }) => (
        <div className="stack">
          <DataTable
            caption={caption(total)}
            rows={rows}
            rowId={(row) => row.lotId}
            rowName={(row) => `${row.code} ${row.scientificName}`}
            columns={columns}
            sort={list.sort}
            onSort={list.onSort}
            {...(selection ? { selection } : {})}
            empty={empty}
            stale={query.isPlaceholderData}
          />
          <Pager page={page} perPage={perPage} total={total} onPage={list.onPage} />
        </div>
      )}
    </Read>
  );
}

/** Rows can be chosen by whoever may work on them; at a place only what stands there is worked on. */
function useSelection(placeId: string | null | undefined): Selection | null {
  const { mayBe } = useSession();
  const [ids, onChange] = useState<ReadonlySet<string>>(new Set());
  if (!mayBe(FIELD)) return null;
  return {
    ids,
    onChange,
    actions: (lotIds) => (
      <BulkActions lotIds={lotIds} {...(placeId ? { placeId } : {})} onDone={() => onChange(new Set())} />
    ),
  };
}

function useColumns(atPlace: boolean): Column<LotRow>[] {
  const { table, holds } = useMessages().stockIn;
  const { ui } = useMessages();
  const { dates, numbers } = useFormat();
  const onHand = (row: LotRow) =>
    row.countKind === 'counted'
      ? numbers.count(row.onHandUnits)
      : `${table.estimated} ${numbers.count(row.onHandUnits)}`;
  return [
    {
      key: 'code',
      header: table.lot,
      sortable: true,
      title: true,
      cell: (row) => <CodeLink to={paths.lot(row.lotId)}>{row.code}</CodeLink>,
    },
    {
      key: 'plant',
      header: table.plant,
      sortable: true,
      cell: (row) => (
        <span>
          <i>{row.scientificName}</i>
          {row.holds.length > 0 && (
            <span className="row">
              {row.holds.map((reason) => (
                <Badge key={reason} shape="over" tone="soon">
                  {holds[reason]}
                </Badge>
              ))}
            </span>
          )}
        </span>
      ),
    },
    { key: 'plantBy', header: table.clock, sortable: true, cell: (row) => <LotClock lot={row} /> },
    {
      key: 'units',
      header: atPlace ? table.here : table.onHand,
      sortable: !atPlace,
      figure: true,
      cell: (row) => (
        <span>
          {atPlace ? numbers.count(row.hereUnits ?? 0) : onHand(row)}
          {atPlace && row.hereUnits !== row.onHandUnits && (
            <span className="choice-hint">{table.ofAll(onHand(row))}</span>
          )}
          {row.stagedUnits > 0 && <span className="choice-hint">{table.staged(row.stagedUnits)}</span>}
        </span>
      ),
    },
    { key: 'free', header: table.free, sortable: true, figure: true, cell: (row) => numbers.count(row.freeUnits) },
    {
      key: 'place',
      header: table.places,
      cell: (row) =>
        row.places.length === 1
          ? row.places[0]?.code
          : row.places.map((place) => `${place.code} (${numbers.count(place.units)})`).join(', '),
    },
    {
      key: 'potted',
      header: table.potted,
      sortable: true,
      cell: (row) => (
        <span>
          {row.containerName}
          <span className="choice-hint">
            {table.since(
              row.pottedPrecision === 'day'
                ? dates.short(row.pottedOn)
                : dates.rough(row.pottedOn, row.pottedPrecision, (season) => ui[season]),
            )}
          </span>
        </span>
      ),
    },
  ];
}
