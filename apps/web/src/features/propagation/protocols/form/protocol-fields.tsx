/** The fields that a new protocol and a revision share: what it is counted in, its stages, and what the printed page says in words. */
import { propagation as contracts } from '@rootclock/contracts';
import { containersForUnit, UNITS_FOR_METHOD } from '@rootclock/domain';
import { useState } from 'react';
import { useSession } from '../../../../lib/api/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { NumberField, RadioField, TextArea } from '../../../../ui/fields/index.ts';
import { FieldGroup } from '../../../../ui/form/index.ts';
import { ContainerPicker } from '../../../plants/container-picker.tsx';
import { CopyFrom } from './copy-from.tsx';
import { StagesEditor } from './stages-editor.tsx';
import { assumedStages, type ProtocolValues, versionValues } from './values.ts';

export interface ProtocolFieldsProps {
  values: ProtocolValues;
  errors: Readonly<Record<string, string>>;
  set: (part: Partial<ProtocolValues> | ((before: ProtocolValues) => Partial<ProtocolValues>)) => void;
}

export function ProtocolFields({ values, errors, set }: ProtocolFieldsProps) {
  const { propagation } = useMessages();
  const { protocolForm: say, protocols } = propagation;
  const { nursery } = useSession();
  const kinds = containersForUnit(values.startUnit).filter((kind) => kind !== null);
  // Stages that were copied are whole, so their folds begin closed: the editor is made anew.
  const [copies, setCopies] = useState(0);
  const copy = (protocol: contracts.ProtocolPage) => {
    const { stages, ...rest } = versionValues(protocol.version, nursery.units === 'us');
    set({ ...rest, stages: protocol.plant.plantId === values.plantId?.id ? stages : assumedStages(stages) });
    setCopies((count) => count + 1);
  };
  return (
    <>
      <CopyFrom method={values.method} onCopy={copy} />
      <FieldGroup legend={say.counting}>
        <RadioField
          name="startUnit"
          label={say.unit}
          look="segments"
          value={values.startUnit}
          onChange={(startUnit) => set({ startUnit, startContainerId: null })}
          choices={UNITS_FOR_METHOD[values.method].map((value) => ({ value, label: propagation.unitNames[value] }))}
        />
        <ContainerPicker
          name="startContainerId"
          label={say.startContainer}
          optional
          kinds={kinds}
          value={values.startContainerId}
          onChange={(container) => set({ startContainerId: container && { id: container.id, name: container.name } })}
        />
        {values.method === 'seed' && values.startUnit === 'cell' && (
          <NumberField
            name="seedsPerCell"
            label={say.seedsPerCell}
            optional
            value={values.seedsPerCell}
            onChange={(seedsPerCell) => set({ seedsPerCell })}
          />
        )}
        <ContainerPicker
          name="targetContainerId"
          label={say.target}
          optional
          kinds={['pot', 'tray']}
          value={values.targetContainerId}
          onChange={(container) => set({ targetContainerId: container && { id: container.id, name: container.name } })}
        />
      </FieldGroup>
      <h2>{say.stages}</h2>
      <StagesEditor
        key={copies}
        method={values.method}
        stages={values.stages}
        errors={errors}
        onChange={(change) => set((before) => ({ stages: change(before.stages) }))}
      />
      <FieldGroup legend={say.words}>
        <p className="field-hint">{say.wordsHint}</p>
        {contracts.PROTOCOL_TEXTS.map((field) => (
          <TextArea
            key={field}
            name={`texts.${field}`}
            label={protocols.texts[field]}
            optional
            rows={2}
            value={values.texts[field]}
            onChange={(text) => set((before) => ({ texts: { ...before.texts, [field]: text } }))}
          />
        ))}
      </FieldGroup>
    </>
  );
}
