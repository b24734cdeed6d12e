/** Bringing back what was not planted: unopened pots to a place, quarantine suggested; what was knocked out is lost, with a cause. */
import { gardens as gardensContracts, promises as promisesContracts } from '@rootclock/contracts';
import { LOSS_CAUSES, type LossCause } from '@rootclock/domain';
import { useEntryDay } from '../../../lib/entry-day.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { EmptyState } from '../../../ui/feedback/index.ts';
import { DateField, NumberField, SelectField, TextArea } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { SuggestedPlace } from '../../orders/pickers/suggested-place.tsx';
import { tellUndoable } from '../../orders/undo.ts';
import { OutPage } from './out-page.tsx';
import { StagedWords } from './staged-fields.tsx';
import { stagedRows, totalOf, unitsOf, type StagedRow, type TypedUnits } from './staged-rows.ts';

export function ReturnPage() {
  return <OutPage>{(order) => <ReturnForm order={order} />}</OutPage>;
}

/** Rows of which anything comes back or is lost. */
const meantReturns = (rows: readonly StagedRow[], back: TypedUnits, lost: TypedUnits) =>
  rows
    .map((row) => ({ row, returnedUnits: unitsOf(row, back, 'none') ?? 0, lostUnits: unitsOf(row, lost, 'none') ?? 0 }))
    .filter(({ returnedUnits, lostUnits }) => returnedUnits !== 0 || lostUnits !== 0);

function ReturnForm({ order }: { order: promisesContracts.OrderPage }) {
  const { gardens, orders } = useMessages();
  const words = gardens.planting;
  const { day, today, chooseDay } = useEntryDay('gardens.return');
  const rows = stagedRows(order);
  const sums = (back: TypedUnits, lost: TypedUnits): [number, number] => {
    const meant = meantReturns(rows, back, lost);
    return [
      totalOf(meant.map(({ returnedUnits: units }) => ({ units }))),
      totalOf(meant.map(({ lostUnits: units }) => ({ units }))),
    ];
  };
  const form = useCommandForm({
    command: useCommand('gardens.returnFromOrder', { title: `${words.returnTab}: ${order.code}` }),
    contract: gardensContracts.returnFromOrder,
    initial: { back: {} as TypedUnits, lost: {} as TypedUnits, placeId: '', cause: '' as LossCause | '', note: '' },
    body: ({ back, lost, placeId, cause, note }) => ({
      orderId: order.id,
      happenedOn: day,
      placeId: placeId || null,
      cause: cause || null,
      note,
      rows: meantReturns(rows, back, lost).map(({ row, returnedUnits, lostUnits }) => ({
        lineId: row.lineId,
        lotId: row.lotId,
        returnedUnits,
        lostUnits,
      })),
    }),
    onSaved: ({ entryId }, { back, lost }) => {
      tellUndoable(words.returnedToast(...sums(back, lost)), entryId);
      form.restart();
    },
  });
  if (rows.length === 0) return <EmptyState kind="nothing-yet" title={words.nothingStaged} />;
  const { back, lost } = form.values;
  const meant = meantReturns(rows, back, lost);
  const [backUnits, lostUnits] = sums(back, lost);
  const { errors, problem, ...formProps } = form.props;
  return (
    <Form {...formProps} errors={errors['rows'] ? {} : errors} problem={errors['rows'] ? words.nothingChosen : problem}>
      <p>{words.returnLead}</p>
      <DateField name="happenedOn" label={words.returnedOn} max={today} value={day} onChange={chooseDay} />
      <div className="staged-rows">
        {rows.map((row) => {
          const at = meant.findIndex((each) => each.row.key === row.key);
          const path = at < 0 ? `none.${row.key}.` : `rows.${at}.`;
          return (
            <div key={row.key} className="staged-row">
              <StagedWords row={row} />
              <div className="field-pair">
                <NumberField
                  name={`${path}returnedUnits`}
                  // What is too much in all is told of the row's units; it stands beside the first of its two fields.
                  error={errors[`${path}units`]}
                  label={`${words.returned}: ${row.lotCode}`}
                  unit={words.ofPulled(row.units)}
                  steps
                  value={unitsOf(row, back, 'none')}
                  onChange={(units) => form.set({ back: { ...back, [row.key]: units } })}
                />
                <NumberField
                  name={`${path}lostUnits`}
                  label={`${words.lost}: ${row.lotCode}`}
                  steps
                  value={unitsOf(row, lost, 'none')}
                  onChange={(units) => form.set({ lost: { ...lost, [row.key]: units } })}
                />
              </div>
            </div>
          );
        })}
      </div>
      <SuggestedPlace
        label={words.returnPlace}
        hint={words.quarantineSuggested}
        preferring="quarantine"
        {...form.field('placeId')}
      />
      {lostUnits > 0 && (
        <SelectField
          label={words.cause}
          choices={LOSS_CAUSES.map((cause) => ({ value: cause, label: words.causes[cause] }))}
          {...form.field('cause')}
        />
      )}
      <TextArea label={orders.note} optional rows={2} {...form.field('note')} />
      <Submit form={form}>
        {backUnits + lostUnits === 0 ? words.returnTab : words.returnUnits(backUnits, lostUnits)}
      </Submit>
    </Form>
  );
}
