/** FromPlace: which place is meant, asked only where the batch stands in several. */
import { useMessages } from '../../../messages/index.ts';
import { SelectField } from '../../../ui/fields/index.ts';
import type { BatchPageData } from '../batch-page-data.ts';

export interface FromPlaceProps {
  batch: BatchPageData;
  name: string;
  value: string;
  onChange: (placeId: string) => void;
  optional?: boolean;
}

export function FromPlace({ batch, value, onChange, ...props }: FromPlaceProps) {
  const { propagation } = useMessages();
  if (batch.places.length < 2) return null;
  const choices = batch.places.map((place) => ({
    value: place.placeId,
    label: propagation.page.placeUnits(place.code, propagation.units(place.units, batch.unit)),
  }));
  return (
    <SelectField {...props} label={propagation.sheet.whichPlace} value={value} onChange={onChange} choices={choices} />
  );
}
