/** Out of their pots into a nursery bed: both clocks end there. */
import { stock as contracts } from '@rootclock/contracts';
import { COUNT_KINDS, type CountKind } from '@rootclock/domain';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { newId } from '../../../../lib/ids.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Callout } from '../../../../ui/feedback/index.ts';
import { NumberField, RadioField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastDay, useLastPlace } from '../fields/last.ts';
import { FromPlaceField, onlyPlace, PlaceField } from '../fields/place-field.tsx';
import type { LotSheetProps } from '../lot-data.ts';
import { useTellNewLots } from '../new-lots.ts';

export function BedSheet({ lot, onClose }: LotSheetProps) {
  const { sheets, words } = useMessages().lots;
  const [lotId] = useState(newId);
  const [day, keepDay] = useLastDay();
  const [bed, keepBed] = useLastPlace('bed');
  const tell = useTellNewLots();
  const form = useCommandForm({
    command: useCommand('stock.plantInBed', { title: `${sheets.bedTitle}: ${lot.code}` }),
    contract: contracts.plantInBed,
    initial: {
      placeId: onlyPlace(lot),
      units: null as number | null,
      bedId: bed,
      countKind: 'counted' as CountKind | '',
      happenedOn: day,
      note: '',
    },
    body: (said) => ({
      lotId: lot.id,
      placeId: said.placeId || null,
      units: said.units,
      into: { lotId, bedId: said.bedId, countKind: said.countKind },
      happenedOn: said.happenedOn,
      note: said.note,
    }),
    onSaved: (answer, said) => {
      keepDay(said.happenedOn);
      keepBed(said.bedId);
      tell((code) => sheets.bedSaved(said.units ?? 0, code), answer);
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={`${sheets.bedTitle}: ${lot.code}`}>
      <Form {...form.props}>
        <Callout tone="caution">{sheets.digging}</Callout>
        <FromPlaceField
          standing={lot.standing}
          value={form.values.placeId}
          onChange={(placeId) => form.set({ placeId })}
        />
        <NumberField label={sheets.units} steps min={1} {...form.field('units')} />
        <PlaceField label={sheets.bed} kinds={['nursery-bed']} {...form.field('bedId')} name="into.bedId" />
        <RadioField
          look="segments"
          label={sheets.countHow}
          choices={COUNT_KINDS.map((kind) => ({ value: kind, label: words.countKinds[kind] }))}
          {...form.field('countKind')}
          name="into.countKind"
        />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{sheets.bedSave}</Submit>
      </Form>
    </Sheet>
  );
}
