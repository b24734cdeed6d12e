/** One site: where it is, its beds, what was planted there, and its orders. */
import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import type { clients as clientsContracts, gardens as gardensContracts } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { useState } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { isMending } from '../../../lib/outbox/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { EmptyState } from '../../../ui/feedback/index.ts';
import { DefinitionList, PageHeader, Section } from '../../../ui/layout/index.ts';
import { HeadPhoto } from '../../files/photo-tile.tsx';
import { PhotosSection } from '../../files/photos-section.tsx';
import { OrderTable } from '../../promises/orders/order-table.tsx';
import { useBedFacts } from '../../clients/bed-facts.ts';
import { BedSheet } from '../../clients/bed-form.tsx';
import { PlantedTable } from './planted-table.tsx';
import { SiteSheet } from '../../clients/site-form.tsx';
import '../../clients/clients.css';

export function SitePage() {
  const { siteId } = useParams({ strict: false }) as { siteId: string };
  return <Read query={useQuery(trpc.gardens.readSite.queryOptions({ siteId }))}>{(site) => <Site site={site} />}</Read>;
}

function Site({ site }: { site: gardensContracts.SitePage }) {
  const { clients: words, orders } = useMessages();
  const { mayBe } = useSession();
  const factsOf = useBedFacts();
  const [open, setOpen] = useState<'site' | 'bed' | clientsContracts.BedRow | null>(() =>
    isMending('clients.editSite') ? 'site' : null,
  );
  const close = () => setOpen(null);
  const mayChange = mayBe(GROWERS);
  const addBed = mayChange && <Button onClick={() => setOpen('bed')}>{words.addBed}</Button>;
  return (
    <>
      <PageHeader
        back={{ to: paths.client(site.clientId), label: site.clientName }}
        kicker={orders.site}
        title={site.name}
        sign={<HeadPhoto subject={{ kind: 'site', id: site.id }} />}
        actions={mayChange && <Button onClick={() => setOpen('site')}>{words.edit}</Button>}
      />
      <div className="client-facts">
        <DefinitionList
          facts={[
            { term: words.siteAddress, value: site.address },
            { term: words.region, value: site.region ?? words.regionNone },
            site.livestockNear && { term: words.livestock, value: words.livestockHint },
            { term: orders.note, value: site.note },
          ]}
        />
      </div>
      <Section
        title={words.beds}
        aside={site.beds.length > 0 ? words.bedsCount(site.beds.length) : undefined}
        actions={addBed}
      >
        {site.beds.length === 0 ? (
          <EmptyState kind="nothing-yet" title={words.noBeds} actions={addBed} />
        ) : (
          <ul className="bed-list">
            {site.beds.map((bed) => (
              <li key={bed.id} className="bed-row">
                <div>
                  <p>{bed.name}</p>
                  <p className="bed-facts">{[factsOf(bed), bed.note].filter(Boolean).join(' · ')}</p>
                </div>
                {mayChange && (
                  <Button look="quiet" aria-label={words.editBed(bed.name)} onClick={() => setOpen(bed)}>
                    {words.edit}
                  </Button>
                )}
              </li>
            ))}
          </ul>
        )}
      </Section>
      <Section title={words.plantedTitle}>
        <PlantedTable rows={site.planted} />
      </Section>
      <PhotosSection subject={{ kind: 'site', id: site.id }} />
      <Section title={words.ordersTitle}>
        <OrderTable
          rows={site.orders}
          caption={orders.list.caption(site.orders.length)}
          quietCaption
          withoutClient
          empty={<EmptyState kind="nothing-yet" title={words.noOrders} />}
        />
      </Section>
      {open === 'site' && <SiteSheet clientId={site.clientId} site={site} onClose={close} />}
      {open === 'bed' && <BedSheet siteId={site.id} onClose={close} />}
      {open !== null && typeof open === 'object' && <BedSheet siteId={site.id} bed={open} onClose={close} />}
    </>
  );
}
