/** A new rule: what may stand in, for whom, and with which penalty. */
import { orders as contracts, type plants } from '@rootclock/contracts';
import { SUBSTITUTION_KINDS, type SubstitutionKind } from '@rootclock/domain';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { NumberField, RadioField, TextField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { PlantPicker } from '../../plants/plant-picker.tsx';

const REACHES = ['all', 'genus', 'plant'] as const;

interface Values {
  kind: SubstitutionKind;
  reach: (typeof REACHES)[number];
  genus: string;
  plant: plants.PlantChoice | null;
  penalty: number | null;
  note: string;
}

const NONE: Values = { kind: 'another-size', reach: 'all', genus: '', plant: null, penalty: 2, note: '' };

// What was chosen and not filled in goes out empty, so that the contract says it beside the field.
const reachAmong = ({ reach, genus, plant }: Values) =>
  reach === 'genus' ? { genus } : reach === 'plant' ? { plantId: plant?.id ?? '' } : {};

export function AddSubstitutionSheet({ onClose }: { onClose: () => void }) {
  const { substitutes } = useMessages();
  const { form: say } = substitutes;
  const [ruleId] = useState(newId);
  const form = useCommandForm({
    command: useCommand('orders.addSubstitutionRule', { title: say.addTitle }),
    contract: contracts.addSubstitutionRule,
    initial: NONE,
    body: (values) => ({
      ruleId,
      kind: values.kind,
      reach: reachAmong(values),
      penalty: values.penalty,
      note: values.note,
    }),
    onSaved: () => {
      toast({ text: substitutes.saved });
      onClose();
    },
  });
  const { reach } = form.values;
  return (
    <Sheet open onClose={onClose} title={say.addTitle}>
      <Form {...form.props}>
        <RadioField
          label={say.kind}
          choices={SUBSTITUTION_KINDS.map((value) => ({
            value,
            label: substitutes.kinds[value],
            hint: substitutes.sentences[value],
          }))}
          {...form.field('kind')}
        />
        <RadioField
          label={say.reach}
          look="segments"
          choices={REACHES.map((value) => ({ value, label: say.reachWords[value] }))}
          {...form.field('reach')}
        />
        {reach === 'genus' && (
          <TextField label={say.genus} spellCheck={false} {...form.field('genus')} name="reach.genus" />
        )}
        {reach === 'plant' && <PlantPicker {...form.field('plant')} name="reach.plantId" />}
        <NumberField label={say.penalty} hint={say.penaltyHint} steps min={1} {...form.field('penalty')} />
        <TextField label={say.note} optional {...form.field('note')} />
        <Submit form={form}>{say.save}</Submit>
      </Form>
    </Sheet>
  );
}
