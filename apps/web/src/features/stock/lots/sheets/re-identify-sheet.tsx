/** It is another plant: the lot and all that came from it are renamed; gardens planted under the wrong name are listed, since somebody must tell them. */
import { stock as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { type PickedPlant, PlantPicker } from '../../../plants/plant-picker.tsx';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastDay } from '../fields/last.ts';
import type { LotSheetProps } from '../lot-data.ts';
import { type Gardens, PlantedGardens } from '../planted-gardens.tsx';
import { useUndoable } from '../undo.ts';

export function ReIdentifySheet({ lot, onClose }: LotSheetProps) {
  const { sheets } = useMessages().lots;
  const [day] = useLastDay();
  const [gardens, setGardens] = useState<Gardens>([]);
  const tell = useUndoable();
  const form = useCommandForm({
    command: useCommand('stock.reIdentifyLot', { title: `${sheets.reIdentifyTitle}: ${lot.code}` }),
    contract: contracts.reIdentifyLot,
    initial: { plant: null as PickedPlant | null, happenedOn: day, note: '' },
    body: (said) => ({ lotId: lot.id, plantId: said.plant?.id ?? '', happenedOn: said.happenedOn, note: said.note }),
    onSaved: (answer) => {
      tell(sheets.reIdentifySaved(answer.lots), answer.entryId);
      if (answer.gardens.length > 0) setGardens(answer.gardens);
      else onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={`${sheets.reIdentifyTitle}: ${lot.code}`}>
      {gardens.length > 0 ? (
        <PlantedGardens gardens={gardens} onClose={onClose} />
      ) : (
        <Form {...form.props}>
          <PlantPicker
            name="plantId"
            label={sheets.reIdentifyPlant}
            hint={sheets.reIdentifyHint}
            value={form.values.plant}
            onChange={(plant) => form.set({ plant })}
          />
          <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
          <Submit form={form}>{sheets.reIdentifySave}</Submit>
        </Form>
      )}
    </Sheet>
  );
}
