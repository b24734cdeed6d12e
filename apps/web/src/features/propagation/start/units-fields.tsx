/** How many: whole trays with their cells reckoned in sight, or the units themselves. */
import type { BatchUnit } from '@rootclock/domain';
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { NumberField, RadioField } from '../../../ui/fields/index.ts';

interface NumberHandle {
  name: string;
  value: number | null;
  onChange: (value: number | null) => void;
}

export interface UnitsFieldsProps {
  unit: BatchUnit;
  /** Cells of the chosen tray, where it has some. */
  cells: number | null;
  /** Whether whole trays are counted. */
  counts: boolean;
  trays: NumberHandle;
  units: NumberHandle;
  onCounts: (inTrays: boolean) => void;
}

export function UnitsFields({ unit, cells, counts, trays, units, onCounts }: UnitsFieldsProps) {
  const { form: say } = useMessages().propagation;
  const { numbers } = useFormat();
  const mayCountTrays = unit === 'cell' && cells !== null;
  const total = cells !== null && trays.value !== null && Number.isInteger(trays.value) ? cells * trays.value : null;
  return (
    <>
      {mayCountTrays && (
        <RadioField
          name="inTrays"
          label={say.howMany}
          look="segments"
          value={counts ? 'trays' : 'units'}
          onChange={(value) => onCounts(value === 'trays')}
          choices={[
            { value: 'trays', label: say.inTrays },
            { value: 'units', label: say.inUnits },
          ]}
        />
      )}
      {counts ? (
        <NumberField
          {...trays}
          label={say.trays}
          steps
          min={1}
          hint={
            total !== null && cells !== null ? (
              <span role="status">{say.arithmetic(numbers.count(trays.value ?? 0), cells, numbers.count(total))}</span>
            ) : undefined
          }
        />
      ) : (
        <NumberField {...units} label={say.unitsOf(unit)} steps={unit === 'tray' || unit === 'pack'} min={1} />
      )}
    </>
  );
}
