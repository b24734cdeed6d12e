/** Adds a synonym or common name; says at once when other plants bear it too. */
import { plants as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../lib/form/index.ts';
import { newId } from '../../lib/ids.ts';
import { useCommand } from '../../lib/outbox/index.ts';
import { useMessages } from '../../messages/index.ts';
import { toast } from '../../ui/feedback/index.ts';
import { RadioField, TextField } from '../../ui/fields/index.ts';
import { Form } from '../../ui/form/index.ts';
import { Sheet } from '../../ui/overlay/index.ts';

interface Values {
  kind: 'common' | 'synonym';
  name: string;
}

export function AddNameSheet({ plant, onClose }: { plant: contracts.PlantPage; onClose: () => void }) {
  const { page: say } = useMessages().plants;
  const [nameId] = useState(newId);
  const initial: Values = { kind: 'common', name: '' };
  const form = useCommandForm({
    command: useCommand('plants.addPlantName', { title: `${say.addName}: ${plant.scientificName}` }),
    contract: contracts.addPlantName,
    initial,
    body: (values: Values) => ({ nameId, plantId: plant.id, ...values }),
    onSaved: ({ alsoMeans }, { name }) => {
      const others = alsoMeans.map(({ scientificName }) => scientificName).join(', ');
      toast({ text: others === '' ? say.nameAdded(name) : say.nameShared(name, others) });
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={say.addName}>
      <Form {...form.props}>
        <RadioField
          label={say.nameKind}
          look="segments"
          choices={[
            { value: 'common', label: say.common },
            { value: 'synonym', label: say.synonym },
          ]}
          {...form.field('kind')}
        />
        <TextField label={say.name} autoCapitalize="none" spellCheck={false} {...form.field('name')} />
        <Submit form={form}>{say.addName}</Submit>
      </Form>
    </Sheet>
  );
}
