/** A plant that the nursery begins to grow. */
import { plants as contracts } from '@rootclock/contracts';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { NO_PLANT, PlantFields, traitsOf } from './plant-fields.tsx';

export function AddPlantPage() {
  const { form: say, page } = useMessages().plants;
  const navigate = useNavigate();
  const [plantId] = useState(newId);
  const form = useCommandForm({
    command: useCommand('plants.addPlant', { title: say.addTitle }),
    contract: contracts.addPlant,
    initial: NO_PLANT,
    body: (values) => ({ plantId, ...traitsOf(values), code: values.code.trim().toUpperCase() || null }),
    onSaved: ({ code }) => {
      toast({ text: say.added(code) });
      void navigate({ to: paths.plant(plantId) });
    },
  });
  return (
    <>
      <PageHeader title={say.addTitle} back={{ to: paths.plants(), label: page.back }} />
      <Form {...form.props}>
        <PlantFields form={form} isNew />
        <Submit form={form}>{say.add}</Submit>
      </Form>
    </>
  );
}
