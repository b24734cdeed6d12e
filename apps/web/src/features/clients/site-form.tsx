/** SiteSheet: a new site of a client, or a change of one. */
import { useQuery } from '@tanstack/react-query';
import { clients as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { trpc } from '../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../lib/form/index.ts';
import { newId } from '../../lib/ids.ts';
import { useCommand } from '../../lib/outbox/index.ts';
import { useMessages } from '../../messages/index.ts';
import { toast } from '../../ui/feedback/index.ts';
import { CheckboxField, SelectField, TextArea, TextField } from '../../ui/fields/index.ts';
import { Form } from '../../ui/form/index.ts';
import { Sheet } from '../../ui/overlay/index.ts';

export interface SiteSheetProps {
  clientId: string;
  /** Left out for a new site. */
  site?: contracts.SiteRow;
  onClose: () => void;
  onSaved?: (siteId: string) => void;
}

export function SiteSheet({ clientId, site, onClose, onSaved }: SiteSheetProps) {
  const { clients: words, orders } = useMessages();
  const [siteId] = useState(() => site?.id ?? newId());
  const { data: regions } = useQuery(trpc.plants.listRegions.queryOptions({}));
  const initial = {
    name: site?.name ?? '',
    address: site?.address ?? '',
    region: site?.region ?? '',
    livestockNear: site?.livestockNear ?? false,
    note: site?.note ?? '',
  };
  const onDone = () => {
    toast({ text: words.siteSaved });
    onSaved?.(siteId);
    onClose();
  };
  const adding = useCommandForm({
    command: useCommand('clients.addSite', { title: words.siteTitle }),
    contract: contracts.addSite,
    initial,
    body: (values) => ({ clientId, siteId, ...values }),
    onSaved: onDone,
  });
  const editing = useCommandForm({
    command: useCommand('clients.editSite', { title: words.siteEditTitle }),
    contract: contracts.editSite,
    initial,
    body: (values) => ({ siteId, ...values }),
    row: { id: 'siteId', edition: site?.edition ?? 1 },
    onSaved: onDone,
  });
  const form = site ? editing : adding;
  return (
    <Sheet open onClose={onClose} title={site ? words.siteEditTitle : words.siteTitle}>
      <Form {...form.props}>
        <TextField label={words.siteName} autoComplete="off" {...form.field('name')} />
        <TextArea label={words.siteAddress} optional rows={2} {...form.field('address')} />
        <SelectField
          label={words.region}
          hint={words.regionHint}
          optional
          empty={words.regionNone}
          choices={(regions ?? []).map(({ code, name }) => ({ value: code, label: name }))}
          {...form.field('region')}
        />
        <CheckboxField label={words.livestock} hint={words.livestockHint} {...form.field('livestockNear')} />
        <TextArea label={orders.note} optional rows={2} {...form.field('note')} />
        <Submit form={form}>{orders.save}</Submit>
      </Form>
    </Sheet>
  );
}
