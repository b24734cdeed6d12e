/** Merge leftovers of one plant, source and container under one label. */
import { stock as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { newId } from '../../../../lib/ids.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastDay } from '../fields/last.ts';
import { PlaceField } from '../fields/place-field.tsx';
import { useTellNewLots } from '../new-lots.ts';
import type { TargetSheetProps } from './target-sheet.ts';

export function MergeSheet({ target, onClose, onDone }: TargetSheetProps) {
  const { bulk } = useMessages().lots;
  const [lotId] = useState(newId);
  const [day, keepDay] = useLastDay();
  const tell = useTellNewLots();
  const form = useCommandForm({
    command: useCommand('stock.mergeLots', { title: bulk.mergeTitle(target.name) }),
    contract: contracts.mergeLots,
    initial: { placeId: '', happenedOn: day, note: '' },
    body: (said) => ({
      lotIds: target.lotIds ?? [],
      into: { lotId, placeId: said.placeId || null },
      happenedOn: said.happenedOn,
      note: said.note,
    }),
    onSaved: (answer, said) => {
      keepDay(said.happenedOn);
      tell(bulk.mergeSaved, answer);
      onDone();
    },
  });
  return (
    <Sheet open onClose={onClose} title={bulk.mergeTitle(target.name)}>
      <Form {...form.props}>
        <p>{bulk.mergeHint}</p>
        <PlaceField
          label={bulk.mergePlace}
          empty={bulk.mergeStay}
          optional
          {...form.field('placeId')}
          name="into.placeId"
        />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{bulk.mergeSave}</Submit>
      </Form>
    </Sheet>
  );
}
