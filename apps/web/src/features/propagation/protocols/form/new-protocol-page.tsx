/** The form for a plant's protocol in its first version. */
import { propagation as contracts } from '@rootclock/contracts';
import { PROPAGATION_METHODS } from '@rootclock/domain';
import { useQuery } from '@tanstack/react-query';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { trpc, useSession } from '../../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { newId } from '../../../../lib/ids.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { Read } from '../../../../lib/read/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { toast } from '../../../../ui/feedback/index.ts';
import { RadioField, TextArea, TextField } from '../../../../ui/fields/index.ts';
import { FieldGroup, Form } from '../../../../ui/form/index.ts';
import { PageHeader } from '../../../../ui/layout/index.ts';
import { PlantPicker, type PickedPlant } from '../../../plants/plant-picker.tsx';
import { contentBody } from './content-body.ts';
import { ProtocolFields } from './protocol-fields.tsx';
import { emptyValues, methodValues, type ProtocolValues } from './values.ts';
import '../protocols.css';
import './protocol-form.css';

export function NewProtocolPage() {
  const { protocolForm: say, protocols } = useMessages().propagation;
  const search: Record<string, unknown> = useSearch({ strict: false });
  const plantId = typeof search['plant'] === 'string' ? search['plant'] : '';
  const query = useQuery({ ...trpc.plants.readPlant.queryOptions({ plantId }), enabled: plantId !== '' });
  return (
    <div className="stack">
      <PageHeader title={say.newTitle} back={{ to: paths.protocols(), label: protocols.title }} />
      {plantId === '' ? (
        <NewProtocol plant={null} />
      ) : (
        <Read query={query}>{({ id, scientificName }) => <NewProtocol plant={{ id, scientificName }} />}</Read>
      )}
    </div>
  );
}

function NewProtocol({ plant }: { plant: PickedPlant | null }) {
  const { propagation } = useMessages();
  const { protocolForm: say } = propagation;
  const { nursery } = useSession();
  const navigate = useNavigate();
  const [{ protocolId, versionId }] = useState(() => ({ protocolId: newId(), versionId: newId() }));
  const form = useCommandForm({
    command: useCommand('propagation.addProtocol', { title: say.newTitle }),
    contract: contracts.addProtocol,
    initial: emptyValues(plant),
    body: (values: ProtocolValues) => ({
      protocolId,
      versionId,
      plantId: values.plantId?.id,
      method: values.method,
      label: values.label,
      changeNote: values.changeNote,
      ...contentBody(values, nursery.units === 'us'),
    }),
    onSaved: ({ number }) => {
      toast({ text: say.saved(number) });
      void navigate({ to: paths.protocol(protocolId) });
    },
  });
  const { values, set, field } = form;
  return (
    <Form {...form.props}>
      <FieldGroup legend={say.plant}>
        <PlantPicker name="plantId" value={values.plantId} onChange={(chosen) => set({ plantId: chosen })} />
        <RadioField
          name="method"
          label={say.method}
          look="segments"
          value={values.method}
          onChange={(method) => set(methodValues(method))}
          choices={PROPAGATION_METHODS.map((value) => ({ value, label: propagation.methods[value] }))}
        />
        <TextField {...field('label')} label={say.label} hint={say.labelHint} optional maxLength={80} />
      </FieldGroup>
      <ProtocolFields values={values} errors={form.props.errors} set={set} />
      <TextArea {...field('changeNote')} label={say.firstNote} optional rows={2} />
      <Submit form={form}>{say.saveNew}</Submit>
    </Form>
  );
}
