/** Handing pulled plants over to a client who fetches them. */
import { gardens as gardensContracts, promises as promisesContracts } from '@rootclock/contracts';
import { useEntryDay } from '../../../lib/entry-day.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { ButtonLink } from '../../../ui/action/index.ts';
import { EmptyState } from '../../../ui/feedback/index.ts';
import { DateField, TextArea } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { tellUndoable } from '../../orders/undo.ts';
import { OutPage } from './out-page.tsx';
import { StagedFields } from './staged-fields.tsx';
import { meantRows, stagedRows, totalOf, type TypedUnits } from './staged-rows.ts';

export function HandOverPage() {
  return <OutPage>{(order) => <HandOverForm order={order} />}</OutPage>;
}

function HandOverForm({ order }: { order: promisesContracts.OrderPage }) {
  const { gardens, orders } = useMessages();
  const words = gardens.planting;
  const { day, today, chooseDay } = useEntryDay('gardens.hand-over');
  const rows = stagedRows(order);
  const form = useCommandForm({
    command: useCommand('gardens.handOver', { title: words.titleHandOver(order.code) }),
    contract: gardensContracts.handOver,
    initial: { typed: {} as TypedUnits, note: '' },
    body: ({ typed, note }) => ({
      orderId: order.id,
      happenedOn: day,
      note,
      rows: meantRows(rows, typed, 'all').map(({ row, units }) => ({ lineId: row.lineId, lotId: row.lotId, units })),
    }),
    onSaved: ({ entryId }, { typed }) => {
      tellUndoable(words.handedOver(totalOf(meantRows(rows, typed, 'all')), order.code), entryId);
      form.restart();
    },
  });
  if (rows.length === 0) {
    return (
      <EmptyState
        kind="nothing-yet"
        title={words.nothingStaged}
        actions={<ButtonLink to={paths.pullList(order.id)}>{orders.list.pullList}</ButtonLink>}
      >
        {words.nothingStagedHandOver}
      </EmptyState>
    );
  }
  const { errors, problem, ...formProps } = form.props;
  return (
    <Form {...formProps} errors={errors['rows'] ? {} : errors} problem={errors['rows'] ? words.nothingChosen : problem}>
      <DateField name="happenedOn" label={words.handedOverOn} max={today} value={day} onChange={chooseDay} />
      <StagedFields
        rows={rows}
        typed={form.values.typed}
        onChange={(typed) => form.set({ typed })}
        label={words.unitsGiven}
      />
      <TextArea label={orders.note} optional rows={2} {...form.field('note')} />
      <Submit form={form}>{words.handOverUnits(totalOf(meantRows(rows, form.values.typed, 'all')))}</Submit>
    </Form>
  );
}
