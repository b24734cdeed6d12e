/** Fill the gaps of a tray from another lot: the tray goes on under a new label, with the clock of the oldest of its plants. */
import { stock as contracts } from '@rootclock/contracts';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { trpc } from '../../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { newId } from '../../../../lib/ids.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useRested } from '../../../../lib/use-rested.ts';
import { useMessages } from '../../../../messages/index.ts';
import { ComboboxField, NumberField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastDay } from '../fields/last.ts';
import { FromPlaceField, type FromPlaceFieldProps, onlyPlace, unitsAt } from '../fields/place-field.tsx';
import type { Lot, LotSheetProps } from '../lot-data.ts';
import { useTellNewLots } from '../new-lots.ts';

interface Donor {
  id: string;
  code: string;
  standing: FromPlaceFieldProps['standing'];
}

interface DonorFieldProps {
  lot: Lot;
  value: Donor | null;
  onChange: (donor: Donor | null) => void;
}

/** Lots of the same plant and source that stand somewhere; the tray itself is none of them. */
function DonorField({ lot, value, onChange }: DonorFieldProps) {
  const { sheets } = useMessages().lots;
  const [text, setText] = useState('');
  const asked = useRested(text);
  const query = useQuery(
    trpc.stock.listLots.queryOptions({
      text: asked,
      plantId: lot.plant.id,
      sourceId: lot.source.id,
      sort: 'code',
      perPage: 20,
    }),
  );
  const rows = (query.data?.rows ?? []).filter(
    (row) => row.lotId !== lot.id && row.onHandUnits > 0 && row.containerKind !== 'ground',
  );
  return (
    <ComboboxField
      name="from.1.lotId"
      label={sheets.patchFrom}
      hint={sheets.patchFromHint}
      value={value && { id: value.id, label: value.code }}
      options={rows.map((row) => ({
        id: row.lotId,
        label: row.code,
        detail: [row.containerName, ...row.places.map((at) => sheets.unitsAt(at.code, at.units))].join(' · '),
        meant: { id: row.lotId, code: row.code, standing: row.places },
      }))}
      answers={query.isPending ? null : asked}
      onText={setText}
      onChange={onChange}
    />
  );
}

export function PatchSheet({ lot, onClose }: LotSheetProps) {
  const { sheets } = useMessages().lots;
  const [lotId] = useState(newId);
  const [day, keepDay] = useLastDay();
  const tell = useTellNewLots();
  const wholeOf = (said: { placeId: string; units: number | null }) => unitsAt(lot, said.placeId) + (said.units ?? 0);
  const form = useCommandForm({
    command: useCommand('stock.convertLot', { title: `${sheets.patchTitle}: ${lot.code}` }),
    contract: contracts.convertLot,
    initial: {
      placeId: onlyPlace(lot),
      donor: null as Donor | null,
      donorPlaceId: '',
      units: null as number | null,
      happenedOn: day,
      note: '',
    },
    body: (said) => ({
      conversion: 'patch',
      happenedOn: said.happenedOn,
      note: said.note,
      from: [
        { lotId: lot.id, placeId: said.placeId || null, units: unitsAt(lot, said.placeId) },
        { lotId: said.donor?.id ?? '', placeId: said.donorPlaceId || null, units: said.units },
      ],
      into: [{ lotId, containerId: lot.container.id, placeId: said.placeId, units: wholeOf(said) }],
    }),
    onSaved: (answer, said) => {
      keepDay(said.happenedOn);
      tell((code) => sheets.patchSaved(said.units ?? 0, wholeOf(said), code), answer);
      onClose();
    },
  });
  const { values, set } = form;
  const isWhole = values.units !== null && values.placeId !== '';
  return (
    <Sheet open onClose={onClose} title={`${sheets.patchTitle}: ${lot.code}`}>
      <Form {...form.props}>
        <FromPlaceField
          standing={lot.standing}
          name="into.0.placeId"
          value={values.placeId}
          onChange={(placeId) => set({ placeId })}
          onePlace
        />
        <DonorField
          lot={lot}
          value={values.donor}
          onChange={(donor) =>
            set({ donor, donorPlaceId: donor?.standing.length === 1 ? (donor.standing[0]?.placeId ?? '') : '' })
          }
        />
        {values.donor && (
          <FromPlaceField
            standing={values.donor.standing}
            value={values.donorPlaceId}
            onChange={(donorPlaceId) => set({ donorPlaceId })}
          />
        )}
        <NumberField
          label={sheets.patchUnits}
          hint={isWhole ? sheets.patchAfter(wholeOf(values)) : undefined}
          steps
          min={1}
          {...form.field('units')}
          name="from.1.units"
        />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{sheets.patchSave}</Submit>
      </Form>
    </Sheet>
  );
}
