/** Split a part off under a label of its own: to hold only that, or to treat it otherwise. */
import { stock as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { newId } from '../../../../lib/ids.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { NumberField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastDay } from '../fields/last.ts';
import { FromPlaceField, onlyPlace, PlaceField } from '../fields/place-field.tsx';
import type { LotSheetProps } from '../lot-data.ts';
import { useTellNewLots } from '../new-lots.ts';

export function SplitSheet({ lot, onClose }: LotSheetProps) {
  const { sheets } = useMessages().lots;
  const [lotId] = useState(newId);
  const [day, keepDay] = useLastDay();
  const tell = useTellNewLots();
  const form = useCommandForm({
    command: useCommand('stock.splitLot', { title: `${sheets.splitTitle}: ${lot.code}` }),
    contract: contracts.splitLot,
    initial: {
      placeId: onlyPlace(lot),
      units: null as number | null,
      toPlaceId: onlyPlace(lot),
      happenedOn: day,
      note: '',
    },
    body: (said) => ({
      lotId: lot.id,
      placeId: said.placeId || null,
      into: [{ lotId, placeId: said.toPlaceId, units: said.units }],
      happenedOn: said.happenedOn,
      note: said.note,
    }),
    onSaved: (answer, said) => {
      keepDay(said.happenedOn);
      tell((code) => sheets.splitSaved(said.units ?? 0, code), answer);
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={`${sheets.splitTitle}: ${lot.code}`}>
      <Form {...form.props}>
        <FromPlaceField
          standing={lot.standing}
          value={form.values.placeId}
          onChange={(placeId) => form.set({ placeId })}
        />
        <NumberField label={sheets.units} steps min={1} {...form.field('units')} name="into.0.units" />
        <PlaceField label={sheets.toPlace} {...form.field('toPlaceId')} name="into.0.placeId" />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{sheets.splitSave}</Submit>
      </Form>
    </Sheet>
  );
}
