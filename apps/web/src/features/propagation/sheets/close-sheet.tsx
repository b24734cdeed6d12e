/** Closing a batch: what still stands is written off with its cause in the same entry. */
import { propagation as contracts } from '@rootclock/contracts';
import { LOSS_CAUSES, type LossCause } from '@rootclock/domain';
import { useEntryDay } from '../../../lib/entry-day.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { CheckboxField, DateField, SelectField, TextArea } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { useReverse } from '../use-reverse.ts';
import type { SheetProps } from '../sheet-props.ts';

export function CloseSheet({ batch, onClose }: SheetProps) {
  const { propagation } = useMessages();
  const { sheet: say } = propagation;
  const { day, today, keepDay } = useEntryDay('propagation');
  const reverse = useReverse();
  const form = useCommandForm({
    command: useCommand('propagation.closeBatch', { title: `${say.closeTitle}: ${batch.code}` }),
    contract: contracts.closeBatch,
    initial: { writeOffCause: '' as LossCause | '', happenedOn: day, note: '', confirmed: false },
    body: (values) => ({ ...values, batchId: batch.batchId, writeOffCause: values.writeOffCause || null }),
    onSaved: ({ entryId }, { happenedOn }) => {
      keepDay(happenedOn);
      toast({ text: say.closeSaved(batch.code), undo: () => reverse(entryId) });
      onClose();
    },
  });
  return (
    <Form {...form.props}>
      <p>
        {batch.standingUnits > 0 ? say.closeLead(propagation.units(batch.standingUnits, batch.unit)) : say.closeEmpty}
      </p>
      {batch.standingUnits > 0 && (
        <SelectField
          {...form.field('writeOffCause')}
          label={say.closeCause}
          choices={LOSS_CAUSES.map((value) => ({ value, label: propagation.causes[value] }))}
        />
      )}
      {form.failure?.code === 'may-be-dormant' && (
        <CheckboxField {...form.field('confirmed')} label={say.confirmDead} />
      )}
      <DateField {...form.field('happenedOn')} label={say.day} min={batch.startedOn} max={today} />
      <TextArea {...form.field('note')} label={say.note} optional rows={2} />
      <Submit form={form} look="danger">
        {say.closeSave}
      </Submit>
    </Form>
  );
}
