/** ClientSheet: a new client, or a change of one. */
import { clients as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../lib/form/index.ts';
import { newId } from '../../lib/ids.ts';
import { useCommand } from '../../lib/outbox/index.ts';
import { useMessages } from '../../messages/index.ts';
import { toast } from '../../ui/feedback/index.ts';
import { NumberField, TextArea, TextField } from '../../ui/fields/index.ts';
import { Form } from '../../ui/form/index.ts';
import { Sheet } from '../../ui/overlay/index.ts';
import type { PickedClient } from './client-picker.tsx';

export interface ClientSheetProps {
  /** Left out for a new client. */
  client?: contracts.ClientRow;
  onClose: () => void;
  onSaved?: (client: PickedClient) => void;
}

export function ClientSheet({ client, onClose, onSaved }: ClientSheetProps) {
  const { clients: words, orders } = useMessages();
  const [clientId] = useState(() => client?.id ?? newId());
  const form = useCommandForm({
    command: useCommand(client ? 'clients.editClient' : 'clients.addClient', {
      title: client ? words.editTitle : words.addTitle,
    }),
    contract: client ? contracts.editClient : contracts.addClient,
    initial: {
      name: client?.name ?? '',
      email: client?.email ?? '',
      phone: client?.phone ?? '',
      address: client?.address ?? '',
      leadDays: (client?.leadDays ?? 0) as number | null,
      note: client?.note ?? '',
    },
    body: (values) => ({ clientId, ...values }),
    ...(client ? { row: { id: 'clientId', edition: client.edition } } : {}),
    onSaved: (_answer, values) => {
      toast({ text: words.added(values.name.trim()) });
      onSaved?.({ id: clientId, name: values.name.trim() });
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={client ? words.editTitle : words.addTitle}>
      <Form {...form.props}>
        <TextField label={words.name} autoComplete="off" {...form.field('name')} />
        <TextField label={words.phone} optional type="tel" autoComplete="off" {...form.field('phone')} />
        <TextField label={words.email} optional type="email" autoComplete="off" {...form.field('email')} />
        <TextField label={words.address} optional autoComplete="off" {...form.field('address')} />
        <NumberField
          label={words.leadDays}
          hint={words.leadDaysHint}
          unit={words.leadDaysUnit}
          {...form.field('leadDays')}
        />
        <TextArea label={orders.note} optional rows={2} {...form.field('note')} />
        <Submit form={form}>{orders.save}</Submit>
      </Form>
    </Sheet>
  );
}
