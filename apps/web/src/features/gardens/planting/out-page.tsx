/** The frame of the three forms about pulled plants: plant or hand over, and bring back. */
import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import type { promises as contracts } from '@rootclock/contracts';
import type { ReactNode } from 'react';
import { trpc } from '../../../lib/api/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Callout } from '../../../ui/feedback/index.ts';
import { PageHeader, PageTabs } from '../../../ui/layout/index.ts';
import './planting.css';

export function OutPage({ children }: { children: (order: contracts.OrderPage) => ReactNode }) {
  const { orderId } = useParams({ strict: false }) as { orderId: string };
  return (
    <Read query={useQuery(trpc.promises.readOrder.queryOptions({ orderId }))}>
      {(order) => <Frame order={order}>{children(order)}</Frame>}
    </Read>
  );
}

function Frame({ order, children }: { order: contracts.OrderPage; children: ReactNode }) {
  const { gardens, orders } = useMessages();
  const words = gardens.planting;
  const isPlanted = order.kind === 'installation';
  return (
    <>
      <PageHeader
        back={{ to: paths.order(order.id), label: order.code }}
        kicker={orders.kinds[order.kind]}
        title={(isPlanted ? words.title : words.titleHandOver)(order.code)}
        facts={gardens.pull.for(order.clientName, order.siteName)}
      />
      <PageTabs
        label={words.tabs}
        tabs={[
          isPlanted
            ? { to: paths.planting(order.id), label: words.plantTab }
            : { to: paths.handOver(order.id), label: words.handOverTab },
          { to: paths.bringBack(order.id), label: words.returnTab },
        ]}
      />
      {order.state === 'open' ? (
        children
      ) : (
        <Callout tone="note">{order.state === 'done' ? orders.list.isDone : orders.list.isCancelled}</Callout>
      )}
    </>
  );
}
