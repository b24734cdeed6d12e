/** Count what stands there. A difference is booked and never refused. */
import { stock as contracts } from '@rootclock/contracts';
import { COUNT_KINDS, type CountKind } from '@rootclock/domain';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { NumberField, RadioField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastDay } from '../fields/last.ts';
import { FromPlaceField, onlyPlace, unitsAt } from '../fields/place-field.tsx';
import type { LotSheetProps } from '../lot-data.ts';
import { useUndoable } from '../undo.ts';

export function CountSheet({ lot, onClose }: LotSheetProps) {
  const { sheets, words } = useMessages().lots;
  const [day, keepDay] = useLastDay();
  const tell = useUndoable();
  const form = useCommandForm({
    command: useCommand('stock.countLot', { title: `${sheets.countTitle}: ${lot.code}` }),
    contract: contracts.countLot,
    initial: {
      placeId: onlyPlace(lot),
      countedUnits: null as number | null,
      countKind: 'counted' as CountKind | '',
      happenedOn: day,
      note: '',
    },
    body: (said) => ({ ...said, lotId: lot.id, placeId: said.placeId || null }),
    onSaved: ({ entryId, countedUnits }, said) => {
      keepDay(said.happenedOn);
      tell(sheets.countSaved(countedUnits, lot.code), entryId);
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={`${sheets.countTitle}: ${lot.code}`}>
      <Form {...form.props}>
        <FromPlaceField
          onePlace
          standing={lot.standing}
          value={form.values.placeId}
          onChange={(placeId) => form.set({ placeId })}
        />
        <NumberField
          label={sheets.counted}
          hint={sheets.countExpected(unitsAt(lot, form.values.placeId))}
          {...form.field('countedUnits')}
        />
        <RadioField
          look="segments"
          label={sheets.countHow}
          choices={COUNT_KINDS.map((kind) => ({ value: kind, label: words.countKinds[kind] }))}
          {...form.field('countKind')}
        />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{sheets.countSave}</Submit>
      </Form>
    </Sheet>
  );
}
