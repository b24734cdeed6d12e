/** Lost plants. Never refused for a promise; what looks dead is asked about once more while it may only be dormant. */
import { stock as contracts } from '@rootclock/contracts';
import type { LossCause } from '@rootclock/domain';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { NumberField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { CauseField } from '../fields/cause-field.tsx';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastDay } from '../fields/last.ts';
import { MayBeDormant } from '../fields/may-be-dormant.tsx';
import { FromPlaceField, onlyPlace } from '../fields/place-field.tsx';
import type { LotSheetProps } from '../lot-data.ts';
import { useUndoable } from '../undo.ts';

export function LoseSheet({ lot, onClose }: LotSheetProps) {
  const { sheets } = useMessages().lots;
  const [day, keepDay] = useLastDay();
  const tell = useUndoable();
  const form = useCommandForm({
    command: useCommand('stock.loseFromLot', { title: `${sheets.loseTitle}: ${lot.code}` }),
    contract: contracts.loseFromLot,
    initial: {
      placeId: onlyPlace(lot),
      units: null as number | null,
      cause: '' as LossCause | '',
      happenedOn: day,
      note: '',
      confirmed: false,
    },
    body: (said) => ({ ...said, lotId: lot.id, placeId: said.placeId || null }),
    onSaved: ({ entryId }, said) => {
      keepDay(said.happenedOn);
      tell(sheets.loseSaved(said.units ?? 0, lot.code), entryId);
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={`${sheets.loseTitle}: ${lot.code}`}>
      <Form {...form.props}>
        <MayBeDormant
          failure={form.failure}
          busy={form.busy}
          onWait={onClose}
          onConfirm={() => form.submit({ ...form.values, confirmed: true })}
        />
        <FromPlaceField
          standing={lot.standing}
          value={form.values.placeId}
          onChange={(placeId) => form.set({ placeId })}
        />
        <NumberField label={sheets.units} steps min={1} {...form.field('units')} />
        <CauseField value={form.values.cause} onChange={(cause) => form.set({ cause })} />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form} look="danger">
          {sheets.loseSave}
        </Submit>
      </Form>
    </Sheet>
  );
}
