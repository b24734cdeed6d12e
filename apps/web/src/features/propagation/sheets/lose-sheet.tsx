/** Writing off cells, trays, pieces or packs with a cause. What may only be dormant is asked about once more. */
import { propagation as contracts } from '@rootclock/contracts';
import { LOSS_CAUSES, type LossCause } from '@rootclock/domain';
import { useEntryDay } from '../../../lib/entry-day.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { CheckboxField, DateField, NumberField, SelectField, TextArea } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { useReverse } from '../use-reverse.ts';
import type { SheetProps } from '../sheet-props.ts';
import { FromPlace } from './from-place.tsx';

export function LoseSheet({ batch, onClose }: SheetProps) {
  const { propagation } = useMessages();
  const { sheet: say } = propagation;
  const { day, today, keepDay } = useEntryDay('propagation');
  const reverse = useReverse();
  const form = useCommandForm({
    command: useCommand('propagation.loseFromBatch', { title: `${say.loseTitle}: ${batch.code}` }),
    contract: contracts.loseFromBatch,
    initial: {
      units: null as number | null,
      placeId: '',
      cause: '' as LossCause | '',
      happenedOn: day,
      note: '',
      confirmed: false,
    },
    body: (values) => ({ ...values, batchId: batch.batchId, placeId: values.placeId || null }),
    onSaved: ({ entryId }, { units, happenedOn }) => {
      keepDay(happenedOn);
      toast({ text: say.loseSaved(propagation.units(units ?? 0, batch.unit)), undo: () => reverse(entryId) });
      onClose();
    },
  });
  const { field } = form;
  return (
    <Form {...form.props}>
      <NumberField
        {...field('units')}
        label={propagation.form.unitsOf(batch.unit)}
        hint={say.left(propagation.units(batch.standingUnits, batch.unit))}
        min={1}
      />
      <FromPlace {...field('placeId')} batch={batch} />
      <SelectField
        {...field('cause')}
        label={say.loseCause}
        choices={LOSS_CAUSES.map((value) => ({ value, label: propagation.causes[value] }))}
      />
      {form.failure?.code === 'may-be-dormant' && <CheckboxField {...field('confirmed')} label={say.confirmDead} />}
      <DateField {...field('happenedOn')} label={say.day} min={batch.startedOn} max={today} />
      <TextArea {...field('note')} label={say.note} optional rows={2} />
      <Submit form={form} look="danger">
        {say.loseSave}
      </Submit>
    </Form>
  );
}
