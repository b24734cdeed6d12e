/** The source is another plant: every batch and lot of it is renamed; gardens planted under the wrong name are listed, since somebody must tell them. */
import { stock as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { type PickedPlant, PlantPicker } from '../../plants/plant-picker.tsx';
import { DayAndNote } from '../lots/fields/day-note.tsx';
import { useLastDay } from '../lots/fields/last.ts';
import { type Gardens, PlantedGardens } from '../lots/planted-gardens.tsx';
import { useUndoable } from '../lots/undo.ts';

export interface ReIdentifySourceSheetProps {
  sourceId: string;
  code: string;
  onClose: () => void;
}

export function ReIdentifySourceSheet({ sourceId, code, onClose }: ReIdentifySourceSheetProps) {
  const { lots, sources } = useMessages();
  const [day] = useLastDay();
  const [gardens, setGardens] = useState<Gardens>([]);
  const tell = useUndoable();
  const title = `${lots.sheets.reIdentifyTitle}: ${code}`;
  const form = useCommandForm({
    command: useCommand('stock.reIdentifySource', { title }),
    contract: contracts.reIdentifySource,
    initial: { plant: null as PickedPlant | null, happenedOn: day, note: '' },
    body: (said) => ({ sourceId, plantId: said.plant?.id ?? '', happenedOn: said.happenedOn, note: said.note }),
    onSaved: (answer) => {
      tell(sources.reIdentified(code, answer.lots, answer.batches), answer.entryId);
      if (answer.gardens.length > 0) setGardens(answer.gardens);
      else onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={title}>
      {gardens.length > 0 ? (
        <PlantedGardens gardens={gardens} onClose={onClose} />
      ) : (
        <Form {...form.props}>
          <PlantPicker
            name="plantId"
            label={lots.sheets.reIdentifyPlant}
            hint={sources.reIdentifyHint}
            value={form.values.plant}
            onChange={(plant) => form.set({ plant })}
          />
          <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
          <Submit form={form}>{lots.sheets.reIdentifySave}</Submit>
        </Form>
      )}
    </Sheet>
  );
}
