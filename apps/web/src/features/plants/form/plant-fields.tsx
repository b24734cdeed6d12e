/** The fields by which a plant is told: the same when it is added and when it is changed. */
import { useQuery } from '@tanstack/react-query';
import { HANDLING_RULES, ROOT_HABITS, type HandlingRule, type RootHabit } from '@rootclock/domain';
import { trpc } from '../../../lib/api/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { CheckboxField, NumberField, SelectField, TextField } from '../../../ui/fields/index.ts';
import { FieldGroup } from '../../../ui/form/index.ts';
import { ChecksField } from '../checks-field.tsx';
import { MonthDayField } from '../month-day-field.tsx';
import { MonthsField } from '../months-field.tsx';

export interface PlantValues {
  scientificName: string;
  vernacularName: string;
  family: string;
  code: string;
  rootHabit: RootHabit | '';
  larvalHost: boolean;
  dormantMonths: number[];
  lastEmergenceMd: string;
  yearOfFirstBloom: number | null;
  nativeRegions: string[];
  handling: HandlingRule[];
}

export const NO_PLANT: PlantValues = {
  scientificName: '',
  vernacularName: '',
  family: '',
  code: '',
  rootHabit: '',
  larvalHost: false,
  dormantMonths: [],
  lastEmergenceMd: '',
  yearOfFirstBloom: null,
  nativeRegions: [],
  handling: [],
};

/** The part of a command's body that both commands share. */
export const traitsOf = ({
  scientificName,
  vernacularName,
  family,
  rootHabit,
  larvalHost,
  dormantMonths,
  lastEmergenceMd,
  yearOfFirstBloom,
  nativeRegions,
  handling,
}: PlantValues) => ({
  scientificName,
  vernacularName,
  family,
  rootHabit: rootHabit || undefined,
  larvalHost,
  dormantMonths,
  lastEmergenceMd: lastEmergenceMd || null,
  yearOfFirstBloom,
  nativeRegions,
  handling,
});

interface FormOf {
  field: <Key extends keyof PlantValues>(
    name: Key,
  ) => { name: Key; value: PlantValues[Key]; onChange: (value: PlantValues[Key]) => void };
}

export function PlantFields({ form, isNew }: { form: FormOf; isNew: boolean }) {
  const { plants } = useMessages();
  const say = plants.form;
  const regions = useQuery(trpc.plants.listRegions.queryOptions({}));
  return (
    <>
      <FieldGroup legend={say.groups.names}>
        <TextField
          label={say.scientificName}
          hint={isNew ? say.scientificNameHint : say.renameHint}
          autoCapitalize="none"
          spellCheck={false}
          autoComplete="off"
          {...form.field('scientificName')}
        />
        <TextField
          label={say.vernacularName}
          hint={isNew ? say.vernacularNameHint : undefined}
          optional
          autoCapitalize="none"
          {...form.field('vernacularName')}
        />
        <TextField label={say.family} optional {...form.field('family')} />
        {isNew && (
          <TextField
            label={say.code}
            hint={say.codeHint}
            optional
            autoCapitalize="characters"
            spellCheck={false}
            {...form.field('code')}
          />
        )}
      </FieldGroup>
      <FieldGroup legend={say.groups.growth}>
        <SelectField
          label={say.rootHabit}
          hint={say.rootHabitHint}
          choices={ROOT_HABITS.map((value) => ({ value, label: plants.rootHabits[value] }))}
          {...form.field('rootHabit')}
        />
        <MonthsField label={say.dormantMonths} hint={say.dormantMonthsHint} optional {...form.field('dormantMonths')} />
        <MonthDayField
          label={say.lastEmergenceMd}
          hint={say.lastEmergenceHint}
          optional
          {...form.field('lastEmergenceMd')}
        />
        <NumberField label={say.yearOfFirstBloom} optional {...form.field('yearOfFirstBloom')} />
      </FieldGroup>
      <FieldGroup legend={say.groups.handling}>
        <ChecksField
          label={say.handling}
          hint={say.handlingHint}
          optional
          choices={HANDLING_RULES.map((value) => ({ value, label: plants.handling[value] }))}
          {...form.field('handling')}
        />
        <CheckboxField label={say.larvalHost} hint={say.larvalHostHint} {...form.field('larvalHost')} />
      </FieldGroup>
      <FieldGroup legend={say.groups.range}>
        <ChecksField
          label={say.nativeRegions}
          hint={say.nativeRegionsHint}
          optional
          choices={(regions.data ?? []).map(({ code, name }) => ({ value: code, label: name }))}
          {...form.field('nativeRegions')}
        />
      </FieldGroup>
    </>
  );
}
