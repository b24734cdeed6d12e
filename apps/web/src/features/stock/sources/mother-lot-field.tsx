/** MotherLotField: the lot whose plants give seed, cuttings or divisions, among the open lots of the plant. */
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { trpc } from '../../../lib/api/index.ts';
import { useRested } from '../../../lib/use-rested.ts';
import { useMessages } from '../../../messages/index.ts';
import { ComboboxField, type FieldProps } from '../../../ui/fields/index.ts';

export interface PickedLot {
  id: string;
  code: string;
}

export interface MotherLotFieldProps extends Omit<FieldProps, 'label'> {
  plantId: string | null;
  value: PickedLot | null;
  onChange: (lot: PickedLot | null) => void;
}

export function MotherLotField({ plantId, value, onChange, ...props }: MotherLotFieldProps) {
  const { sources } = useMessages();
  const [text, setText] = useState('');
  const asked = useRested(text);
  const query = useQuery(trpc.stock.listLots.queryOptions({ text: asked, plantId, sort: 'code', perPage: 20 }));
  return (
    <ComboboxField
      {...props}
      label={sources.motherLot}
      hint={sources.motherLotHint}
      value={value && { id: value.id, label: value.code }}
      options={(query.data?.rows ?? []).map((lot) => ({
        id: lot.lotId,
        label: lot.code,
        detail: [lot.scientificName, lot.places.map((place) => place.code).join(', ')].filter(Boolean).join(' · '),
        meant: { id: lot.lotId, code: lot.code },
      }))}
      answers={query.isPending ? null : asked}
      onText={setText}
      onChange={onChange}
    />
  );
}
