/** Pot up: container, place and day stay filled in from the last lot, so that a further one is opened, and saved. */
import { stock as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { newId } from '../../../../lib/ids.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { DateField, NumberField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { ContainerPicker } from '../../../plants/container-picker.tsx';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastContainer, useLastDay, useLastPlace } from '../fields/last.ts';
import { FromPlaceField, onlyPlace, PlaceField, unitsAt } from '../fields/place-field.tsx';
import type { LotSheetProps } from '../lot-data.ts';
import { useTellNewLots } from '../new-lots.ts';

export function PotUpSheet({ lot, onClose }: LotSheetProps) {
  const { sheets } = useMessages().lots;
  const { dates } = useFormat();
  const [lotId] = useState(newId);
  const [day, keepDay] = useLastDay();
  const [place, keepPlace] = useLastPlace('pot');
  const [container, keepContainer] = useLastContainer('pot');
  const tell = useTellNewLots();
  const form = useCommandForm({
    command: useCommand('stock.potUpLot', { title: `${sheets.potUpTitle}: ${lot.code}` }),
    contract: contracts.potUpLot,
    initial: {
      placeId: onlyPlace(lot),
      units: unitsAt(lot, onlyPlace(lot)) as number | null,
      container,
      toPlaceId: place,
      readyOn: '',
      happenedOn: day,
      note: '',
    },
    body: (said) => ({
      lotId: lot.id,
      placeId: said.placeId || null,
      happenedOn: said.happenedOn,
      note: said.note,
      into: [
        {
          lotId,
          containerId: said.container?.id ?? '',
          placeId: said.toPlaceId,
          units: said.units,
          readyOn: said.readyOn || null,
        },
      ],
    }),
    onSaved: (answer, said) => {
      keepDay(said.happenedOn);
      keepPlace(said.toPlaceId);
      keepContainer(said.container);
      tell((code) => sheets.potUpSaved(said.units ?? 0, code), answer);
      onClose();
    },
  });
  const { values, set } = form;
  return (
    <Sheet open onClose={onClose} title={`${sheets.potUpTitle}: ${lot.code}`}>
      <Form {...form.props}>
        <FromPlaceField
          standing={lot.standing}
          value={values.placeId}
          onChange={(placeId) => set({ placeId, units: unitsAt(lot, placeId) })}
        />
        <NumberField label={sheets.units} steps min={1} {...form.field('units')} name="into.0.units" />
        <ContainerPicker
          name="into.0.containerId"
          label={sheets.container}
          kinds={['pot', 'tray', 'flat']}
          value={values.container}
          onChange={(next) => set({ container: next && { id: next.id, name: next.name } })}
          hint={lot.rule?.basis === 'confined' && lot.limitOn ? sheets.keepsClock(dates.long(lot.limitOn)) : undefined}
        />
        <PlaceField label={sheets.toPlace} {...form.field('toPlaceId')} name="into.0.placeId" />
        <DateField
          label={sheets.readyOn}
          hint={sheets.readyHint}
          optional
          {...form.field('readyOn')}
          name="into.0.readyOn"
        />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{sheets.potUpSave}</Submit>
      </Form>
    </Sheet>
  );
}
