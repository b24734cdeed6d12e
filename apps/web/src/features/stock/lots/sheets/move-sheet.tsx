/** Move a lot, or a part of it under the same label. */
import { stock as contracts } from '@rootclock/contracts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { NumberField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastDay, useLastPlace } from '../fields/last.ts';
import { FromPlaceField, onlyPlace, PlaceField, unitsAt } from '../fields/place-field.tsx';
import type { LotSheetProps } from '../lot-data.ts';
import { useUndoable } from '../undo.ts';

export function MoveSheet({ lot, onClose }: LotSheetProps) {
  const { sheets } = useMessages().lots;
  const [day, keepDay] = useLastDay();
  const [place, keepPlace] = useLastPlace('move');
  const tell = useUndoable();
  const form = useCommandForm({
    command: useCommand('stock.moveLot', { title: `${sheets.moveTitle}: ${lot.code}` }),
    contract: contracts.moveLot,
    initial: { placeId: onlyPlace(lot), units: null as number | null, toPlaceId: place, happenedOn: day, note: '' },
    body: (said) => ({ ...said, lotId: lot.id, placeId: said.placeId || null }),
    onSaved: ({ entryId }, said) => {
      keepDay(said.happenedOn);
      keepPlace(said.toPlaceId);
      tell(sheets.moveSaved(lot.code), entryId);
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={`${sheets.moveTitle}: ${lot.code}`}>
      <Form {...form.props}>
        <FromPlaceField
          standing={lot.standing}
          value={form.values.placeId}
          onChange={(placeId) => form.set({ placeId })}
        />
        <PlaceField label={sheets.moveTo} {...form.field('toPlaceId')} />
        <NumberField
          label={sheets.units}
          hint={sheets.allHint(unitsAt(lot, form.values.placeId))}
          optional
          steps
          min={1}
          {...form.field('units')}
        />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{sheets.moveSave}</Submit>
      </Form>
    </Sheet>
  );
}
