/** ClientPicker: a client by the beginning of the name. */
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { trpc } from '../../lib/api/index.ts';
import { useRested } from '../../lib/use-rested.ts';
import { useMessages } from '../../messages/index.ts';
import { ComboboxField } from '../../ui/fields/index.ts';

export interface PickedClient {
  id: string;
  name: string;
  /** The one site of a client with no other, where it is known. */
  onlySiteId?: string | null;
}

export interface ClientPickerProps {
  name: string;
  optional?: boolean;
  value: PickedClient | null;
  onChange: (client: PickedClient | null) => void;
}

const MOST_OFFERED = 12;

export function ClientPicker({ value, onChange, name, optional = false }: ClientPickerProps) {
  const { clients } = useMessages();
  const [text, setText] = useState('');
  const asked = useRested(text);
  const query = useQuery(trpc.gardens.listClients.queryOptions({ search: asked, perPage: MOST_OFFERED }));
  const offered = (query.data?.rows ?? []).filter((client) => !client.isBlanked);
  return (
    <ComboboxField
      name={name}
      optional={optional}
      label={clients.client}
      hint={clients.clientHint}
      value={value && { id: value.id, label: value.name }}
      options={offered.map((client) => ({
        id: client.id,
        label: client.name,
        detail: clients.sitesCount(client.sites),
        meant: { id: client.id, name: client.name, onlySiteId: client.onlySiteId },
      }))}
      answers={query.isPending ? null : asked}
      onText={setText}
      onChange={onChange}
    />
  );
}
