/** The batch or part of it to another place. */
import { propagation as contracts } from '@rootclock/contracts';
import { useEntryDay } from '../../../lib/entry-day.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { DateField, NumberField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { PlaceSelect } from '../place-select.tsx';
import { useReverse } from '../use-reverse.ts';
import type { SheetProps } from '../sheet-props.ts';
import { FromPlace } from './from-place.tsx';

export function MoveSheet({ batch, onClose }: SheetProps) {
  const { sheet: say } = useMessages().propagation;
  const { day, today, keepDay } = useEntryDay('propagation');
  const reverse = useReverse();
  const form = useCommandForm({
    command: useCommand('propagation.moveBatch', { title: `${say.moveTitle}: ${batch.code}` }),
    contract: contracts.moveBatch,
    initial: { toPlaceId: '', fromPlaceId: '', units: null as number | null, happenedOn: day },
    body: (values) => ({
      ...values,
      batchId: batch.batchId,
      toPlaceId: values.toPlaceId || undefined,
      fromPlaceId: values.fromPlaceId || null,
    }),
    onSaved: ({ entryId, place }, { happenedOn }) => {
      keepDay(happenedOn);
      toast({ text: say.moveSaved(place), undo: () => reverse(entryId) });
      onClose();
    },
  });
  return (
    <Form {...form.props}>
      <PlaceSelect {...form.field('toPlaceId')} label={say.moveTo} />
      <FromPlace {...form.field('fromPlaceId')} batch={batch} optional />
      <NumberField {...form.field('units')} label={say.moveUnits} hint={say.moveAll} optional min={1} />
      <DateField {...form.field('happenedOn')} label={say.day} min={batch.startedOn} max={today} />
      <Submit form={form}>{say.moveSave}</Submit>
    </Form>
  );
}
