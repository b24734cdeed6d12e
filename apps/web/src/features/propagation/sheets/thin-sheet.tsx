/** Thinning: an observation that takes nothing off the batch. */
import { propagation as contracts } from '@rootclock/contracts';
import { useEntryDay } from '../../../lib/entry-day.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { DateField, NumberField, TextArea } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { useReverse } from '../use-reverse.ts';
import type { SheetProps } from '../sheet-props.ts';

export function ThinSheet({ batch, onClose }: SheetProps) {
  const { sheet: say } = useMessages().propagation;
  const { day, today, keepDay } = useEntryDay('propagation');
  const reverse = useReverse();
  const form = useCommandForm({
    command: useCommand('propagation.thinBatch', { title: `${say.thinTitle}: ${batch.code}` }),
    contract: contracts.thinBatch,
    initial: { thinnedUnits: null as number | null, happenedOn: day, note: '' },
    body: (values) => ({ batchId: batch.batchId, ...values }),
    onSaved: ({ entryId }, { happenedOn }) => {
      keepDay(happenedOn);
      toast({ text: say.thinSaved, undo: () => reverse(entryId) });
      onClose();
    },
  });
  return (
    <Form {...form.props}>
      <NumberField {...form.field('thinnedUnits')} label={say.thinLabel} hint={say.thinHint} optional />
      <DateField {...form.field('happenedOn')} label={say.day} min={batch.startedOn} max={today} />
      <TextArea {...form.field('note')} label={say.note} optional rows={2} />
      <Submit form={form}>{say.thinSave}</Submit>
    </Form>
  );
}
