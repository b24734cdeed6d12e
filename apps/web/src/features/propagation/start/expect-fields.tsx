/** ExpectFields: what is expected of the batch. Under a protocol it is filled in from the record, in sight, until somebody types another figure. */
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { DateField, NumberField, TextArea } from '../../../ui/fields/index.ts';
import { ContainerPicker } from '../../plants/container-picker.tsx';
import type { ForecastSuggestion } from '../yields/suggestion.ts';
import type { StartValues } from './start-values.ts';

export interface ExpectFieldsProps {
  values: StartValues;
  suggestion: ForecastSuggestion | null;
  set: (part: Partial<StartValues>) => void;
}

export function ExpectFields({ values, suggestion, set }: ExpectFieldsProps) {
  const { propagation } = useMessages();
  const { form, starting: say } = propagation;
  const { dates } = useFormat();
  const { cautiousUnits, usualUnits, readyOn } = values;
  // Whoever changes one figure keeps the others as they were shown.
  const typed = (part: Partial<StartValues>) => set({ cautiousUnits, usualUnits, readyOn, ...part, fromRecord: false });
  const offered =
    suggestion?.yield && suggestion.readyOn !== null ? { ...suggestion.yield, readyOn: suggestion.readyOn } : null;
  return (
    <>
      <ContainerPicker
        name="targetContainerId"
        label={form.target}
        optional
        value={values.targetContainerId}
        kinds={['pot', 'tray']}
        onChange={(container) =>
          set({
            targetContainerId: container && { id: container.id, name: container.name, volumeMl: container.volumeMl },
          })
        }
      />
      {suggestion && offered && values.fromRecord && <p role="status">{say.fromRecord(suggestion.batches)}</p>}
      <NumberField
        name="cautiousUnits"
        label={form.cautious}
        hint={form.cautiousHint}
        optional
        value={cautiousUnits}
        onChange={(value) => typed({ cautiousUnits: value })}
      />
      <NumberField
        name="usualUnits"
        label={form.usual}
        hint={form.usualHint}
        optional
        value={usualUnits}
        onChange={(value) => typed({ usualUnits: value })}
      />
      <DateField
        name="readyOn"
        label={form.ready}
        optional
        value={readyOn}
        onChange={(value) => typed({ readyOn: value })}
      />
      {offered && !values.fromRecord && (
        <>
          <p>{say.suggests(offered.cautiousUnits, offered.usualUnits, dates.short(offered.readyOn))}</p>
          <div className="row">
            <Button onClick={() => set({ fromRecord: true })}>{say.useSuggestion}</Button>
          </div>
        </>
      )}
      <TextArea
        name="note"
        label={form.note}
        optional
        rows={2}
        value={values.note}
        onChange={(note) => set({ note })}
      />
    </>
  );
}
