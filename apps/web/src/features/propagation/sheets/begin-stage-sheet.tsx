/** A stage that began on another day than today, or was forgotten. */
import { propagation as contracts } from '@rootclock/contracts';
import { isCurrentStage } from '@rootclock/domain';
import { useEntryDay } from '../../../lib/entry-day.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { DateField, SelectField, TextArea } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { useReverse } from '../use-reverse.ts';
import type { SheetProps } from '../sheet-props.ts';

export function BeginStageSheet({ batch, onClose }: SheetProps) {
  const { propagation } = useMessages();
  const { sheet: words, stages: say } = propagation;
  const { day, today, keepDay } = useEntryDay('propagation');
  const reverse = useReverse();
  const stages = batch.protocol?.stages ?? [];
  const next = stages[(stages.find(isCurrentStage)?.position ?? -1) + 1];
  const form = useCommandForm({
    command: useCommand('propagation.beginBatchStage', { title: `${say.beginTitle}: ${batch.code}` }),
    contract: contracts.beginBatchStage,
    initial: { position: next ? String(next.position) : '', happenedOn: day, note: '' },
    body: (values) => ({
      ...values,
      batchId: batch.batchId,
      position: values.position === '' ? undefined : Number(values.position),
    }),
    onSaved: ({ entryId, stage }, { happenedOn }) => {
      keepDay(happenedOn);
      toast({ text: say.began(say.names[stage]), undo: () => reverse(entryId) });
      onClose();
    },
  });
  return (
    <Form {...form.props}>
      <SelectField
        {...form.field('position')}
        label={say.beginWhich}
        hint={say.beginHint}
        choices={stages.map(({ position, kind }) => ({ value: String(position), label: say.names[kind] }))}
      />
      <DateField {...form.field('happenedOn')} label={words.day} min={batch.startedOn} max={today} />
      <TextArea {...form.field('note')} label={words.note} optional rows={2} />
      <Submit form={form}>{say.beginSave}</Submit>
    </Form>
  );
}
