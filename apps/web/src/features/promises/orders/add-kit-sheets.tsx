/** Adding a kit: to an order that stands, as lines at once; to a new order, as lines that are still being typed. */
import { useQuery } from '@tanstack/react-query';
import { orders as ordersContracts, promises as promisesContracts } from '@rootclock/contracts';
import { useState } from 'react';
import { trpc } from '../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { KitFields, type KitFor } from './kit-fields.tsx';

/** As many as a kit may have components. */
const MOST_COMPONENTS = 30;

export function AddKitSheet({ order, onClose }: { order: promisesContracts.OrderPage; onClose: () => void }) {
  const { orders } = useMessages();
  const words = orders.kits;
  const { data: kits = [] } = useQuery(trpc.orders.listKits.queryOptions({}));
  // A line sent again must have the id that it had.
  const [lineIds] = useState(() => Array.from({ length: MOST_COMPONENTS }, newId));
  const kitOf = (kitId: string) => kits.find(({ id }) => id === kitId);
  const form = useCommandForm({
    command: useCommand('orders.addKitLines', { title: words.addToOrder }),
    contract: ordersContracts.addKitLines,
    initial: { kitId: '', units: 1 as number | null },
    body: ({ kitId, units }) => ({
      orderId: order.id,
      kitId,
      units,
      lineIds: lineIds.slice(0, kitOf(kitId)?.components.length ?? 1),
    }),
    onSaved: (_answer, { kitId, units }) => {
      toast({ text: words.added(kitOf(kitId)?.name ?? '', units ?? 0) });
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={words.addToOrder}>
      <Form {...form.props}>
        <KitFields
          kits={kits}
          {...form.values}
          onChange={form.set}
          on={order.dueOn}
          siteId={order.siteId}
          clientId={order.clientId}
          nativesOnly={order.nativesOnly}
        />
        <Submit form={form}>{words.choose}</Submit>
      </Form>
    </Sheet>
  );
}

export function ChooseKitSheet({
  asked,
  onChoose,
  onClose,
}: {
  asked: KitFor;
  onChoose: (kit: ordersContracts.KitRow, units: number) => void;
  onClose: () => void;
}) {
  const { orders } = useMessages();
  const words = orders.kits;
  const { data: kits = [] } = useQuery(trpc.orders.listKits.queryOptions({}));
  const [{ kitId, units }, set] = useState({ kitId: '', units: 1 as number | null });
  const kit = kits.find(({ id }) => id === kitId);
  const choose = () => {
    if (!kit || units === null) return;
    onChoose(kit, units);
    onClose();
  };
  return (
    <Sheet open onClose={onClose} title={words.addToOrder}>
      <div className="stack">
        <KitFields
          kits={kits}
          kitId={kitId}
          units={units}
          onChange={(part) => set((before) => ({ ...before, ...part }))}
          {...asked}
        />
        <div>
          <Button look="primary" disabled={!kit || units === null} onClick={choose}>
            {words.choose}
          </Button>
        </div>
      </div>
    </Sheet>
  );
}
