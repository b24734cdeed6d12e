/** The board: every lot, and every batch in cells, by the day it must be in the ground. */
import { potLife as contracts } from '@rootclock/contracts';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { trpc } from '../../lib/api/index.ts';
import { useListSearch } from '../../lib/list/index.ts';
import { Read } from '../../lib/read/index.ts';
import { useMessages } from '../../messages/index.ts';
import { EmptyState } from '../../ui/feedback/index.ts';
import { CheckboxField, SelectField } from '../../ui/fields/index.ts';
import { PageHeader } from '../../ui/layout/index.ts';
import { FilterBar, Pager } from '../../ui/table/index.ts';
import { StockTabs } from '../stock/stock-tabs.tsx';
import { BoardCard } from './board-card.tsx';
import type { Board } from './board-data.ts';
import { PlanMark } from './plan-mark.tsx';
import { SeasonChart } from './season-chart.tsx';
import './board.css';

const PER_PAGE = 25;
const KINDS = ['lot', 'batch'] as const;
const oneOf = <Word extends string>(words: readonly Word[], text: string): Word | null =>
  words.find((word) => word === text) ?? null;

export function BoardPage() {
  const { board } = useMessages();
  const list = useListSearch({ sort: 'plantBy', filters: ['show', 'kind', 'place', 'free'] });
  const places = useQuery(trpc.stock.listPlaces.queryOptions({}));
  const show = oneOf(contracts.BOARD_FILTERS, list.filter('show'));
  const query = useQuery({
    ...trpc.potLife.readBoard.queryOptions({
      show,
      kind: oneOf(KINDS, list.filter('kind')) ?? 'all',
      placeId: list.filter('place') || null,
      free: list.filter('free') === 'yes',
      page: list.state.page,
      perPage: PER_PAGE,
    }),
    placeholderData: keepPreviousData,
  });
  const filter = (name: string) => ({
    name,
    value: list.filter(name),
    onChange: (value: string) => list.setFilter(name, value),
    optional: 'unsaid' as const,
  });
  return (
    <div className="stack">
      <StockTabs />
      <PageHeader title={board.title} facts={board.lead} />
      <PlanMark about="page" />
      <Read query={query} lines={8}>
        {(page) => (
          <>
            <Bands board={page} show={show} onShow={(band) => list.setFilter('show', band)} />
            <FilterBar set={list.filtersSet} onClear={list.clearFilters}>
              <SelectField
                {...filter('kind')}
                label={board.kind}
                empty={board.bothKinds}
                choices={KINDS.map((kind) => ({ value: kind, label: board.kinds[kind] }))}
              />
              <SelectField
                {...filter('place')}
                label={board.place}
                empty={board.anyPlace}
                choices={(places.data ?? []).map((place) => ({
                  value: place.placeId,
                  label: `${'\u2003'.repeat(place.depth)}${place.code}`,
                }))}
              />
              <CheckboxField
                name="free"
                label={board.onlyFree}
                value={list.filter('free') === 'yes'}
                onChange={(only) => list.setFilter('free', only ? 'yes' : '')}
              />
            </FilterBar>
            {page.rows.length === 0 ? (
              list.filtersSet > 0 ? (
                <EmptyState kind="nothing-matches" title={board.noneTitle}>
                  {board.noneText}
                </EmptyState>
              ) : (
                <EmptyState kind="nothing-yet" title={board.emptyTitle}>
                  {board.emptyText}
                </EmptyState>
              )
            ) : (
              <ul className="board-list" aria-busy={query.isPlaceholderData || undefined}>
                {page.rows.map((row) => (
                  <BoardCard key={row.id} row={row} />
                ))}
              </ul>
            )}
            <Pager page={page.page} perPage={page.perPage} total={page.total} onPage={list.onPage} />
            <SeasonChart board={page} />
          </>
        )}
      </Read>
    </div>
  );
}

/** The bands with how many lie in each: a look at the whole and a way to narrow it. */
function Bands({ board, show, onShow }: { board: Board; show: string | null; onShow: (band: string) => void }) {
  const { board: say } = useMessages();
  const all = contracts.BOARD_FILTERS.filter((band) => board.counts[band] > 0 || band === show);
  return (
    <div className="board-bands" role="group" aria-label={say.show}>
      <button type="button" className="board-chip" aria-pressed={show === null} onClick={() => onShow('')}>
        {say.all}
      </button>
      {all.map((band) => (
        <button
          key={band}
          type="button"
          className={`board-chip board-chip-${band}`}
          aria-pressed={show === band}
          onClick={() => onShow(show === band ? '' : band)}
        >
          {say.bands[band]} <b className="figure">{board.counts[band]}</b>
        </button>
      ))}
    </div>
  );
}
