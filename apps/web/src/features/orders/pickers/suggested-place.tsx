/** SuggestedPlace: a place to choose, with the first of a preferred kind filled in as long as nobody has chosen. */
import { useQuery } from '@tanstack/react-query';
import type { PlaceKind } from '@rootclock/domain';
import { useEffect } from 'react';
import { trpc } from '../../../lib/api/index.ts';
import type { FieldProps } from '../../../ui/fields/index.ts';
import { PlaceSelect } from '../../propagation/place-select.tsx';

export interface SuggestedPlaceProps extends FieldProps {
  value: string;
  onChange: (placeId: string) => void;
  preferring: PlaceKind;
}

export function SuggestedPlace({ preferring, ...props }: SuggestedPlaceProps) {
  const { value, onChange } = props;
  const { data: places } = useQuery(trpc.stock.listPlaces.queryOptions({}));
  const suggested = places?.find(({ kind }) => kind === preferring)?.placeId;
  useEffect(() => {
    if (value === '' && suggested !== undefined) onChange(suggested);
  }, [value, suggested, onChange]);
  return <PlaceSelect {...props} />;
}
