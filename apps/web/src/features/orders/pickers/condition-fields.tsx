/** ConditionFields: where a line goes and what it asks of the lots that serve it, with what may stand in for it. */
import { MOST_PENALTY } from '@rootclock/domain';
import { newCommandId } from '../../../lib/ids.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { CheckboxField, NumberField, SelectField, TextField } from '../../../ui/fields/index.ts';
import { FieldGroup } from '../../../ui/form/index.ts';
import { ItemPickers, type Item } from './item-pickers.tsx';

export interface Alternative extends Item {
  key: string;
  /** The smaller goes first. Left out or empty, it comes behind all that stand above it. */
  penalty?: number | null;
}

export interface Conditions {
  bedId: string;
  seedZone: string;
  wildType: boolean;
  untreated: boolean;
  alternatives: Alternative[];
}

export const NO_CONDITIONS: Conditions = {
  bedId: '',
  seedZone: '',
  wildType: false,
  untreated: false,
  alternatives: [],
};

/** As the contracts take them. A choice that nobody filled in is left out. */
export function conditionsBody(conditions: Conditions) {
  return {
    bedId: conditions.bedId || null,
    seedZone: conditions.seedZone,
    wildType: conditions.wildType,
    untreated: conditions.untreated,
    alternatives: conditions.alternatives.filter(isSaid).map(({ plant, container, penalty }, index, said) => ({
      plantId: plant?.id ?? '',
      containerId: container?.id ?? '',
      penalty: penalty ?? behind(said.slice(0, index)),
    })),
  };
}

/** Somebody has chosen a part of it at least. */
const isSaid = ({ plant, container }: Alternative) => plant !== null || container !== null;

/** The penalty that puts another choice behind these; each without one of its own counts as behind those above it. */
const behind = (alternatives: readonly Alternative[]): number =>
  Math.min(MOST_PENALTY, 1 + alternatives.reduce((most, { penalty }) => Math.max(most, penalty ?? most + 1), 0));

export interface ConditionFieldsProps {
  path?: string;
  value: Conditions;
  onChange: (conditions: Conditions) => void;
  beds: readonly { id: string; name: string }[];
}

export function ConditionFields({ path = '', value, onChange, beds }: ConditionFieldsProps) {
  const { orders, promises } = useMessages();
  const words = promises.line;
  const set = (part: Partial<Conditions>) => onChange({ ...value, ...part });
  const said = value.alternatives.filter(isSaid);
  const setAlternative = (key: string, part: Partial<Alternative>) =>
    set({ alternatives: value.alternatives.map((each) => (each.key === key ? { ...each, ...part } : each)) });
  // Errors come with the place in what was sent, where empty choices are left out.
  const pathOf = (alternative: Alternative) =>
    isSaid(alternative)
      ? `${path}alternatives.${said.indexOf(alternative)}.`
      : `${path}alternatives.${alternative.key}.`;
  return (
    <>
      {beds.length > 0 && (
        <SelectField
          name={`${path}bedId`}
          label={orders.bed}
          optional
          empty={orders.noBed}
          value={value.bedId}
          onChange={(bedId) => set({ bedId })}
          choices={beds.map((bed) => ({ value: bed.id, label: bed.name }))}
        />
      )}
      <TextField
        name={`${path}seedZone`}
        label={words.seedZone}
        hint={words.seedZoneHint}
        optional
        value={value.seedZone}
        onChange={(seedZone) => set({ seedZone })}
      />
      <CheckboxField
        name={`${path}wildType`}
        label={words.wildType}
        value={value.wildType}
        onChange={(wildType) => set({ wildType })}
      />
      <CheckboxField
        name={`${path}untreated`}
        label={words.untreated}
        hint={words.untreatedHint}
        value={value.untreated}
        onChange={(untreated) => set({ untreated })}
      />
      <FieldGroup legend={words.alternatives}>
        <p className="field-hint">{words.alternativesHint}</p>
        {value.alternatives.map((alternative, index) => (
          <div key={alternative.key} className="stack">
            <ItemPickers
              path={pathOf(alternative)}
              value={alternative}
              onChange={(item) => setAlternative(alternative.key, item)}
            />
            <NumberField
              name={`${pathOf(alternative)}penalty`}
              label={words.penaltyOf(index + 1)}
              hint={words.penaltyHint}
              optional
              steps
              min={1}
              value={alternative.penalty ?? null}
              onChange={(penalty) => setAlternative(alternative.key, { penalty })}
            />
            <div>
              <Button
                look="quiet"
                onClick={() => set({ alternatives: value.alternatives.filter((each) => each.key !== alternative.key) })}
              >
                {words.removeAlternative(index)}
              </Button>
            </div>
          </div>
        ))}
        <div>
          <Button
            onClick={() =>
              set({
                alternatives: [
                  ...value.alternatives,
                  { key: newCommandId(), plant: null, container: null, penalty: behind(value.alternatives) },
                ],
              })
            }
          >
            {words.addAlternative}
          </Button>
        </div>
      </FieldGroup>
    </>
  );
}
