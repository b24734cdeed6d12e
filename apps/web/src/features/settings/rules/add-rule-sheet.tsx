/** A rule of the nursery's own: what it counts from, whom it reaches, how long. Opened over a lot, it is for that lot alone. */
import { potLife as contracts } from '@rootclock/contracts';
import type { plants } from '@rootclock/contracts';
import { POT_LIFE_BASES, ROOT_HABITS, type PotLifeBasis, type RootHabit } from '@rootclock/domain';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { RadioField, SelectField, TextField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { ContainerPicker } from '../../plants/container-picker.tsx';
import { PlantPicker } from '../../plants/plant-picker.tsx';
import { Preview } from '../preview.tsx';
import { NEW_TERMS, type Terms, termsBody, TermsFields } from './terms-fields.tsx';

const REACHES = ['rootHabit', 'genus', 'plant'] as const;

interface Values extends Terms {
  basis: PotLifeBasis | '';
  reach: (typeof REACHES)[number] | '';
  rootHabit: RootHabit | '';
  genus: string;
  plant: plants.PlantChoice | null;
  container: plants.ContainerRow | null;
}

const reachAmong = ({ reach, rootHabit, genus, plant, container }: Values) => {
  if (reach === 'genus') return { genus: genus.trim() || undefined };
  const inContainer = { containerId: container?.id ?? null };
  return reach === 'plant'
    ? { plantId: plant?.id, ...inContainer }
    : { rootHabit: rootHabit || undefined, ...inContainer };
};

export interface AddRuleSheetProps {
  /** The one lot that the rule is for; without it whom the rule reaches is asked. */
  lot?: { id: string; code: string };
  onClose: () => void;
}

export function AddRuleSheet({ lot, onClose }: AddRuleSheetProps) {
  const { rules } = useMessages();
  const { form: say } = rules;
  const [ruleId] = useState(newId);
  const initial: Values = {
    ...NEW_TERMS,
    basis: 'container',
    reach: 'rootHabit',
    rootHabit: '',
    genus: '',
    plant: null,
    container: null,
  };
  const title = lot ? `${say.lotTitle}: ${lot.code}` : say.addTitle;
  const bodyOf = (values: Values) => ({
    ruleId,
    basis: values.basis || undefined,
    reach: lot ? { lotId: lot.id } : reachAmong(values),
    ...termsBody(values.basis, values),
  });
  const form = useCommandForm({
    command: useCommand('potLife.addRule', { title }),
    contract: contracts.addRule,
    initial,
    body: bodyOf,
    onSaved: () => {
      toast({ text: rules.saved });
      onClose();
    },
  });
  const { basis } = form.values;
  return (
    <Sheet open onClose={onClose} title={title}>
      <Form {...form.props}>
        <RadioField
          label={say.basis}
          choices={POT_LIFE_BASES.map((value) => ({ value, label: say.bases[value], hint: say.basisHints[value] }))}
          {...form.field('basis')}
        />
        {lot ? <p>{say.lotReach}</p> : <ReachFields form={form} />}
        <TermsFields basis={basis} terms={form.values} onChange={form.set} />
        <Preview change={{ command: 'addRule', body: bodyOf(form.values) }} />
        <Submit form={form}>{say.save}</Submit>
      </Form>
    </Sheet>
  );
}

type RuleForm = ReturnType<typeof useCommandForm<'potLife.addRule', Values>>;

function ReachFields({ form: { values, field } }: { form: Pick<RuleForm, 'values' | 'field'> }) {
  const { rules, plants: words } = useMessages();
  const { form: say } = rules;
  const { reach } = values;
  return (
    <>
      <RadioField
        label={say.reach}
        look="segments"
        choices={REACHES.map((value) => ({ value, label: say.reaches[value] }))}
        {...field('reach')}
      />
      {reach === 'rootHabit' && (
        <SelectField
          label={words.list.rootHabit}
          choices={ROOT_HABITS.map((value) => ({ value, label: words.rootHabits[value] }))}
          {...field('rootHabit')}
          name="reach.rootHabit"
        />
      )}
      {reach === 'genus' && (
        <TextField
          label={say.genus}
          hint={say.reachesContainer}
          spellCheck={false}
          {...field('genus')}
          name="reach.genus"
        />
      )}
      {reach === 'plant' && <PlantPicker {...field('plant')} name="reach.plantId" />}
      {reach !== 'genus' && (
        <ContainerPicker
          label={say.container}
          hint={say.anyContainer}
          optional
          {...field('container')}
          name="reach.containerId"
        />
      )}
    </>
  );
}
