/** PlaceField: one of the nursery's places, in the order of their tree. FromPlaceField: one of those a lot stands at, asked only where there are several. */
import { useQuery } from '@tanstack/react-query';
import type { PlaceKind } from '@rootclock/domain';
import { trpc } from '../../../../lib/api/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { SelectField, type FieldProps } from '../../../../ui/fields/index.ts';
import type { Lot } from '../lot-data.ts';

export interface PlaceFieldProps extends FieldProps {
  value: string;
  onChange: (placeId: string) => void;
  /** Only places of these kinds; all when left out. */
  kinds?: readonly PlaceKind[];
  empty?: string;
}

const INDENT = '\u2003';

export function PlaceField({ value, onChange, kinds, hint, ...props }: PlaceFieldProps) {
  const { sheets } = useMessages().lots;
  const { data } = useQuery(trpc.stock.listPlaces.queryOptions({}));
  const choices = (data ?? [])
    .filter((place) => !kinds || kinds.includes(place.kind))
    .map((place) => ({
      value: place.placeId,
      label: `${INDENT.repeat(place.depth)}${place.closedBy ? sheets.closedPlace(place.code) : place.code}${place.name === place.code ? '' : ` · ${place.name}`}`,
      disabled: place.closedBy !== null,
    }));
  // A place remembered from before may have been retired since.
  const known = choices.some((choice) => choice.value === value) ? value : '';
  return (
    <SelectField
      {...props}
      hint={data && choices.length === 0 ? sheets.noPlaces : hint}
      value={known}
      onChange={onChange}
      choices={choices}
    />
  );
}

export interface FromPlaceFieldProps {
  standing: readonly Pick<Lot['standing'][number], 'placeId' | 'code' | 'units'>[];
  value: string;
  onChange: (placeId: string) => void;
  /** A count is taken at one place; other work may take all of a lot wherever it stands. */
  onePlace?: boolean;
  /** The path of the body it answers to, where that is not `placeId`. */
  name?: string;
}

export function FromPlaceField({ standing, value, onChange, onePlace = false, name = 'placeId' }: FromPlaceFieldProps) {
  const { sheets } = useMessages().lots;
  if (standing.length < 2) return null;
  return (
    <SelectField
      name={name}
      label={sheets.fromPlace}
      optional={!onePlace && 'unsaid'}
      empty={onePlace ? undefined : sheets.everywhere(standing.reduce((sum, { units }) => sum + units, 0))}
      value={value}
      onChange={onChange}
      choices={standing.map((at) => ({ value: at.placeId, label: sheets.unitsAt(at.code, at.units) }))}
    />
  );
}

/** The place that is meant without asking: the only one, or none. */
export const onlyPlace = (lot: Lot): string => (lot.standing.length === 1 ? (lot.standing[0]?.placeId ?? '') : '');
/** What stands at the place that is meant. */
export const unitsAt = (lot: Lot, placeId: string): number =>
  placeId ? (lot.standing.find((at) => at.placeId === placeId)?.units ?? 0) : lot.units.onHand;
