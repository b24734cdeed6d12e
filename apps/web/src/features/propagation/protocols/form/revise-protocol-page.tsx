/** The form for a new version of a protocol, which begins with what the one in use says. */
import { propagation as contracts } from '@rootclock/contracts';
import { useQuery } from '@tanstack/react-query';
import { useNavigate, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { trpc, useSession } from '../../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { newId } from '../../../../lib/ids.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { Read } from '../../../../lib/read/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Callout, toast } from '../../../../ui/feedback/index.ts';
import { TextArea } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { PageHeader } from '../../../../ui/layout/index.ts';
import { contentBody } from './content-body.ts';
import { ProtocolFields } from './protocol-fields.tsx';
import { type ProtocolValues, versionValues } from './values.ts';
import '../protocols.css';
import './protocol-form.css';

export function ReviseProtocolPage() {
  const { protocolId = '' } = useParams({ strict: false });
  const query = useQuery(trpc.propagation.readProtocol.queryOptions({ protocolId }));
  return <Read query={query}>{(protocol) => <Revise read={protocol} />}</Read>;
}

function Revise({ read }: { read: contracts.ProtocolPage }) {
  const { propagation } = useMessages();
  const { protocolForm: say, protocols } = propagation;
  const { nursery } = useSession();
  const navigate = useNavigate();
  const [versionId] = useState(newId);
  // The version that was opened: what a colleague saves meanwhile is refused by the server and not written over.
  const [protocol] = useState(read);
  const { protocolId, plant, method, label, version } = protocol;
  const isUs = nursery.units === 'us';
  const next = version.number + 1;
  const form = useCommandForm({
    command: useCommand('propagation.reviseProtocol', { title: say.reviseTitle(plant.scientificName) }),
    contract: contracts.reviseProtocol,
    initial: {
      plantId: { id: plant.plantId, scientificName: plant.scientificName },
      method,
      label,
      changeNote: '',
      ...versionValues(version, isUs),
    },
    body: (values: ProtocolValues) => ({
      protocolId,
      versionId,
      basedOnVersionId: version.versionId,
      changeNote: values.changeNote,
      ...contentBody(values, isUs),
    }),
    onSaved: ({ number }) => {
      toast({ text: say.saved(number) });
      void navigate({ to: paths.protocol(protocolId) });
    },
  });
  const { values, set, field } = form;
  return (
    <div className="stack">
      <PageHeader
        title={say.reviseTitle(plant.scientificName)}
        kicker={[protocols.page.by(propagation.methods[method]), label].filter(Boolean).join(', ')}
        back={{ to: paths.protocol(protocolId), label: protocols.page.kicker }}
      />
      <Callout tone="note">{say.reviseHint(next)}</Callout>
      <Form {...form.props}>
        <ProtocolFields values={values} errors={form.props.errors} set={set} />
        <TextArea {...field('changeNote')} label={say.changeNote} rows={2} />
        <Submit form={form}>{say.saveVersion(next)}</Submit>
      </Form>
    </div>
  );
}
