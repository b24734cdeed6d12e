/** What is asked of an expected need, whether it is entered or changed. */
import type { PickedContainer } from '../../plants/container-picker.tsx';
import { ContainerPicker } from '../../plants/container-picker.tsx';
import type { PickedPlant } from '../../plants/plant-picker.tsx';
import { PlantPicker } from '../../plants/plant-picker.tsx';
import { useSession } from '../../../lib/api/index.ts';
import { useMessages } from '../../../messages/index.ts';
import './demand.css';
import { NumberField, RoughDayField, TextField } from '../../../ui/fields/index.ts';

export interface DemandValues {
  plantId: PickedPlant | null;
  containerId: PickedContainer | null;
  wanted: string;
  units: number | null;
  /** In whole units of the currency, as people say prices. */
  value: number | null;
  note: string;
}

const MINOR = 100;
/** The body of the command, but for the id. */
export const demandBody = (values: DemandValues) => ({
  plantId: values.plantId?.id,
  containerId: values.containerId?.id,
  wanted: values.wanted,
  units: values.units,
  unitValueMinor: values.value === null ? null : Math.round(values.value * MINOR),
  note: values.note,
});
export const valueOf = (minor: number | null): number | null => (minor === null ? null : minor / MINOR);

/** The values that show a body again. */
export function demandValues(
  { plantId, containerId, unitValueMinor }: ReturnType<typeof demandBody>,
  called: Readonly<Record<string, string>>,
  before: DemandValues,
): Partial<DemandValues> {
  return {
    plantId: plantId ? { id: plantId, scientificName: called[plantId] ?? before.plantId?.scientificName ?? '' } : null,
    containerId: containerId ? { id: containerId, name: called[containerId] ?? before.containerId?.name ?? '' } : null,
    value: valueOf(unitValueMinor),
  };
}

interface Handle<Value> {
  name: string;
  value: Value;
  onChange: (value: Value) => void;
}

export function DemandFields({
  field,
}: {
  field: <Key extends keyof DemandValues>(name: Key) => Handle<DemandValues[Key]>;
}) {
  const { demand: say } = useMessages().planning;
  const { nursery } = useSession();
  return (
    <div className="demand-fields">
      <PlantPicker {...field('plantId')} />
      <ContainerPicker {...field('containerId')} label={say.container} kinds={['pot', 'tray']} />
      <RoughDayField {...field('wanted')} label={say.wanted} hint={say.wantedHint} />
      <NumberField {...field('units')} label={say.units} />
      <NumberField
        {...field('value')}
        name="unitValueMinor"
        label={say.value}
        hint={say.valueHint(nursery.currency)}
        decimal
        optional
      />
      <TextField {...field('note')} label={say.note} optional />
    </div>
  );
}
