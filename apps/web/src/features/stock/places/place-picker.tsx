/** PlacePicker: a place by its code or name. There are some dozens, so all of them come at once and the typing narrows them here. */
import { useQuery } from '@tanstack/react-query';
import type { PlaceKind } from '@rootclock/domain';
import { useState } from 'react';
import { trpc } from '../../../lib/api/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { ComboboxField, type FieldProps } from '../../../ui/fields/index.ts';

export interface PickedPlace {
  id: string;
  code: string;
}

export interface PlacePickerProps extends Omit<FieldProps, 'label'> {
  label?: string;
  value: PickedPlace | null;
  onChange: (place: PickedPlace | null) => void;
  /** Only places of these kinds are offered; all when left out. */
  kinds?: readonly PlaceKind[];
  /** A place that is not offered, with all that lies in it. */
  except?: string;
}

export function PlacePicker({ label, value, onChange, kinds, except, ...props }: PlacePickerProps) {
  const { places, placeKinds } = useMessages().stockIn;
  const [text, setText] = useState('');
  const query = useQuery(trpc.stock.listPlaces.queryOptions({}));
  const all = query.data ?? [];
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  const left = except ? withoutBranch(all, except) : all;
  const offered = left.filter(
    (place) =>
      (!kinds || kinds.includes(place.kind)) &&
      words.every((word) => `${place.code} ${place.name} ${placeKinds[place.kind]}`.toLowerCase().includes(word)),
  );
  return (
    <ComboboxField
      {...props}
      label={label ?? places.pickerLabel}
      placeholder={places.pickerPlaceholder}
      value={value && { id: value.id, label: value.code }}
      options={offered.map((place) => ({
        id: place.placeId,
        label: place.code,
        detail: place.name === place.code ? placeKinds[place.kind] : `${place.name} · ${placeKinds[place.kind]}`,
        meant: { id: place.placeId, code: place.code },
      }))}
      answers={query.isPending ? null : text}
      onText={setText}
      onChange={onChange}
    />
  );
}

function withoutBranch<Row extends { placeId: string; depth: number }>(rows: readonly Row[], placeId: string): Row[] {
  const at = rows.findIndex((row) => row.placeId === placeId);
  const depth = rows[at]?.depth ?? 0;
  const after = rows.findIndex((row, index) => index > at && row.depth <= depth);
  return rows.filter((_row, index) => at === -1 || index < at || (after !== -1 && index >= after));
}
