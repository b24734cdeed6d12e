/** One batch of the plan: what, how much and by when, for whom, and what it takes; what it rests on stands folded under it. */
import { FIELD } from '@rootclock/domain';
import { useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { type Messages, useMessages } from '../../../messages/index.ts';
import { ButtonLink, TextLink } from '../../../ui/action/index.ts';
import { Badge, type BadgeShape, Callout } from '../../../ui/feedback/index.ts';
import { Panel } from '../../../ui/layout/index.ts';
import { LineBasis } from './line-basis.tsx';
import { LineFacts } from './line-facts.tsx';
import { amountOf, linkOf, type PlanRow } from './plan-words.ts';
import { StartNow } from './start-now.tsx';

const SHAPES: Record<PlanRow['state'], BadgeShape> = {
  coming: 'open',
  due: 'full',
  overdue: 'half',
  'too-late': 'over',
};

export function PlanLine({ row, placeId }: { row: PlanRow; placeId: string }) {
  const { planning, propagation } = useMessages();
  const { plan: say } = planning;
  const { dates } = useFormat();
  const { mayBe, today } = useSession();
  const amount = amountOf(row, planning);
  const what = `${row.scientificName}, ${amount}`;
  // What waits for its season cannot be started by a tap today.
  const canStart = row.state === 'due' || (row.state === 'overdue' && row.startOn <= today);
  return (
    <Panel>
      <article className="plan-line" aria-label={what}>
        <header className="plan-line-head">
          <h3>
            <TextLink to={paths.plant(row.plantId)}>
              <i lang="la">{row.scientificName}</i>
            </TextLink>
          </h3>
          <Badge shape={SHAPES[row.state]}>
            {row.state === 'overdue' && row.startOn > today ? say.mayBeLate : say.states[row.state]}
          </Badge>
          <p className="plan-line-how">
            {propagation.methods[row.method]}
            {row.label ? `, ${row.label}` : ''} → {row.containerName}
          </p>
        </header>
        <div className="plan-line-say">
          <p className="plan-line-amount">{startWords(row, amount, today, say, dates.short)}</p>
          <Timing row={row} />
          <ForWhom row={row} />
        </div>
        {row.potLife.passes && row.potLife.plantByOn && (
          <Callout tone="caution">
            {say.potLifePasses(dates.short(row.potLife.plantByOn), dates.short(row.forWhom.at(-1)?.on ?? row.targetOn))}{' '}
            {row.potLife.notBeforeOn &&
              (row.potLife.basis === 'container' ? say.potLater : say.emergeLater)(
                dates.short(row.potLife.notBeforeOn),
              )}
          </Callout>
        )}
        <LineFacts row={row} />
        <LineBasis row={row} />
        {mayBe(FIELD) && (
          <div className="row">
            {canStart && <StartNow row={row} what={what} placeId={placeId} />}
            <ButtonLink {...linkOf(row)} aria-label={say.startOf(what)}>
              {say.start}
            </ButtonLink>
          </div>
        )}
      </article>
    </Panel>
  );
}

function startWords(
  row: PlanRow,
  amount: string,
  today: string,
  say: Messages['planning']['plan'],
  short: (on: string) => string,
): string {
  const waits = row.startOn > today;
  if (row.state === 'too-late') return waits ? say.startedOn(amount, short(row.startOn)) : say.startedToday(amount);
  if (row.state === 'overdue') return waits ? say.startOnDay(amount, short(row.startOn)) : say.startAtOnce(amount);
  return say.startBy(amount, short(row.startOn));
}

function Timing({ row }: { row: PlanRow }) {
  const { plan: say } = useMessages().planning;
  const { dates } = useFormat();
  const missed = row.missedOn && dates.short(row.missedOn);
  if (row.state === 'too-late' && missed) {
    return (
      <>
        <p>{say.tooLateSince(missed, dates.short(row.targetOn))}</p>
        <p>
          {say.firstReady(dates.short(row.readyOn), dates.short(row.usualReadyOn))}{' '}
          {row.servesOn && row.servesOn > row.readyOn && say.canGoOut(dates.long(row.servesOn))}
        </p>
      </>
    );
  }
  if (row.state === 'overdue' && missed) {
    const target = dates.short(row.targetOn);
    return (
      <p>
        {say.overdueSince(missed)}{' '}
        {row.usualReadyOn <= row.targetOn ? say.inTimeUsually(target) : say.inTimeQuickly(target)}{' '}
        {say.firstReady(dates.short(row.readyOn), dates.short(row.usualReadyOn))}
      </p>
    );
  }
  return (
    <p>
      {say.ready(row.plants, dates.short(row.targetOn))}
      {row.usualReadyOn < row.targetOn && `, ${say.usuallyReady(dates.short(row.usualReadyOn))}`}
    </p>
  );
}

function ForWhom({ row }: { row: PlanRow }) {
  const { plan: say } = useMessages().planning;
  const { dates } = useFormat();
  return (
    <ul className="plan-for" aria-label={say.forWhom}>
      {row.forWhom.map((wanted) => {
        const day = dates.short(wanted.on);
        const part = wanted.servedUnits < wanted.units ? ` (${say.served(wanted.servedUnits, wanted.units)})` : '';
        return (
          <li key={wanted.demandId}>
            {wanted.orderId === null ? (
              say.ofExpected(wanted.units, day, wanted.note)
            ) : (
              <TextLink to={paths.order(wanted.orderId)}>
                {say.ofOrder(wanted.units, wanted.orderCode ?? '', wanted.clientName ?? '', day)}
              </TextLink>
            )}
            {part}
          </li>
        );
      })}
    </ul>
  );
}
