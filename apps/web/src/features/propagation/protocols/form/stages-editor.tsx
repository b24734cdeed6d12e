/** The stages of the form: each may be taken out, and what is missing is added where its kind belongs, since work has an order. */
import type { PropagationMethod, StageKind } from '@rootclock/domain';
import { useState } from 'react';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { toast } from '../../../../ui/feedback/index.ts';
import { SelectField } from '../../../../ui/fields/index.ts';
import { StageFields } from './stage-fields.tsx';
import { missingKinds, type StageValues, withStage } from './values.ts';

export interface StagesEditorProps {
  method: PropagationMethod;
  stages: readonly StageValues[];
  errors: Readonly<Record<string, string>>;
  /** With a function, since stages are typed faster than the screen is drawn. */
  onChange: (change: (stages: readonly StageValues[]) => StageValues[]) => void;
}

export function StagesEditor({ method, stages, errors, onChange }: StagesEditorProps) {
  const { stages: words, protocolForm: say } = useMessages().propagation;
  const [adding, setAdding] = useState<StageKind | ''>('');
  const missing = missingKinds(method, stages);
  const remove = (stage: StageValues) => {
    onChange((before) => before.filter(({ kind }) => kind !== stage.kind));
    toast({
      text: say.removed(words.names[stage.kind]),
      undo: () =>
        onChange((before) =>
          withStage(
            before.filter(({ kind }) => kind !== stage.kind),
            stage.kind,
          ).map((each) => (each.kind === stage.kind ? stage : each)),
        ),
    });
  };
  const add = () => {
    if (adding === '') return;
    onChange((before) => withStage(before, adding));
    setAdding('');
  };
  return (
    <div className="stack">
      <p className="field-hint">
        {say.stagesHint} {say.daysHint}
      </p>
      {stages.map((stage, at) => (
        <StageFields
          key={stage.kind}
          stage={stage}
          at={at}
          errors={errors}
          onRemove={() => remove(stage)}
          onChange={(changed) =>
            onChange((before) => before.map((each) => (each.kind === changed.kind ? changed : each)))
          }
        />
      ))}
      {missing.length === 0 ? (
        <p className="field-hint">{say.allStages}</p>
      ) : (
        <div className="stage-add">
          <SelectField
            name="stages"
            label={say.addWhich}
            optional="unsaid"
            value={adding}
            onChange={setAdding}
            choices={missing.map((value) => ({ value, label: words.names[value] }))}
          />
          <Button onClick={add}>{say.addStage}</Button>
        </div>
      )}
    </div>
  );
}
