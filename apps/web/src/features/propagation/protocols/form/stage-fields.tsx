/** One stage of the form: its three lengths and the share that passes, what each rests on, and under a fold the season and conditions. */
import { needsSource, STANDINGS, type Standing } from '@rootclock/domain';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { NumberField, SelectField, TextField } from '../../../../ui/fields/index.ts';
import { Fold } from './fold.tsx';
import { CONDITIONS, Conditions, setIn } from './stage-conditions.tsx';
import { changedStage, type StageValues } from './values.ts';

export interface StageFieldsProps {
  stage: StageValues;
  /** Its place among the stages: the errors of the server name it so. */
  at: number;
  /** Sentences by field, of the whole form. */
  errors: Readonly<Record<string, string>>;
  onChange: (stage: StageValues) => void;
  onRemove: () => void;
}

const SAID: readonly Standing[] = STANDINGS.filter((standing) => standing !== 'not found');

/** Its length and share are all there. */
const isTyped = ({ shortDays, usualDays, longDays, percent }: StageValues) =>
  [shortDays, usualDays, longDays, percent].every((figure) => figure !== null && !Number.isNaN(figure));

export function StageFields({ stage, at, errors, onChange, onRemove }: StageFieldsProps) {
  const { stages, protocols, protocolForm: say } = useMessages().propagation;
  const set = (part: Partial<StageValues>) => onChange(changedStage(stage, part));
  const path = `stages.${at}`;
  const name = stages.names[stage.kind];
  const wrong = Object.keys(errors).flatMap((field) =>
    field.startsWith(`${path}.`) ? [field.slice(path.length + 1)] : [],
  );
  const { shortDays, usualDays, longDays, percent } = stage;
  const told = isTyped(stage)
    ? `${protocols.range({ short: shortDays ?? 0, usual: usualDays ?? 0, long: longDays ?? 0 })}, ${percent}%`
    : '';
  return (
    <Fold
      startsOpen={!isTyped(stage)}
      hasError={wrong.length > 0}
      words={
        <>
          <strong className="stage-name">{name}</strong> {told}
        </>
      }
    >
      <fieldset className="stage-set">
        <legend className="only-heard">{name}</legend>
        <p>{say.lengthInDays}</p>
        <div className="stage-days">
          <NumberField
            name={`${path}.shortDays`}
            label={say.short}
            value={shortDays}
            onChange={(days) => set({ shortDays: days })}
          />
          <NumberField
            name={`${path}.usualDays`}
            label={say.usual}
            value={usualDays}
            onChange={(days) => set({ usualDays: days })}
          />
          <NumberField
            name={`${path}.longDays`}
            label={say.long}
            value={longDays}
            onChange={(days) => set({ longDays: days })}
          />
        </div>
        <Rests
          name={`${path}.duration`}
          labels={{ standing: say.daysStanding, source: say.daysSource }}
          standing={stage.durationStanding}
          source={stage.durationSource}
          onChange={(durationStanding, durationSource) => set({ durationStanding, durationSource })}
        />
        <NumberField
          name={`${path}.share`}
          label={stage.kind === 'emergence' ? say.shareOfSeeds : say.share}
          unit="%"
          decimal
          value={percent}
          onChange={(share) => set({ percent: share })}
        />
        <Rests
          name={`${path}.share`}
          labels={{ standing: say.shareStanding, source: say.shareSource }}
          standing={stage.shareStanding}
          source={stage.shareSource}
          onChange={(shareStanding, shareSource) => set({ shareStanding, shareSource })}
        />
        <Fold
          words={say.conditionsSet(setIn(stage))}
          hasError={wrong.some((field) => CONDITIONS.some((part) => field.startsWith(part)))}
        >
          <Conditions path={path} stage={stage} set={set} />
        </Fold>
        <div>
          <Button look="quiet" aria-label={say.remove(name)} onClick={onRemove}>
            {say.removeShort}
          </Button>
        </div>
      </fieldset>
    </Fold>
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
      <SelectField
        name={`${name}Standing`}
        label={labels.standing}
        value={standing}
        onChange={(value) => value !== '' && onChange(value, needsSource(value) ? source : '')}
        choices={SAID.map((value) => ({ value, label: ui.standing[value] }))}
      />
      {needsSource(standing) && (
        <TextField
          name={`${name}Source`}
          label={labels.source}
          value={source}
          onChange={(text) => onChange(standing, text)}
          maxLength={500}
        />
      )}
    </div>
  );
}
