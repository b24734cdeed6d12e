/** Divide or clump: both sides are counted, since only whoever holds the knife knows how many came of it. */
import { stock as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { newId } from '../../../../lib/ids.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Callout } from '../../../../ui/feedback/index.ts';
import { NumberField, RadioField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { ContainerPicker } from '../../../plants/container-picker.tsx';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastContainer, useLastDay, useLastPlace } from '../fields/last.ts';
import { FromPlaceField, onlyPlace, PlaceField } from '../fields/place-field.tsx';
import type { LotSheetProps } from '../lot-data.ts';
import { useTellNewLots } from '../new-lots.ts';

type Chosen = Exclude<contracts.Conversion, 'patch'>;

export function ConvertSheet({ lot, onClose }: LotSheetProps) {
  const { sheets } = useMessages().lots;
  const [lotId] = useState(newId);
  const [day, keepDay] = useLastDay();
  const [place, keepPlace] = useLastPlace('pot');
  const [container, keepContainer] = useLastContainer('convert');
  const tell = useTellNewLots();
  const form = useCommandForm({
    command: useCommand('stock.convertLot', { title: `${sheets.convertTitle}: ${lot.code}` }),
    contract: contracts.convertLot,
    initial: {
      conversion: 'divide' as Chosen | '',
      placeId: onlyPlace(lot),
      before: null as number | null,
      after: null as number | null,
      container,
      toPlaceId: place,
      happenedOn: day,
      note: '',
    },
    body: (said) => ({
      conversion: said.conversion,
      happenedOn: said.happenedOn,
      note: said.note,
      from: [{ lotId: lot.id, placeId: said.placeId || null, units: said.before }],
      into: [{ lotId, containerId: said.container?.id ?? '', placeId: said.toPlaceId, units: said.after }],
    }),
    onSaved: (answer, said) => {
      keepDay(said.happenedOn);
      keepPlace(said.toPlaceId);
      keepContainer(said.container);
      tell((code) => sheets.convertSaved(said.before ?? 0, said.after ?? 0, code), answer);
      onClose();
    },
  });
  const { values, set } = form;
  return (
    <Sheet open onClose={onClose} title={`${sheets.convertTitle}: ${lot.code}`}>
      <Form {...form.props}>
        <RadioField
          label={sheets.convertHow}
          choices={[
            { value: 'divide', label: sheets.divide },
            { value: 'clump', label: sheets.clump },
          ]}
          {...form.field('conversion')}
        />
        {values.conversion === 'divide' && <Callout tone="caution">{sheets.knives}</Callout>}
        <FromPlaceField standing={lot.standing} value={values.placeId} onChange={(placeId) => set({ placeId })} />
        <NumberField label={sheets.plantsIn} steps min={1} {...form.field('before')} name="from.0.units" />
        <NumberField label={sheets.potsOut} steps min={1} {...form.field('after')} name="into.0.units" />
        <ContainerPicker
          name="into.0.containerId"
          label={sheets.container}
          kinds={['pot', 'tray', 'flat']}
          value={values.container}
          onChange={(next) => set({ container: next && { id: next.id, name: next.name } })}
        />
        <PlaceField label={sheets.toPlace} {...form.field('toPlaceId')} name="into.0.placeId" />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{sheets.convertSave}</Submit>
      </Form>
    </Sheet>
  );
}
