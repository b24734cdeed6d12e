/** Planting: all of what was pulled or a part of it, and more than was pulled, in one entry. */
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
import { extraBody, ExtraRows, type ExtraRow } from './extra-rows.tsx';
import { OutPage } from './out-page.tsx';
import { StagedFields } from './staged-fields.tsx';
import { meantRows, stagedRows, totalOf, type TypedUnits } from './staged-rows.ts';

export function PlantPage() {
  return <OutPage>{(order) => <PlantForm order={order} />}</OutPage>;
}

function PlantForm({ order }: { order: promisesContracts.OrderPage }) {
  const { gardens, orders } = useMessages();
  const words = gardens.planting;
  const { day, today, chooseDay } = useEntryDay('gardens.plant');
  const rows = stagedRows(order);
  const totalWith = (typed: TypedUnits, extras: readonly ExtraRow[]) =>
    totalOf(meantRows(rows, typed, 'all')) + totalOf(extras.map(({ units }) => ({ units: units ?? 0 })));
  const form = useCommandForm({
    command: useCommand('gardens.plantOrder', { title: words.title(order.code) }),
    contract: gardensContracts.plantOrder,
    initial: { typed: {} as TypedUnits, extras: [] as ExtraRow[], note: '' },
    body: ({ typed, extras, note }) => ({
      orderId: order.id,
      happenedOn: day,
      note,
      rows: [
        ...meantRows(rows, typed, 'all').map(({ row, units }) => ({
          lineId: row.lineId,
          lotId: row.lotId,
          units,
          extra: null,
        })),
        ...extras.map(extraBody),
      ],
    }),
    onSaved: ({ entryId }, { typed, extras }) => {
      tellUndoable(words.planted(totalWith(typed, extras), order.code), entryId);
      form.restart();
    },
  });
  const { typed, extras } = form.values;
  const { errors, problem, ...formProps } = form.props;
  return (
    <>
      {rows.length === 0 && (
        <EmptyState
          kind="nothing-yet"
          title={words.nothingStaged}
          actions={<ButtonLink to={paths.pullList(order.id)}>{orders.list.pullList}</ButtonLink>}
        >
          {words.nothingStagedText}
        </EmptyState>
      )}
      <Form
        {...formProps}
        errors={errors['rows'] ? {} : errors}
        problem={errors['rows'] ? words.nothingChosen : problem}
      >
        <DateField name="happenedOn" label={words.plantedOn} max={today} value={day} onChange={chooseDay} />
        <StagedFields
          rows={rows}
          typed={typed}
          onChange={(next) => form.set({ typed: next })}
          label={words.unitsPlanted}
        />
        <ExtraRows
          order={order}
          rows={extras}
          onChange={(next) => form.set({ extras: next })}
          first={meantRows(rows, typed, 'all').length}
        />
        <TextArea label={orders.note} optional rows={2} {...form.field('note')} />
        <Submit form={form}>{words.plantUnits(totalWith(typed, extras))}</Submit>
      </Form>
    </>
  );
}
