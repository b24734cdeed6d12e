/** One stage of the form: its three lengths and the share that passes, what each rests on, and under a fold the season and conditions. */
import { needsSource, STAGE_LIGHTS, type StageLight, STANDINGS, type Standing } from '@rootclock/domain';
import { useSession } from '../../../../lib/api/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { CheckboxField, NumberField, SelectField, TextArea, TextField } from '../../../../ui/fields/index.ts';
import { FieldGroup } from '../../../../ui/form/index.ts';
import { ContainerPicker } from '../../../plants/container-picker.tsx';
import { MonthDayField } from '../../../plants/month-day-field.tsx';
import { changedStage, type StageValues } from './values.ts';

export interface StageFieldsProps {
  stage: StageValues;
  /** Its place among the stages: the errors of the server name it so. */
  at: number;
  onChange: (stage: StageValues) => void;
  onRemove: () => void;
}

const SAID: readonly Standing[] = STANDINGS.filter((standing) => standing !== 'not found');

export function StageFields({ stage, at, onChange, onRemove }: StageFieldsProps) {
  const { stages, protocolForm: say } = useMessages().propagation;
  const set = (part: Partial<StageValues>) => onChange(changedStage(stage, part));
  const path = `stages.${at}`;
  const name = stages.names[stage.kind];
  return (
    <div className="stage-fields">
      <FieldGroup legend={name}>
        <div className="stage-days">
          <NumberField name={`${path}.shortDays`} label={say.short} value={stage.shortDays} onChange={(shortDays) => set({ shortDays })} />
          <NumberField name={`${path}.usualDays`} label={say.usual} value={stage.usualDays} onChange={(usualDays) => set({ usualDays })} />
          <NumberField name={`${path}.longDays`} label={say.long} value={stage.longDays} onChange={(longDays) => set({ longDays })} />
        </div>
        <Rests name={`${path}.duration`} labels={{ standing: say.daysStanding, source: say.daysSource }} standing={stage.durationStanding} source={stage.durationSource}
          onChange={(durationStanding, durationSource) => set({ durationStanding, durationSource })} />
        <NumberField name={`${path}.share`} label={stage.kind === 'emergence' ? say.shareOfSeeds : say.share} unit="%" decimal value={stage.percent} onChange={(percent) => set({ percent })} />
        <Rests name={`${path}.share`} labels={{ standing: say.shareStanding, source: say.shareSource }} standing={stage.shareStanding} source={stage.shareSource}
          onChange={(shareStanding, shareSource) => set({ shareStanding, shareSource })} />
        <Conditions path={path} stage={stage} set={set} />
        <div><Button look="quiet" aria-label={say.remove(name)} onClick={onRemove}>{say.removeShort}</Button></div>
      </FieldGroup>
    </div>
  );
}

interface RestsProps {
  name: string;
  labels: { standing: string; source: string };
  standing: Standing;
  source: string;
  onChange: (standing: Standing, source: string) => void;
}

/** What a figure rests on; whoever says that it is published says where. */
function Rests({ name, labels, standing, source, onChange }: RestsProps) {
  const { ui } = useMessages();
  return (
    <div className="stage-rests">
      <SelectField name={`${name}Standing`} label={labels.standing} value={standing} onChange={(value) => value !== '' && onChange(value, needsSource(value) ? source : '')} choices={SAID.map((value) => ({ value, label: ui.standing[value] }))} />
      {needsSource(standing) && <TextField name={`${name}Source`} label={labels.source} value={source} onChange={(text) => onChange(standing, text)} maxLength={500} />}
    </div>
  );
}

/** How many of the conditions say something, for the words of the fold. */
const setIn = (stage: StageValues): number =>
  [stage.seasonFrom !== '', stage.rests, stage.low.shown !== null, stage.high.shown !== null, stage.light !== '', stage.depth.shown !== null, stage.medium !== '', stage.container !== null, stage.note !== ''].filter(Boolean).length;

function Conditions({ path, stage, set }: { path: string; stage: StageValues; set: (part: Partial<StageValues>) => void }) {
  const { protocols, protocolForm: say } = useMessages().propagation;
  const { nursery } = useSession();
  const [degrees, lengths] = nursery.units === 'us' ? ['°F', 'in'] : ['°C', 'mm'];
  const lights = STAGE_LIGHTS.filter((light): light is Exclude<StageLight, ''> => light !== '');
  return (
    <details className="stage-conditions">
      <summary>{say.conditionsSet(setIn(stage))}</summary>
      <div className="stack">
        <div className="stage-pair">
          <MonthDayField name={`${path}.season.fromMd`} label={say.seasonFrom} optional value={stage.seasonFrom} onChange={(seasonFrom) => set({ seasonFrom })} />
          <MonthDayField name={`${path}.season.toMd`} label={say.seasonTo} optional value={stage.seasonTo} onChange={(seasonTo) => set({ seasonTo })} />
        </div>
        <CheckboxField name={`${path}.rests`} label={say.rests} value={stage.rests} onChange={(rests) => set({ rests })} />
        <div className="stage-pair">
          <NumberField name={`${path}.temperatureLowC`} label={say.low(degrees)} decimal optional value={stage.low.shown} onChange={(shown) => set({ low: { ...stage.low, shown } })} />
          <NumberField name={`${path}.temperatureHighC`} label={say.high(degrees)} decimal optional value={stage.high.shown} onChange={(shown) => set({ high: { ...stage.high, shown } })} />
        </div>
        <div className="stage-pair">
          <SelectField name={`${path}.light`} label={say.light} optional empty={say.anyLight} value={stage.light} onChange={(light) => set({ light })} choices={lights.map((value) => ({ value, label: protocols.lights[value] }))} />
          <NumberField name={`${path}.depthMm`} label={say.depth(lengths)} decimal={lengths === 'in'} optional value={stage.depth.shown} onChange={(shown) => set({ depth: { ...stage.depth, shown } })} />
        </div>
        <TextField name={`${path}.medium`} label={say.medium} optional value={stage.medium} onChange={(medium) => set({ medium })} maxLength={200} />
        <ContainerPicker name={`${path}.containerId`} label={say.container} optional value={stage.container} onChange={(container) => set({ container: container && { id: container.id, name: container.name } })} />
        <TextArea name={`${path}.note`} label={say.note} optional rows={2} value={stage.note} onChange={(note) => set({ note })} />
      </div>
    </details>
  );
}
