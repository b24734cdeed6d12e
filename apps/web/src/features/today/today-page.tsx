/** Today: which orders lost plants, what is to be done, what must leave its pot, what is to be pulled, what is short. */
import { FIELD, GROWERS } from '@rootclock/domain';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { trpc, useSession } from '../../lib/api/index.ts';
import { useFormat } from '../../lib/format/index.ts';
import { paths } from '../../lib/paths.ts';
import { Read } from '../../lib/read/index.ts';
import { useMessages } from '../../messages/index.ts';
import { ButtonLink } from '../../ui/action/index.ts';
import { EmptyState } from '../../ui/feedback/index.ts';
import { PageHeader, Section } from '../../ui/layout/index.ts';
import { TodayTasks } from '../planning/tasks/today-tasks.tsx';
import { BoardClock } from '../pot-life/board-clock.tsx';
import { PlanMark } from '../pot-life/plan-mark.tsx';
import { LostPlants } from './lost-plants.tsx';
import './today.css';

const SHOWN = 8;

export function TodayPage() {
  const { today: say } = useMessages();
  const { dates } = useFormat();
  const session = useSession();
  return (
    <div className="stack">
      <PageHeader title={say.title(dates.long(session.today))} titleText={say.documentTitle} />
      <nav className="row" aria-label={say.work}>
        <ButtonLink to={paths.lots()}>{say.stock}</ButtonLink>
        {session.mayBe(FIELD) && <ButtonLink to={paths.startBatch()}>{say.startBatch}</ButtonLink>}
        {session.mayBe(GROWERS) && <ButtonLink to={paths.opening()}>{say.takeIn}</ButtonLink>}
        {session.mayBe(GROWERS) && <ButtonLink to={paths.newOrder()}>{say.newOrder}</ButtonLink>}
      </nav>
      <PlanMark about="page" />
      <div className="today-columns">
        <div className="stack">
          <LostPlants />
          <TodayTasks />
          <MustLeave />
        </div>
        <div className="stack">
          <ToPull />
          <Short />
        </div>
      </div>
    </div>
  );
}

/** Past and due ones only: they come first on the board, so its first page holds them. */
function MustLeave() {
  const { today: say, board } = useMessages();
  const query = useQuery(trpc.potLife.readBoard.queryOptions({ perPage: SHOWN }));
  return (
    <Read query={query}>
      {({ rows, counts }) => {
        const urgent = rows.filter(
          ({ band, holds }) => (band === 'past' || band === 'due') && !holds.includes('mother-stock'),
        );
        const left = counts.past + counts.due - urgent.length;
        return (
          <Section
            title={say.leave}
            aside={say.leaveAside(counts.past, counts.due)}
            actions={<ButtonLink to={paths.board()}>{say.leaveAll}</ButtonLink>}
          >
            {urgent.length === 0 ? (
              <EmptyState kind="all-done" title={say.leaveNone} />
            ) : (
              <ul className="today-list">
                {urgent.map((row) => (
                  <li key={row.id}>
                    <Link to={row.kind === 'lot' ? paths.lot(row.id) : paths.batch(row.id)} className="today-row">
                      <BoardClock row={row} size={32} />
                      <span>
                        <span className="link">{row.code}</span> <i>{row.scientificName}</i>
                        <span className="figure today-note">
                          {board.units[row.unit](row.onHandUnits)},{' '}
                          {row.holds.length > 0 ? board.held : board.free(row.freeUnits)}
                        </span>
                      </span>
                    </Link>
                  </li>
                ))}
              </ul>
            )}
            {left > 0 && <p>{say.more(left)}</p>}
          </Section>
        );
      }}
    </Read>
  );
}

function ToPull() {
  const { today: say } = useMessages();
  const { dates } = useFormat();
  const query = useQuery(trpc.gardens.listToPull.queryOptions({ withinDays: 14 }));
  return (
    <Read query={query}>
      {(rows) => (
        <Section title={say.pull} aside={rows.length}>
          {rows.length === 0 ? (
            <EmptyState kind="all-done" title={say.pullNone} />
          ) : (
            <ul className="today-list">
              {rows.map((row) => (
                <li key={row.orderId}>
                  <Link
                    to={row.toPullUnits > 0 ? paths.pullList(row.orderId) : paths.order(row.orderId)}
                    className="today-row today-row-plain"
                  >
                    <span>
                      <span className="link">{row.code}</span> {row.clientName}
                      <span className="figure today-note">
                        {dates.long(row.dueOn)}, {dates.fromToday(row.dueOn)}; {say.pullUnits(row.toPullUnits)}
                      </span>
                    </span>
                  </Link>
                </li>
              ))}
            </ul>
          )}
        </Section>
      )}
    </Read>
  );
}

function Short() {
  const { today: say } = useMessages();
  const { dates } = useFormat();
  const query = useQuery(trpc.promises.listShort.queryOptions({ perPage: SHOWN }));
  return (
    <Read query={query}>
      {({ rows, total }) => (
        <Section title={say.short} aside={total} actions={<ButtonLink to={paths.gardens()}>{say.shortAll}</ButtonLink>}>
          {rows.length === 0 ? (
            <EmptyState kind="all-done" title={say.shortNone} />
          ) : (
            <ul className="today-list">
              {rows.map((row) => (
                <li key={row.lineId}>
                  <Link to={paths.order(row.orderId)} className="today-row today-row-plain">
                    <span>
                      <i>{row.scientificName}</i>, {row.containerCode}:{' '}
                      <b className="figure">{say.shortBy(row.shortUnits, row.units)}</b>
                      <span className="figure today-note">
                        {row.orderCode} {row.clientName}, {dates.long(row.dueOn)}
                      </span>
                    </span>
                  </Link>
                </li>
              ))}
            </ul>
          )}
          {total > rows.length && <p>{say.more(total - rows.length)}</p>}
        </Section>
      )}
    </Read>
  );
}
