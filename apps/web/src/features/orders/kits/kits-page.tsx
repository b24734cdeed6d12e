/** The kits that are offered, each with what it takes. */
import { useQuery } from '@tanstack/react-query';
import type { orders as contracts } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { useState } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { EmptyState } from '../../../ui/feedback/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { GardensTabs } from '../gardens-tabs.tsx';
import { Taxon } from '../../plants/taxon.tsx';
import { KitSheet } from './kit-sheet.tsx';
import './kits.css';

export function KitsPage() {
  const { orders } = useMessages();
  const words = orders.kits;
  const { mayBe } = useSession();
  const [open, setOpen] = useState<contracts.KitRow | 'new' | null>(null);
  const add = mayBe(GROWERS) && (
    <Button look="primary" onClick={() => setOpen('new')}>
      {words.add}
    </Button>
  );
  return (
    <>
      <PageHeader title={words.title} actions={add} />
      <GardensTabs />
      <p className="page-lead">{words.lead}</p>
      <Read query={useQuery(trpc.orders.listKits.queryOptions({}))}>
        {(kits) =>
          kits.length === 0 ? (
            <EmptyState kind="nothing-yet" title={words.nothingYet}>
              {words.nothingYetText}
            </EmptyState>
          ) : (
            <div className="kit-cards">
              {kits.map((kit) => (
                <KitCard key={kit.id} kit={kit} onChange={mayBe(GROWERS) ? () => setOpen(kit) : null} />
              ))}
            </div>
          )
        }
      </Read>
      {open !== null && <KitSheet kit={open === 'new' ? null : open} onClose={() => setOpen(null)} />}
    </>
  );
}

function KitCard({ kit, onChange }: { kit: contracts.KitRow; onChange: (() => void) | null }) {
  const { orders } = useMessages();
  const words = orders.kits;
  return (
    <article className="panel kit-card">
      <h2>{kit.name}</h2>
      {kit.note && <p>{kit.note}</p>}
      <ul className="plain-list">
        {kit.components.map((component) => (
          <li key={`${component.plantId}/${component.containerId}`}>
            <Taxon name={component.scientificName} />, {words.takes(component.units, component.containerName)}
          </li>
        ))}
      </ul>
      {onChange && (
        <div>
          <Button aria-label={words.change(kit.name)} onClick={onChange}>
            {orders.edit}
          </Button>
        </div>
      )}
    </article>
  );
}
