/**
 * The pull list of one order, place by place, as a crew walks it: on the phone every row has its own button, on paper its own box. What a
 * crew must know of each plant stands on it.
 */
import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import type { gardens as contracts } from '@rootclock/contracts';
import { FIELD, GROWERS } from '@rootclock/domain';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useEntryDay } from '../../../lib/entry-day.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button, ButtonLink } from '../../../ui/action/index.ts';
import { Callout, EmptyState, toast } from '../../../ui/feedback/index.ts';
import { DateField } from '../../../ui/fields/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { PlantCare, WorkCautions } from './pull-cautions.tsx';
import { PullPlace } from './pull-place.tsx';
import { NotOnTheList, StagedList } from './pull-rest.tsx';
import './pull.css';

export function PullPage() {
  const { orderId } = useParams({ strict: false }) as { orderId: string };
  return (
    <Read query={useQuery(trpc.gardens.readPullList.queryOptions({ orderId }))}>{(list) => <Pull list={list} />}</Read>
  );
}

function Pull({ list }: { list: contracts.PullList }) {
  const { gardens, orders } = useMessages();
  const words = gardens.pull;
  const { mayBe } = useSession();
  const { dates } = useFormat();
  const { day: happenedOn, today, chooseDay } = useEntryDay('gardens.pull');
  const issue = useCommand('gardens.issuePullList', { title: `${words.issue}: ${list.orderCode}` });
  const command = useCommand('gardens.pullForOrder', { title: words.title(list.orderCode) });
  const mayPull = mayBe(FIELD);
  const isFloating = list.rows.length > 0;
  const next =
    list.kind === 'installation'
      ? { to: paths.planting(list.orderId), label: orders.list.toPlant }
      : { to: paths.handOver(list.orderId), label: orders.list.toHandOver };
  return (
    <div className="pull">
      <PageHeader
        back={{ to: paths.order(list.orderId), label: list.orderCode }}
        kicker={orders.kinds[list.kind]}
        title={words.title(list.orderCode)}
        facts={
          <>
            <p>{words.for(list.clientName, list.siteName)}</p>
            {list.siteAddress && <p>{list.siteAddress}</p>}
            <p>
              <time dateTime={list.dueOn}>{orders.dueOn(list.dueOn, dates.fromToday(list.dueOn))}</time>
            </p>
            <p>{list.issuedOn ? words.issuedOn(list.issuedOn) : isFloating && words.notIssued}</p>
          </>
        }
        actions={
          <>
            {list.staged.length > 0 && mayPull && (
              <ButtonLink to={next.to} look={list.rows.length === 0 ? 'primary' : 'plain'}>
                {next.label}
              </ButtonLink>
            )}
            {mayBe(GROWERS) && isFloating && (
              <Button
                look={list.issuedOn ? 'plain' : 'primary'}
                busy={issue.state === 'sending'}
                onClick={() =>
                  void issue.send({ orderId: list.orderId }).then(() => toast({ text: words.issued }), tellRefused)
                }
              >
                {list.issuedOn ? words.issueAgain : words.issue}
              </Button>
            )}
            <Button onClick={() => window.print()}>{words.print}</Button>
          </>
        }
      />
      {list.livestockNear && <Callout tone="caution">{orders.list.livestock}</Callout>}
      {list.rows.length === 0 && <Nothing isStaged={list.staged.length > 0} />}
      {mayPull && list.rows.length > 0 && (
        <div className="pull-day">
          <DateField name="happenedOn" label={words.pulledOn} max={today} value={happenedOn} onChange={chooseDay} />
        </div>
      )}
      {placesOf(list.rows).map((rows) => (
        <PullPlace key={rows[0]?.placeId} pulling={{ list, happenedOn, command }} rows={rows} mayPull={mayPull} />
      ))}
      <StagedList list={list} />
      <NotOnTheList list={list} />
      <PlantCare list={list} />
      <WorkCautions list={list} />
    </div>
  );
}

function Nothing({ isStaged }: { isStaged: boolean }) {
  const { gardens } = useMessages();
  const words = gardens.pull;
  if (isStaged)
    return (
      <EmptyState kind="all-done" title={words.allPulled}>
        {words.allPulledText}
      </EmptyState>
    );
  return (
    <EmptyState kind="nothing-yet" title={words.nothingHere}>
      {words.nothingHereText}
    </EmptyState>
  );
}

/** The rows arrive in the order in which a crew walks; each run of one place becomes a group. */
function placesOf(rows: readonly contracts.PullRow[]): contracts.PullRow[][] {
  const groups: contracts.PullRow[][] = [];
  for (const row of rows) {
    const last = groups.at(-1);
    if (last?.[0]?.placeId === row.placeId) last.push(row);
    else groups.push([row]);
  }
  return groups;
}
