/** How many cells, trays, pieces or packs really stand there. */
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
import { FromPlace } from './from-place.tsx';

export function CorrectSheet({ batch, onClose }: SheetProps) {
  const { propagation } = useMessages();
  const { sheet: say } = propagation;
  const { day, today, keepDay } = useEntryDay('propagation');
  const reverse = useReverse();
  const form = useCommandForm({
    command: useCommand('propagation.correctBatchUnits', { title: `${say.correctTitle}: ${batch.code}` }),
    contract: contracts.correctBatchUnits,
    initial: {
      units: batch.places.length === 1 ? (batch.standingUnits as number | null) : null,
      placeId: '',
      happenedOn: day,
      note: '',
    },
    body: (values) => ({ ...values, batchId: batch.batchId, placeId: values.placeId || null }),
    onSaved: ({ entryId }, { units, happenedOn }) => {
      keepDay(happenedOn);
      toast({ text: say.correctSaved(propagation.units(units ?? 0, batch.unit)), undo: () => reverse(entryId) });
      onClose();
    },
  });
  return (
    <Form {...form.props}>
      <FromPlace {...form.field('placeId')} batch={batch} />
      <NumberField {...form.field('units')} label={say.correctLabel(batch.unit)} hint={say.correctHint} steps />
      <DateField {...form.field('happenedOn')} label={say.day} min={batch.startedOn} max={today} />
      <TextArea {...form.field('note')} label={say.note} optional rows={2} />
      <Submit form={form}>{say.correctSave}</Submit>
    </Form>
  );
}
