/** Takes stages and words over from another plant's protocol; nothing is saved by it. */
import type { propagation as contracts } from '@rootclock/contracts';
import type { PropagationMethod } from '@rootclock/domain';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { trpc } from '../../../../lib/api/index.ts';
import { tellRefused } from '../../../../lib/tell-refused.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { toast } from '../../../../ui/feedback/index.ts';
import { SelectField } from '../../../../ui/fields/index.ts';
import { PlantPicker, type PickedPlant } from '../../../plants/plant-picker.tsx';
import { Fold } from './fold.tsx';

export interface CopyFromProps {
  method: PropagationMethod;
  onCopy: (protocol: contracts.ProtocolPage) => void;
}

export function CopyFrom({ method, onCopy }: CopyFromProps) {
  const { protocols, protocolForm: say } = useMessages().propagation;
  const client = useQueryClient();
  const [plant, setPlant] = useState<PickedPlant | null>(null);
  const [chosen, setChosen] = useState('');
  const { data } = useQuery({
    ...trpc.propagation.listProtocols.queryOptions({ plantId: plant?.id ?? null, method, have: 'with' }),
    enabled: plant !== null,
  });
  const offered = plant === null ? [] : (data?.rows[0]?.protocols ?? []);
  const protocolId = offered.find((row) => row.protocolId === chosen)?.protocolId ?? offered[0]?.protocolId;
  const copy = async () => {
    if (!protocolId) return;
    try {
      const protocol = await client.fetchQuery(trpc.propagation.readProtocol.queryOptions({ protocolId }));
      onCopy(protocol);
      toast({ text: say.copied(protocol.plant.scientificName) });
    } catch (error) {
      tellRefused(error);
    }
  };
  return (
    <Fold words={say.copy}>
      <PlantPicker
        name="copyFrom"
        label={say.copyFrom}
        hint={say.copyHint}
        optional="unsaid"
        value={plant}
        onChange={setPlant}
      />
      {plant && data && offered.length === 0 && <p role="status">{say.copyNone}</p>}
      {offered.length > 1 && (
        <SelectField
          name="copyWhich"
          label={say.copyWhich}
          optional="unsaid"
          value={protocolId ?? ''}
          onChange={setChosen}
          choices={offered.map((row) => ({
            value: row.protocolId,
            label: row.label || protocols.list.version(row.number),
          }))}
        />
      )}
      {protocolId && (
        <div>
          <Button onClick={() => void copy()}>{say.copyDo}</Button>
        </div>
      )}
    </Fold>
  );
}
