/** KitSheet: a new kit, or a change of one. Lines that came with it before stay as they are. */
import { orders as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newCommandId, newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { NumberField, TextArea, TextField } from '../../../ui/fields/index.ts';
import { FieldGroup, Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { type Item, ItemPickers } from '../pickers/item-pickers.tsx';

interface Component extends Item {
  key: string;
  units: number | null;
}

const emptyComponent = (before?: Component): Component => ({
  key: newCommandId(),
  plant: null,
  container: before?.container ?? null,
  units: null,
});

type Named = Pick<contracts.KitComponentRow, 'plantId' | 'scientificName' | 'containerId' | 'containerName' | 'units'>;

/** Components of a body, with what people call them. */
const named = (components: unknown, called: Readonly<Record<string, string>>): Named[] =>
  (components as Named[]).map(({ plantId, containerId, units }) => ({
    plantId,
    scientificName: called[plantId] ?? '',
    containerId,
    containerName: called[containerId] ?? '',
    units,
  }));

const componentsOf = (components: readonly Named[] | undefined): Component[] =>
  components === undefined
    ? [emptyComponent()]
    : components.map(({ plantId, scientificName, containerId, containerName, units }) => ({
        key: newCommandId(),
        plant: { id: plantId, scientificName },
        container: { id: containerId, name: containerName },
        units,
      }));

export interface KitSheetProps {
  /** Null for a new kit. */
  kit: contracts.KitRow | null;
  onClose: () => void;
}

export function KitSheet({ kit, onClose }: KitSheetProps) {
  const { orders } = useMessages();
  const words = orders.kits;
  const [kitId] = useState(() => kit?.id ?? newId());
  const [initial] = useState(() => ({
    name: kit?.name ?? '',
    note: kit?.note ?? '',
    components: componentsOf(kit?.components),
  }));
  const form = useCommandForm({
    command: useCommand(kit ? 'orders.editKit' : 'orders.addKit', { title: kit ? words.editTitle : words.addTitle }),
    contract: kit ? contracts.editKit : contracts.addKit,
    initial,
    body: ({ name, note, components }) => ({
      kitId,
      name,
      note,
      components: components.map(({ plant, container, units }) => ({
        plantId: plant?.id ?? '',
        containerId: container?.id ?? '',
        units,
      })),
    }),
    ...(kit ? { row: { id: 'kitId', edition: kit.edition } } : {}),
    fromBody: (body, called) => ({ components: componentsOf(named(body['components'], called)) }),
    words: {
      components: {
        label: words.components,
        value: (stored, called) =>
          named(stored, called)
            .map(({ units, scientificName, containerName }) => `${units} × ${scientificName}, ${containerName}`)
            .join('\n'),
      },
    },
    onSaved: (_answer, { name }) => {
      toast({ text: words.saved(name.trim()) });
      onClose();
    },
  });
  const { components } = form.values;
  const set = (key: string, part: Partial<Component>) =>
    form.set({ components: components.map((each) => (each.key === key ? { ...each, ...part } : each)) });
  return (
    <Sheet open onClose={onClose} title={kit ? words.editTitle : words.addTitle}>
      <Form {...form.props}>
        <TextField label={words.name} autoComplete="off" {...form.field('name')} />
        {components.map((component, at) => (
          <FieldGroup key={component.key} legend={words.component(at + 1)}>
            <ItemPickers path={`components.${at}.`} value={component} onChange={(item) => set(component.key, item)} />
            <NumberField
              name={`components.${at}.units`}
              label={words.units}
              steps
              min={1}
              value={component.units}
              onChange={(units) => set(component.key, { units })}
            />
            {components.length > 1 && (
              <div>
                <Button
                  look="quiet"
                  onClick={() => form.set({ components: components.filter(({ key }) => key !== component.key) })}
                >
                  {words.removeComponent(at + 1)}
                </Button>
              </div>
            )}
          </FieldGroup>
        ))}
        <div>
          <Button onClick={() => form.set({ components: [...components, emptyComponent(components.at(-1))] })}>
            {words.addComponent}
          </Button>
        </div>
        <TextArea label={orders.note} optional rows={2} {...form.field('note')} />
        <Submit form={form} others={kit ? <RetireKit kit={kit} onClose={onClose} /> : undefined}>
          {words.save}
        </Submit>
      </Form>
    </Sheet>
  );
}

function RetireKit({ kit, onClose }: { kit: contracts.KitRow; onClose: () => void }) {
  const { orders } = useMessages();
  const words = orders.kits;
  const retire = useCommand('orders.retireKit', { title: words.retire });
  const takeOut = () =>
    void retire.send({ kitId: kit.id }).then(() => {
      toast({ text: words.retired(kit.name) });
      onClose();
    }, tellRefused);
  return (
    <Button busy={retire.state === 'sending' || retire.state === 'waiting'} onClick={takeOut}>
      {words.retire}
    </Button>
  );
}
