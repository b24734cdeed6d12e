/** MotherLotField: the lot whose plants give seed, cuttings or divisions, among the open lots of the plant. */
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { trpc } from '../../../lib/api/index.ts';
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
  const query = useQuery({ ...trpc.stock.listLots.queryOptions({ text, plantId, sort: 'code', perPage: 20 }), placeholderData: keepPreviousData });
  return (
    <ComboboxField
      {...props}
      label={sources.motherLot}
      hint={sources.motherLotHint}
      value={value && { id: value.id, label: value.code }}
      options={(query.data?.rows ?? []).map((lot) => ({ id: lot.lotId, label: lot.code, detail: [lot.scientificName, lot.places.map((place) => place.code).join(', ')].filter(Boolean).join(' · ') }))}
      onText={setText}
      loading={query.isFetching}
      onChange={(option) => onChange(option && { id: option.id, code: option.label })}
    />
  );
}
