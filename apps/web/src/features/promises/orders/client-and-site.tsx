/** For whom and where: both can be added on the spot, so that nothing typed is lost by leaving the page. */
import { useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { trpc } from '../../../lib/api/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { SelectField } from '../../../ui/fields/index.ts';
import { ClientSheet } from '../../clients/client-form.tsx';
import { SiteSheet } from '../../clients/site-form.tsx';
import { ClientPicker, type PickedClient } from '../../clients/client-picker.tsx';

export interface ClientAndSiteProps {
  client: PickedClient | null;
  siteId: string;
  isSiteNeeded: boolean;
  onChange: (part: { client?: PickedClient | null; siteId?: string }) => void;
}

export function ClientAndSite({ client, siteId, isSiteNeeded, onChange }: ClientAndSiteProps) {
  const { orders } = useMessages();
  const words = orders.list;
  const [adding, setAdding] = useState<'client' | 'site' | null>(null);
  const close = () => setAdding(null);
  const { data } = useQuery({
    ...trpc.gardens.readClient.queryOptions({ clientId: client?.id ?? '' }),
    enabled: client !== null,
  });
  const sites = data?.siteRows ?? [];
  // A client with one garden means that one, also for whoever saves before the gardens are read.
  const only = client?.onlySiteId;
  useEffect(() => {
    if (only && siteId === '' && isSiteNeeded) onChange({ siteId: only });
  }, [only, siteId, isSiteNeeded, onChange]);
  return (
    <>
      <ClientPicker
        name="clientId"
        value={client}
        onChange={(next) => onChange({ client: next, siteId: next?.id === client?.id ? siteId : '' })}
      />
      <div>
        <Button onClick={() => setAdding('client')}>{words.newClient}</Button>
      </div>
      {client && (
        <>
          <SelectField
            name="siteId"
            label={orders.site}
            hint={isSiteNeeded ? words.siteHint : undefined}
            optional={!isSiteNeeded}
            empty={isSiteNeeded ? undefined : orders.noSite}
            value={siteId}
            onChange={(next) => onChange({ siteId: next })}
            choices={sites.map((site) => ({ value: site.id, label: site.name }))}
          />
          <div>
            <Button onClick={() => setAdding('site')}>{words.newSite}</Button>
          </div>
        </>
      )}
      {adding === 'client' && (
        <ClientSheet onClose={close} onSaved={(saved) => onChange({ client: saved, siteId: '' })} />
      )}
      {adding === 'site' && client && (
        <SiteSheet clientId={client.id} onClose={close} onSaved={(saved) => onChange({ siteId: saved })} />
      )}
    </>
  );
}
