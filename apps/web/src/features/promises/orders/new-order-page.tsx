/** A new order in one go: client, site, kind, day and all its lines. The client of the last order stays filled in. */
import { useQuery } from '@tanstack/react-query';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { orders as contracts } from '@rootclock/contracts';
import { ORDER_KINDS, type OrderKind } from '@rootclock/domain';
import { useState } from 'react';
import { trpc } from '../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { Skeleton, toast } from '../../../ui/feedback/index.ts';
import { CheckboxField, DateField, RadioField, TextArea } from '../../../ui/fields/index.ts';
import { FieldGroup, Form } from '../../../ui/form/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import type { PickedClient } from '../../clients/client-picker.tsx';
import { type Asked, useAskedItem } from './asked-item.ts';
import { ClientAndSite } from './client-and-site.tsx';
import { keepLastClient, lastClientId } from './last-client.ts';
import { emptyLine, isBlank, lineBody, NewLines, type NewLine } from './new-lines.tsx';

interface NewOrder {
  client: PickedClient | null;
  siteId: string;
  kind: OrderKind;
  nativesOnly: boolean;
  dueOn: string;
  note: string;
  lines: NewLine[];
}

/** `?client=` names whose page the reader came from; else the client of the last order is meant. */
export function NewOrderPage() {
  const { client: asked }: { client?: string } = useSearch({ strict: false });
  const [clientId] = useState(() => asked ?? lastClientId());
  const { data, isLoading } = useQuery({
    ...trpc.gardens.readClient.queryOptions({ clientId: clientId ?? '' }),
    enabled: clientId !== null,
  });
  const first = useAskedItem();
  // A client that is gone or blanked since is simply not filled in.
  return isLoading || first.isLoading ? (
    <Skeleton />
  ) : (
    <NewOrderForm
      known={data && !data.isBlanked ? { id: data.id, name: data.name, onlySiteId: data.onlySiteId } : null}
      asked={first.asked}
    />
  );
}

function NewOrderForm({ known, asked }: { known: PickedClient | null; asked: Asked }) {
  const { orders } = useMessages();
  const words = orders.list;
  const navigate = useNavigate();
  const [orderId] = useState(newId);
  const [initial] = useState((): NewOrder => {
    // Whoever tried a day without a site meant plants that the client fetches.
    const kind = asked.dueOn !== '' && asked.siteId === '' ? 'pickup' : 'installation';
    return {
      client: known,
      siteId: asked.siteId,
      kind,
      nativesOnly: false,
      dueOn: asked.dueOn,
      note: '',
      lines: [{ ...emptyLine(), ...asked.line }],
    };
  });
  const form = useCommandForm({
    command: useCommand('orders.addOrder', { title: words.newTitle }),
    contract: contracts.addOrder,
    initial,
    body: (values) => ({
      orderId,
      clientId: values.client?.id ?? '',
      siteId: values.siteId || null,
      kind: values.kind,
      nativesOnly: values.nativesOnly,
      dueOn: values.dueOn,
      note: values.note,
      lines: values.lines.filter((line) => !isBlank(line)).map(lineBody),
    }),
    onSaved: (answer, values) => {
      if (values.client) keepLastClient(values.client.id);
      toast({ text: words.created(answer.code) });
      void navigate({ to: paths.order(orderId) });
    },
  });
  const { client, siteId, dueOn, lines, nativesOnly } = form.values;
  return (
    <>
      <PageHeader back={{ to: paths.gardens(), label: words.back }} title={words.newTitle} facts={words.newLead} />
      <Form {...form.props}>
        <FieldGroup legend={words.whoWhere}>
          <ClientAndSite
            client={client}
            siteId={siteId}
            onChange={form.set}
            isSiteNeeded={form.values.kind === 'installation'}
          />
        </FieldGroup>
        <FieldGroup legend={words.whatWhen}>
          <RadioField
            label={orders.kind}
            look="segments"
            hint={orders.kindHints[form.values.kind]}
            choices={ORDER_KINDS.map((kind) => ({ value: kind, label: orders.kinds[kind] }))}
            {...form.field('kind')}
          />
          <DateField label={orders.onDay} {...form.field('dueOn')} />
          <CheckboxField label={words.nativesOnly} hint={words.nativesOnlyHint} {...form.field('nativesOnly')} />
          <TextArea label={orders.note} optional rows={2} {...form.field('note')} />
        </FieldGroup>
        <NewLines
          lines={lines}
          onChange={(next) => form.set({ lines: next })}
          on={dueOn}
          onDay={(next) => form.set({ dueOn: next })}
          siteId={siteId || null}
          clientId={client?.id ?? null}
          nativesOnly={nativesOnly}
        />
        <Submit form={form}>{words.create}</Submit>
      </Form>
    </>
  );
}
