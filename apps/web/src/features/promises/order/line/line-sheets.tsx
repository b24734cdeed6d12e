/** The forms of a line: a new one, told at once what is free for it, and a change of one that is there. */
import { orders as ordersContracts, promises as promisesContracts } from '@rootclock/contracts';
import { OWNER } from '@rootclock/domain';
import { useState } from 'react';
import { useSession } from '../../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { newCommandId, newId } from '../../../../lib/ids.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { toast } from '../../../../ui/feedback/index.ts';
import { CheckboxField, NumberField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { Taxon } from '../../../plants/taxon.tsx';
import { useBeds } from '../../../orders/pickers/beds.ts';
import {
  ConditionFields,
  conditionsBody,
  NO_CONDITIONS,
  type Conditions,
} from '../../../orders/pickers/condition-fields.tsx';
import { conditionsShown, useConditionWords } from '../../../orders/pickers/conditions-shown.ts';
import { ItemPickers, type Item } from '../../../orders/pickers/item-pickers.tsx';
import { PromiseCheck } from '../../marks/promise-check.tsx';
import { RuleOffers } from '../../../orders/pickers/rule-offers.tsx';
import { TriedEdit } from '../../what-if/difference/tried-edit.tsx';
import { WouldShorten } from '../would-shorten.tsx';

interface SheetProps {
  order: promisesContracts.OrderPage;
  onClose: () => void;
}

export function AddLineSheet({ order, onClose }: SheetProps) {
  const { orders, promises } = useMessages();
  const words = promises.line;
  const beds = useBeds(order.siteId);
  const [lineId] = useState(newId);
  const form = useCommandForm({
    command: useCommand('orders.addLine', { title: words.addTitle }),
    contract: ordersContracts.addLine,
    initial: {
      item: { plant: null, container: null } as Item,
      units: null as number | null,
      conditions: NO_CONDITIONS,
    },
    body: ({ item, units, conditions }) => ({
      orderId: order.id,
      lineId,
      plantId: item.plant?.id ?? '',
      containerId: item.container?.id ?? '',
      units,
      ...conditionsBody(conditions),
    }),
    onSaved: (_answer, { item, units }) => {
      toast({ text: words.added(item.plant?.scientificName ?? '', units ?? 0) });
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={words.addTitle}>
      <Form {...form.props}>
        <ItemPickers value={form.values.item} onChange={(item) => form.set({ item })} />
        <NumberField label={orders.units} steps min={1} {...form.field('units')} />
        <PromiseCheck
          item={form.values.item}
          units={form.values.units}
          on={order.dueOn}
          siteId={order.siteId}
          clientId={order.clientId}
          nativesOnly={order.nativesOnly}
          conditions={form.values.conditions}
          onConditions={(conditions) => form.set({ conditions })}
        />
        <RuleOffers
          item={form.values.item}
          siteId={order.siteId}
          nativesOnly={order.nativesOnly}
          value={form.values.conditions}
          onChange={(conditions) => form.set({ conditions })}
        />
        <details className="foldable">
          <summary>{words.conditions}</summary>
          <div className="stack">
            <ConditionFields
              value={form.values.conditions}
              onChange={(conditions) => form.set({ conditions })}
              beds={beds}
            />
          </div>
        </details>
        <TriedEdit edit={triedLine(order, lineId, form.values)} />
        <Submit form={form}>{words.add}</Submit>
      </Form>
    </Sheet>
  );
}

/** The line as far as it decides about plants; none while it is not said what and how many. */
function triedLine(
  { id: orderId }: promisesContracts.OrderPage,
  lineId: string,
  { item, units, conditions }: { item: Item; units: number | null; conditions: Conditions },
) {
  if (item.plant === null || item.container === null || units === null) return null;
  return {
    kind: 'add-line' as const,
    orderId,
    lineId,
    plantId: item.plant.id,
    containerId: item.container.id,
    units,
    ...wishOf(conditions),
  };
}

/** What of the conditions decides about plants: all but the bed. */
function wishOf(conditions: Conditions) {
  const { bedId: _, ...wish } = conditionsBody(conditions);
  return wish;
}

const itemOf = (line: promisesContracts.OrderLineRow): Item => ({
  plant: { id: line.plantId, scientificName: line.scientificName },
  container: { id: line.containerId, name: line.containerName },
});

const conditionsOf = (line: promisesContracts.OrderLineRow): Conditions => ({
  bedId: line.bedId ?? '',
  seedZone: line.seedZone ?? '',
  wildType: line.wildType,
  untreated: line.untreated,
  alternatives: line.alternatives
    .toSorted((a, b) => a.penalty - b.penalty)
    .map((each) => ({
      key: newCommandId(),
      plant: { id: each.plantId, scientificName: each.scientificName },
      container: { id: each.containerId, name: each.containerCode },
      penalty: each.penalty,
    })),
});

/** The change as far as it decides about plants; none while the line is as it was. */
function editOf(
  line: promisesContracts.OrderLineRow,
  { units, conditions, keepRank }: { units: number | null; conditions: Conditions; keepRank: boolean },
) {
  const wish = wishOf(conditions);
  const isAsBefore = units === line.units && JSON.stringify(wish) === JSON.stringify(wishOf(conditionsOf(line)));
  return units === null || isAsBefore
    ? null
    : { kind: 'edit-line' as const, lineId: line.id, units, ...wish, keepRank };
}

export function EditLineSheet({ order, line, onClose }: SheetProps & { line: promisesContracts.OrderLineRow }) {
  const { orders, promises } = useMessages();
  const words = promises.line;
  const { mayBe } = useSession();
  const beds = useBeds(order.siteId);
  const conditionWords = useConditionWords();
  const form = useCommandForm({
    command: useCommand('promises.editLine', { title: `${words.editTitle}: ${line.scientificName}` }),
    contract: promisesContracts.editLine,
    initial: {
      units: line.units as number | null,
      conditions: conditionsOf(line),
      keepRank: false,
      acceptedShortages: [] as { lineId: string; units: number }[],
    },
    body: ({ units, conditions, keepRank, acceptedShortages }) => ({
      lineId: line.id,
      units,
      ...conditionsBody(conditions),
      keepRank,
      acceptedShortages,
    }),
    row: { id: 'lineId', edition: line.edition },
    fromBody: (body, called) => ({ conditions: conditionsShown(body, called) }),
    words: { ...conditionWords, bedId: { label: orders.bed } },
    onSaved: () => {
      toast({ text: words.saved });
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={words.editTitle}>
      <Form {...form.props}>
        <WouldShorten
          failure={form.failure}
          busy={form.busy}
          onAccept={(acceptedShortages) => form.submit({ ...form.values, acceptedShortages })}
        />
        <p className="line-asked">
          <Taxon name={line.scientificName} />, {line.containerName}
        </p>
        <NumberField label={orders.units} steps min={1} {...form.field('units')} />
        <RuleOffers
          item={itemOf(line)}
          siteId={order.siteId}
          nativesOnly={order.nativesOnly}
          value={form.values.conditions}
          onChange={(conditions) => form.set({ conditions })}
        />
        <ConditionFields
          value={form.values.conditions}
          onChange={(conditions) => form.set({ conditions })}
          beds={beds}
        />
        {mayBe(OWNER) && <CheckboxField label={words.keepRank} hint={words.keepRankHint} {...form.field('keepRank')} />}
        <TriedEdit edit={editOf(line, form.values)} />
        <Submit form={form}>{orders.save}</Submit>
      </Form>
    </Sheet>
  );
}
