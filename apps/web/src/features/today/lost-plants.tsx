/**
 * Orders that lost plants because of what happened to a lot or batch, or because a day passed: each with what happened and what can be done about it. Not
 * shown while nothing was lost.
 */
import type { promises } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { lazy, Suspense, useState } from 'react';
import { trpc, useSession } from '../../lib/api/index.ts';
import { useFormat } from '../../lib/format/index.ts';
import { paths } from '../../lib/paths.ts';
import { Read } from '../../lib/read/index.ts';
import { useMessages } from '../../messages/index.ts';
import { Button, ButtonLink } from '../../ui/action/index.ts';
import { Section } from '../../ui/layout/index.ts';
import { Taxon } from '../plants/taxon.tsx';
import type { LossWay } from './loss-sheets.tsx';

/** The forms of an order are large, and on most days nobody opens one here. */
const LossSheets = lazy(() => import('./loss-sheets.tsx').then(({ LossSheets: sheets }) => ({ default: sheets })));

const SHOWN = 8;

export function LostPlants() {
  const { losses: say, today: words } = useMessages();
  const query = useQuery(trpc.promises.listLosses.queryOptions({ perPage: SHOWN }));
  return (
    <Read query={query}>
      {({ rows, total }) =>
        rows.length === 0 ? null : (
          <Section title={say.title} aside={total}>
            <ul className="today-list">
              {rows.map((row) => (
                <li key={row.lineId}>
                  <LostLine row={row} />
                </li>
              ))}
            </ul>
            {total > rows.length && <p>{words.more(total - rows.length)}</p>}
          </Section>
        )
      }
    </Read>
  );
}

function LostLine({ row }: { row: promises.LossRow }) {
  const { losses: say, today: words } = useMessages();
  const { dates } = useFormat();
  const { mayBe } = useSession();
  const [way, setWay] = useState<LossWay | null>(null);
  const about = `${row.orderCode}, ${row.scientificName}`;
  const press = (to: LossWay) => (
    <Button look="quiet" aria-label={say.about(say.ways[to], about)} onClick={() => setWay(to)}>
      {say.ways[to]}
    </Button>
  );
  return (
    <article aria-label={about}>
      <Link to={paths.order(row.orderId)} className="today-row today-row-plain">
        <span>
          <Taxon name={row.scientificName} />, {row.containerCode}:{' '}
          <b className="figure">{words.shortBy(row.shortUnits, row.units)}</b>
          <span className="figure today-note">
            <span className="link">{row.orderCode}</span> {row.clientName}, {dates.long(row.dueOn)},{' '}
            {dates.fromToday(row.dueOn)}
          </span>
        </span>
      </Link>
      <ul className="today-causes">
        {row.causes.map((cause) => (
          <li key={`${cause.happenedOn} ${cause.codes.join(' ')} ${cause.units}`}>{say.cause(cause)}</li>
        ))}
      </ul>
      <div className="today-ways">
        {mayBe(GROWERS) && press('serve')}
        {mayBe(GROWERS) && press('accept')}
        {mayBe(GROWERS) && press('day')}
        <ButtonLink look="quiet" to={paths.planning()} aria-label={say.about(say.start, about)}>
          {say.start}
        </ButtonLink>
        {mayBe(GROWERS) && press('aside')}
      </div>
      {way && (
        <Suspense>
          <LossSheets row={row} way={way} onClose={() => setWay(null)} />
        </Suspense>
      )}
    </article>
  );
}
