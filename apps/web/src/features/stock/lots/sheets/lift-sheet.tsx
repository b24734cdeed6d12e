/** Lift plants from a nursery bed into pots, where new clocks begin. */
import { stock as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { newId } from '../../../../lib/ids.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Callout } from '../../../../ui/feedback/index.ts';
import { NumberField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { ContainerPicker } from '../../../plants/container-picker.tsx';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastContainer, useLastDay, useLastPlace } from '../fields/last.ts';
import { FromPlaceField, onlyPlace, PlaceField } from '../fields/place-field.tsx';
import type { LotSheetProps } from '../lot-data.ts';
import { useTellNewLots } from '../new-lots.ts';

export function LiftSheet({ lot, onClose }: LotSheetProps) {
  const { sheets } = useMessages().lots;
  const [lotId] = useState(newId);
  const [day, keepDay] = useLastDay();
  const [place, keepPlace] = useLastPlace('pot');
  const [container, keepContainer] = useLastContainer('pot');
  const tell = useTellNewLots();
  const form = useCommandForm({
    command: useCommand('stock.liftFromBed', { title: `${sheets.liftTitle}: ${lot.code}` }),
    contract: contracts.liftFromBed,
    initial: {
      placeId: onlyPlace(lot),
      dug: null as number | null,
      pots: null as number | null,
      container,
      toPlaceId: place,
      happenedOn: day,
      note: '',
    },
    body: (said) => ({
      lotId: lot.id,
      placeId: said.placeId || null,
      units: said.dug,
      happenedOn: said.happenedOn,
      note: said.note,
      into: [{ lotId, containerId: said.container?.id ?? '', placeId: said.toPlaceId, units: said.pots }],
    }),
    onSaved: (answer, said) => {
      keepDay(said.happenedOn);
      keepPlace(said.toPlaceId);
      keepContainer(said.container);
      tell((code) => sheets.liftSaved(said.dug ?? 0, code), answer);
      onClose();
    },
  });
  const { values, set } = form;
  return (
    <Sheet open onClose={onClose} title={`${sheets.liftTitle}: ${lot.code}`}>
      <Form {...form.props}>
        <Callout tone="caution">{sheets.digging}</Callout>
        <FromPlaceField standing={lot.standing} value={values.placeId} onChange={(placeId) => set({ placeId })} />
        <NumberField
          label={sheets.dug}
          hint={lot.countKind === 'estimated' ? sheets.liftHint : undefined}
          steps
          min={1}
          {...form.field('dug')}
          name="units"
          onChange={(dug) => set({ dug, pots: values.pots === values.dug ? dug : values.pots })}
        />
        <NumberField label={sheets.potsFilled} steps min={1} {...form.field('pots')} name="into.0.units" />
        <ContainerPicker
          name="into.0.containerId"
          label={sheets.container}
          kinds={['pot', 'tray', 'flat']}
          value={values.container}
          onChange={(next) => set({ container: next && { id: next.id, name: next.name } })}
        />
        <PlaceField label={sheets.toPlace} {...form.field('toPlaceId')} name="into.0.placeId" />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{sheets.liftSave}</Submit>
      </Form>
    </Sheet>
  );
}
