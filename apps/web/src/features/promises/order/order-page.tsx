/** One order: who, where and when, its lines with what serves them, what is short and why, and what happened. */
import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import type { promises as contracts } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { useState } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button, TextLink } from '../../../ui/action/index.ts';
import { Callout, EmptyState } from '../../../ui/feedback/index.ts';
import { PageHeader, Panel, Section } from '../../../ui/layout/index.ts';
import { PlanMark } from '../../pot-life/plan-mark.tsx';
import { AddKitSheet } from '../orders/add-kit-sheets.tsx';
import { Progress } from '../marks/progress.tsx';
import { LineCard } from './line/line-card.tsx';
import { AddLineSheet } from './line/line-sheets.tsx';
import { OrderActions } from './order-actions.tsx';
import { OrderStory } from './order-story.tsx';
import './order-page.css';

export function OrderPage() {
  const { orderId } = useParams({ strict: false }) as { orderId: string };
  return (
    <Read query={useQuery(trpc.promises.readOrder.queryOptions({ orderId }))}>
      {(order) => <Order order={order} />}
    </Read>
  );
}

function Order({ order }: { order: contracts.OrderPage }) {
  const { orders, promises } = useMessages();
  const words = orders.list;
  const { mayBe } = useSession();
  const [adding, setAdding] = useState<'line' | 'kit' | null>(null);
  const mayChange = mayBe(GROWERS) && order.state === 'open';
  const lines = order.lineRows.filter((line) => line.withdrawnOn === null);
  const withdrawn = order.lineRows.filter((line) => line.withdrawnOn !== null);
  const add = mayChange && (
    <>
      <Button onClick={() => setAdding('line')}>{promises.line.add}</Button>
      <Button onClick={() => setAdding('kit')}>{orders.kits.addToOrder}</Button>
    </>
  );
  return (
    <>
      <PageHeader
        back={{ to: paths.gardens(), label: words.back }}
        kicker={orders.kinds[order.kind]}
        title={words.titleFor(order.code, order.clientName)}
        facts={<OrderFacts order={order} />}
        actions={<OrderActions order={order} />}
      />
      <div className="stack order-head">
        {order.state === 'open' && <PlanMark about="page" />}
        {order.state !== 'open' && (
          <Callout tone="note">{order.state === 'done' ? words.isDone : words.isCancelled}</Callout>
        )}
        {order.wantedUnits > 0 && order.state !== 'cancelled' && (
          <Panel>
            <Progress {...order} />
          </Panel>
        )}
        {order.note && <Callout tone="note">{order.note}</Callout>}
      </div>
      <Section title={words.linesTitle} aside={lines.length > 0 ? words.lines(lines.length) : undefined} actions={add}>
        {lines.length === 0 && (
          <EmptyState kind="nothing-yet" title={words.noLines} actions={add}>
            {words.noLinesText}
          </EmptyState>
        )}
        <div className="order-lines">
          {lines.map((line) => (
            <LineCard key={line.id} order={order} line={line} mayChange={mayChange} />
          ))}
        </div>
      </Section>
      {withdrawn.length > 0 && (
        <Section title={words.withdrawnTitle} aside={withdrawn.length}>
          <div className="order-lines">
            {withdrawn.map((line) => (
              <LineCard key={line.id} order={order} line={line} mayChange={false} />
            ))}
          </div>
        </Section>
      )}
      <Section title={words.storyTitle}>
        <OrderStory order={order} />
      </Section>
      {adding === 'line' && <AddLineSheet order={order} onClose={() => setAdding(null)} />}
      {adding === 'kit' && <AddKitSheet order={order} onClose={() => setAdding(null)} />}
    </>
  );
}

function OrderFacts({ order }: { order: contracts.OrderPage }) {
  const { orders } = useMessages();
  const words = orders.list;
  const { dates } = useFormat();
  return (
    <>
      <p>
        <time dateTime={order.dueOn}>{orders.dueOn(order.dueOn, dates.fromToday(order.dueOn))}</time>
      </p>
      <p>
        <TextLink to={paths.client(order.clientId)}>{order.clientName}</TextLink>
        {order.siteId && order.siteName && (
          <>
            {' · '}
            <TextLink to={paths.site(order.siteId)}>{order.siteName}</TextLink>
          </>
        )}
      </p>
      {order.leadDays > 0 && order.kind !== 'installation' && <p>{words.leadDays(order.leadDays)}</p>}
      {order.nativesOnly && <p>{words.onlyNatives(order.region)}</p>}
      {order.livestockNear && <p>{words.livestock}</p>}
      {order.pullIssuedOn && <p>{words.issuedOn(order.pullIssuedOn)}</p>}
    </>
  );
}
