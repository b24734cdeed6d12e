/** Keeping a batch open whose seed may only come up after its second winter. */
import { propagation as contracts } from '@rootclock/contracts';
import { useEntryDay } from '../../../lib/entry-day.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { DateField, TextArea } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { useReverse } from '../use-reverse.ts';
import type { SheetProps } from '../sheet-props.ts';

export function SecondWinterSheet({ batch, onClose }: SheetProps) {
  const { sheet: say } = useMessages().propagation;
  const { day, today } = useEntryDay('propagation');
  const reverse = useReverse();
  const form = useCommandForm({
    command: useCommand('propagation.keepForSecondWinter', { title: `${say.winterTitle}: ${batch.code}` }),
    contract: contracts.keepForSecondWinter,
    initial: { happenedOn: day, note: '' },
    body: (values) => ({ ...values, batchId: batch.batchId }),
    onSaved: ({ entryId }) => {
      toast({ text: say.winterSaved, undo: () => reverse(entryId) });
      onClose();
    },
  });
  return (
    <Form {...form.props}>
      <p>{say.winterLead}</p>
      <DateField {...form.field('happenedOn')} label={say.day} min={batch.startedOn} max={today} />
      <TextArea {...form.field('note')} label={say.note} optional rows={2} />
      <Submit form={form}>{say.winterSave}</Submit>
    </Form>
  );
}
