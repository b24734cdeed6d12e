/** PlaceSelect: one of the nursery's places by its code, in the order of the places' tree. */
import { useQuery } from '@tanstack/react-query';
import { trpc } from '../../lib/api/index.ts';
import { useMessages } from '../../messages/index.ts';
import { SelectField, type FieldProps } from '../../ui/fields/index.ts';

export interface PlaceSelectProps extends FieldProps {
  value: string;
  onChange: (placeId: string) => void;
}

export function PlaceSelect({ value, onChange, hint, ...props }: PlaceSelectProps) {
  const { form } = useMessages().propagation;
  const { data } = useQuery(trpc.stock.listPlaces.queryOptions({}));
  const choices = (data ?? []).map((place) => ({
    value: place.placeId,
    label: `${'\u2003'.repeat(place.depth)}${place.closedBy ? form.closedPlace(place.code) : place.code}${place.name === place.code ? '' : ` · ${place.name}`}`,
  }));
  // A place remembered from before may have been retired since.
  const known = choices.some((choice) => choice.value === value) ? value : '';
  return (
    <SelectField
      {...props}
      hint={data?.length === 0 ? form.noPlace : hint}
      value={known}
      onChange={onChange}
      choices={choices}
    />
  );
}
