/** One client: how to reach them, their sites with beds, and their orders. */
import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import type { gardens as contracts } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { useState } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { isMending } from '../../../lib/outbox/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button, ButtonLink } from '../../../ui/action/index.ts';
import { Callout, EmptyState } from '../../../ui/feedback/index.ts';
import { DefinitionList, PageHeader, Section } from '../../../ui/layout/index.ts';
import { OrderTable } from '../../promises/orders/order-table.tsx';
import { BlankClient } from './blank-client.tsx';
import { ClientSheet } from '../../clients/client-form.tsx';
import { SiteCard } from '../../clients/site-card.tsx';
import { SiteSheet } from '../../clients/site-form.tsx';
import '../../clients/clients.css';

export function ClientPage() {
  const { clientId } = useParams({ strict: false }) as { clientId: string };
  return (
    <Read query={useQuery(trpc.gardens.readClient.queryOptions({ clientId }))}>
      {(client) => <Client client={client} />}
    </Read>
  );
}

function Client({ client }: { client: contracts.ClientPage }) {
  const { clients: words, orders } = useMessages();
  const { mayBe } = useSession();
  const [open, setOpen] = useState<'edit' | 'site' | null>(() => (isMending('clients.editClient') ? 'edit' : null));
  const close = () => setOpen(null);
  const mayChange = mayBe(GROWERS) && !client.isBlanked;
  const addSite = mayChange && <Button onClick={() => setOpen('site')}>{words.addSite}</Button>;
  const addOrder = mayChange && (
    <ButtonLink to={paths.newOrder()} search={{ client: client.id }} look="primary">
      {words.newOrder}
    </ButtonLink>
  );
  return (
    <>
      <PageHeader
        back={{ to: paths.clients(), label: words.back }}
        kicker={words.client}
        title={client.name}
        actions={
          <>
            {addOrder}
            {mayChange && <Button onClick={() => setOpen('edit')}>{words.edit}</Button>}
          </>
        }
      />
      <div className="stack client-facts">
        {client.isBlanked && <Callout tone="note">{words.isBlanked}</Callout>}
        <DefinitionList
          facts={[
            { term: words.phone, value: client.phone && <a href={`tel:${client.phone}`}>{client.phone}</a> },
            { term: words.email, value: client.email && <a href={`mailto:${client.email}`}>{client.email}</a> },
            { term: words.address, value: client.address },
            client.leadDays > 0 && { term: words.leadDays, value: words.leadDaysIs(client.leadDays) },
            { term: orders.note, value: client.note },
          ]}
        />
      </div>
      <Section title={words.sitesTitle} actions={addSite}>
        {client.siteRows.length === 0 && (
          <EmptyState kind="nothing-yet" title={words.noSites} actions={addSite}>
            {words.noSitesText}
          </EmptyState>
        )}
        <div className="site-cards">
          {client.siteRows.map((site) => (
            <SiteCard key={site.id} site={site} />
          ))}
        </div>
      </Section>
      <Section title={words.ordersTitle}>
        <OrderTable
          rows={client.orders}
          caption={orders.list.caption(client.orders.length)}
          quietCaption
          withoutClient
          empty={<EmptyState kind="nothing-yet" title={words.noOrders} actions={addOrder} />}
        />
      </Section>
      <BlankClient client={client} />
      {open === 'edit' && <ClientSheet client={client} onClose={close} />}
      {open === 'site' && <SiteSheet clientId={client.id} onClose={close} />}
    </>
  );
}
