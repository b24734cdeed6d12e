/** A loss over many lots: so many of each, or a share, in one entry. */
import { stock as contracts } from '@rootclock/contracts';
import type { LossCause } from '@rootclock/domain';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { NumberField, RadioField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { CauseField } from '../fields/cause-field.tsx';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastDay } from '../fields/last.ts';
import { MayBeDormant } from '../fields/may-be-dormant.tsx';
import { selectionOf } from '../lot-data.ts';
import { useUndoable } from '../undo.ts';
import type { TargetSheetProps } from './target-sheet.ts';

export function LoseManySheet({ target, onClose, onDone }: TargetSheetProps) {
  const { bulk, sheets } = useMessages().lots;
  const [day, keepDay] = useLastDay();
  const tell = useUndoable();
  const form = useCommandForm({
    command: useCommand('stock.loseMany', { title: bulk.loseTitle(target.name) }),
    contract: contracts.loseMany,
    initial: {
      by: 'percent' as 'units' | 'percent' | '',
      much: null as number | null,
      cause: '' as LossCause | '',
      happenedOn: day,
      note: '',
      confirmed: false,
    },
    body: ({ by, much, ...said }) => ({
      ...selectionOf(target),
      ...said,
      ...(by === 'units' ? { units: much } : { percent: much }),
    }),
    onSaved: ({ entryId, units }, said) => {
      keepDay(said.happenedOn);
      tell(bulk.loseSaved(units), entryId);
      onDone();
    },
  });
  const { values } = form;
  const byUnits = values.by === 'units';
  // Nothing entered is told of the units, which is what the contract asks for first.
  const name = byUnits || values.much === null ? 'units' : 'percent';
  return (
    <Sheet open onClose={onClose} title={bulk.loseTitle(target.name)}>
      <Form {...form.props}>
        <MayBeDormant
          failure={form.failure}
          busy={form.busy}
          onWait={onClose}
          onConfirm={() => form.submit({ ...values, confirmed: true })}
        />
        <RadioField
          look="segments"
          label={sheets.units}
          choices={[
            { value: 'percent', label: bulk.percent },
            { value: 'units', label: bulk.each },
          ]}
          {...form.field('by')}
        />
        <NumberField
          label={byUnits ? bulk.unitsEach : bulk.percentOf}
          unit={byUnits ? undefined : '%'}
          decimal={!byUnits}
          {...form.field('much')}
          name={name}
        />
        <CauseField value={values.cause} onChange={(cause) => form.set({ cause })} />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form} look="danger">
          {sheets.loseSave}
        </Submit>
      </Form>
    </Sheet>
  );
}
