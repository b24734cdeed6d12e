/** Counting what lives: emerged or rooted plants, of cells the cells that hold any. */
import { propagation as contracts } from '@rootclock/contracts';
import { COUNT_KINDS, type CountKind } from '@rootclock/domain';
import { useEntryDay } from '../../../lib/entry-day.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { DateField, NumberField, RadioField, TextArea } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { useReverse } from '../use-reverse.ts';
import type { SheetProps } from '../sheet-props.ts';

export function CountSheet({ batch, onClose }: SheetProps) {
  const { propagation } = useMessages();
  const { sheet: say } = propagation;
  const { dates } = useFormat();
  const { day, today, keepDay } = useEntryDay('propagation');
  const reverse = useReverse();
  const form = useCommandForm({
    command: useCommand('propagation.countBatch', { title: `${say.countTitle}: ${batch.code}` }),
    contract: contracts.countBatch,
    initial: { emergedUnits: null as number | null, countKind: 'counted' as CountKind, happenedOn: day, note: '' },
    body: (values) => ({ batchId: batch.batchId, ...values }),
    onSaved: ({ entryId, unexplainedUnits }, { emergedUnits, happenedOn }) => {
      keepDay(happenedOn);
      const alive = emergedUnits ?? 0;
      toast({
        text: unexplainedUnits > 0 ? say.countSavedMissing(alive, unexplainedUnits) : say.countSaved(alive),
        undo: () => reverse(entryId),
      });
      onClose();
    },
  });
  const last = batch.course.at(-1);
  return (
    <Form {...form.props}>
      {last && <p>{say.lastCount(last.emergedUnits, dates.short(last.on))}</p>}
      <NumberField
        {...form.field('emergedUnits')}
        label={say.countLabel[batch.unit]}
        hint={say.countHint[batch.unit]}
        steps
      />
      <RadioField
        {...form.field('countKind')}
        label={say.countKind}
        look="segments"
        choices={COUNT_KINDS.map((value) => ({ value, label: propagation.countKinds[value] }))}
      />
      <DateField {...form.field('happenedOn')} label={say.day} min={batch.startedOn} max={today} />
      <TextArea {...form.field('note')} label={say.note} optional rows={2} />
      <Submit form={form}>{say.countSave}</Submit>
    </Form>
  );
}
