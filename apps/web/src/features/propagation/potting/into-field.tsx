/** IntoField: a new lot, or one of the same batch that was begun a few days ago. Asked only where there is such a one. */
import { useMessages } from '../../../messages/index.ts';
import { RadioField } from '../../../ui/fields/index.ts';
import type { BatchPageData } from '../batch-page-data.ts';
import { NEW_LOT } from './lots-still-open.ts';

export function IntoField({
  lots,
  value,
  onChange,
}: {
  lots: BatchPageData['lots'];
  value: string;
  onChange: (into: string) => void;
}) {
  const { sheet: say } = useMessages().propagation;
  if (lots.length === 0) return null;
  const choices = [
    { value: NEW_LOT, label: say.newLot },
    ...lots.map((lot) => ({ value: lot.lotId, label: say.addTo(lot.code, lot.pottedUnits), hint: lot.containerName })),
  ];
  return <RadioField name="lots.0.lotId" label={say.potInto} value={value} onChange={onChange} choices={choices} />;
}
