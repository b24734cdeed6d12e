/** What may be promised of the batch before it is potted. */
import { propagation as contracts } from '@rootclock/contracts';
import { useEntryDay } from '../../../lib/entry-day.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { DateField, NumberField, TextArea } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { ContainerPicker, type PickedContainer } from '../../plants/container-picker.tsx';
import { useReverse } from '../use-reverse.ts';
import type { SheetProps } from '../sheet-props.ts';

export function ForecastSheet({ batch, onClose }: SheetProps) {
  const { propagation } = useMessages();
  const { sheet: say, form: words } = propagation;
  const { day, today, keepDay } = useEntryDay('propagation');
  const reverse = useReverse();
  const target: PickedContainer | null = batch.targetContainerId
    ? { id: batch.targetContainerId, name: batch.targetContainerName ?? '' }
    : null;
  const form = useCommandForm({
    command: useCommand('propagation.setBatchForecast', { title: `${say.forecastTitle}: ${batch.code}` }),
    contract: contracts.setBatchForecast,
    initial: {
      targetContainerId: target,
      cautiousUnits: batch.cautiousUnits as number | null,
      usualUnits: (batch.usualUnits || null) as number | null,
      readyOn: batch.readyOn ?? '',
      happenedOn: day,
      note: '',
    },
    body: (values) => ({
      ...values,
      batchId: batch.batchId,
      targetContainerId: values.targetContainerId?.id ?? null,
      cautiousUnits: values.cautiousUnits ?? 0,
      readyOn: values.readyOn || null,
    }),
    onSaved: ({ entryId }, { cautiousUnits, happenedOn }) => {
      keepDay(happenedOn);
      toast({ text: say.forecastSaved(cautiousUnits ?? 0), undo: () => reverse(entryId) });
      onClose();
    },
  });
  return (
    <Form {...form.props}>
      <ContainerPicker {...form.field('targetContainerId')} label={words.target} optional kinds={['pot', 'tray']} />
      <NumberField {...form.field('cautiousUnits')} label={words.cautious} hint={say.forecastHint} />
      <NumberField {...form.field('usualUnits')} label={words.usual} hint={words.usualHint} optional />
      <DateField {...form.field('readyOn')} label={words.ready} optional />
      <DateField {...form.field('happenedOn')} label={say.day} min={batch.startedOn} max={today} />
      <TextArea {...form.field('note')} label={say.note} optional rows={2} />
      <Submit form={form}>{say.forecastSave}</Submit>
    </Form>
  );
}
