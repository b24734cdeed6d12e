/** The season and conditions of one stage. */
import { STAGE_LIGHTS, type StageLight } from '@rootclock/domain';
import { useSession } from '../../../../lib/api/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { CheckboxField, NumberField, SelectField, TextArea, TextField } from '../../../../ui/fields/index.ts';
import { ContainerPicker } from '../../../plants/container-picker.tsx';
import { MonthDayField } from '../../../plants/month-day-field.tsx';
import type { StageValues } from './values.ts';

export const CONDITIONS = ['season', 'rests', 'temperature', 'light', 'depthMm', 'medium', 'containerId', 'note'];

/** How many of the conditions say something, for the words of the fold. */
export const setIn = (stage: StageValues): number =>
  [
    stage.seasonFrom !== '',
    stage.rests,
    stage.low.shown !== null,
    stage.high.shown !== null,
    stage.light !== '',
    stage.depth.shown !== null,
    stage.medium !== '',
    stage.container !== null,
    stage.note !== '',
  ].filter(Boolean).length;

export function Conditions({
  path,
  stage,
  set,
}: {
  path: string;
  stage: StageValues;
  set: (part: Partial<StageValues>) => void;
}) {
  const { protocols, protocolForm: say } = useMessages().propagation;
  const { nursery } = useSession();
  const [degrees, lengths] = nursery.units === 'us' ? ['°F', 'in'] : ['°C', 'mm'];
  const lights = STAGE_LIGHTS.filter((light): light is Exclude<StageLight, ''> => light !== '');
  return (
    <>
      <div className="stage-pair">
        <MonthDayField
          name={`${path}.season.fromMd`}
          label={say.seasonFrom}
          optional
          value={stage.seasonFrom}
          onChange={(seasonFrom) => set({ seasonFrom })}
        />
        <MonthDayField
          name={`${path}.season.toMd`}
          label={say.seasonTo}
          optional
          value={stage.seasonTo}
          onChange={(seasonTo) => set({ seasonTo })}
        />
      </div>
      <CheckboxField
        name={`${path}.rests`}
        label={say.rests}
        value={stage.rests}
        onChange={(rests) => set({ rests })}
      />
      <div className="stage-pair">
        <NumberField
          name={`${path}.temperatureLowC`}
          label={say.low(degrees)}
          decimal
          optional
          value={stage.low.shown}
          onChange={(shown) => set({ low: { ...stage.low, shown } })}
        />
        <NumberField
          name={`${path}.temperatureHighC`}
          label={say.high(degrees)}
          decimal
          optional
          value={stage.high.shown}
          onChange={(shown) => set({ high: { ...stage.high, shown } })}
        />
      </div>
      <div className="stage-pair">
        <SelectField
          name={`${path}.light`}
          label={say.light}
          optional
          empty={say.anyLight}
          value={stage.light}
          onChange={(light) => set({ light })}
          choices={lights.map((value) => ({ value, label: protocols.lights[value] }))}
        />
        <NumberField
          name={`${path}.depthMm`}
          label={say.depth(lengths)}
          decimal={lengths === 'in'}
          optional
          value={stage.depth.shown}
          onChange={(shown) => set({ depth: { ...stage.depth, shown } })}
        />
      </div>
      <TextField
        name={`${path}.medium`}
        label={say.medium}
        optional
        value={stage.medium}
        onChange={(medium) => set({ medium })}
        maxLength={200}
      />
      <ContainerPicker
        name={`${path}.containerId`}
        label={say.container}
        optional
        value={stage.container}
        onChange={(container) => set({ container: container && { id: container.id, name: container.name } })}
      />
      <TextArea
        name={`${path}.note`}
        label={say.note}
        optional
        rows={2}
        value={stage.note}
        onChange={(note) => set({ note })}
      />
    </>
  );
}
