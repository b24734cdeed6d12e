/** One fact in the nursery's own words, with where it comes from. Without a field given it asks which fact is meant. */
import { plants as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { CheckboxField, SelectField, TextField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { asTyped, FactValueFields, type TypedFact, valueOf } from './fact-value-fields.tsx';

export interface FactSheetProps {
  plant: contracts.PlantPage;
  field: contracts.SettableFact | null;
  onClose: () => void;
}

export function FactSheet({ plant, field, onClose }: FactSheetProps) {
  const { page: say, facts: labels } = useMessages().plants;
  const [chosen, setChosen] = useState<contracts.SettableFact | ''>(field ?? '');
  return (
    <Sheet open onClose={onClose} title={chosen === '' ? say.setFact : say.changeFact(labels[chosen])}>
      <div className="stack">
        {field === null && (
          <SelectField
            name="field"
            label={say.factField}
            value={chosen}
            onChange={setChosen}
            choices={contracts.SETTABLE_FACTS.map((value) => ({ value, label: labels[value] }))}
          />
        )}
        {chosen !== '' && <FactForm key={chosen} plant={plant} field={chosen} onClose={onClose} />}
      </div>
    </Sheet>
  );
}

interface Values extends TypedFact {
  unknown: boolean;
  source: string;
  note: string;
}

function FactForm({
  plant,
  field,
  onClose,
}: {
  plant: contracts.PlantPage;
  field: contracts.SettableFact;
  onClose: () => void;
}) {
  const { page: say, facts: labels } = useMessages().plants;
  const before = plant.facts.find((fact) => fact.field === field);
  const initial: Values = {
    ...asTyped(before?.value ?? null),
    unknown: before?.value === null,
    source: before?.standing === 'own setting' ? (before.source ?? '') : '',
    note: before?.note ?? '',
  };
  const form = useCommandForm({
    command: useCommand('plants.setPlantFact', { title: `${say.setFact}: ${plant.scientificName}` }),
    contract: contracts.setPlantFact,
    initial,
    body: (values: Values) => ({
      plantId: plant.id,
      field,
      value: values.unknown ? null : valueOf(field, values),
      source: values.source,
      note: values.note,
    }),
    // Of a fact that nobody has said yet there is no edition.
    row: {
      id: 'field',
      edition: before?.edition ?? 0,
      shown: { value: before?.value ?? null, source: before?.source ?? null },
    },
    fromBody: ({ value }) => ({ ...asTyped(value as contracts.PlantFactValue), unknown: value === null }),
    words: { value: { label: labels[field] } },
    onSaved: () => {
      toast({ text: say.factSaved });
      onClose();
    },
  });
  return (
    <Form {...form.props}>
      {!form.values.unknown && <FactValueFields field={field} typed={form.values} onChange={form.set} />}
      <CheckboxField label={say.factUnknown} {...form.field('unknown')} />
      <TextField label={say.factSource} optional {...form.field('source')} />
      <TextField label={say.factNote} optional {...form.field('note')} />
      <Submit form={form}>{say.change}</Submit>
    </Form>
  );
}
