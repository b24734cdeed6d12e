/** Move a selection, or all that stands at a place, in one entry. */
import { stock as contracts } from '@rootclock/contracts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastDay, useLastPlace } from '../fields/last.ts';
import { PlaceField } from '../fields/place-field.tsx';
import { selectionOf } from '../lot-data.ts';
import { useUndoable } from '../undo.ts';
import type { TargetSheetProps } from './target-sheet.ts';

export function MoveManySheet({ target, onClose, onDone }: TargetSheetProps) {
  const { bulk, sheets } = useMessages().lots;
  const [day, keepDay] = useLastDay();
  const [place, keepPlace] = useLastPlace('move');
  const tell = useUndoable();
  const form = useCommandForm({
    command: useCommand('stock.moveMany', { title: bulk.moveTitle(target.name) }),
    contract: contracts.moveMany,
    initial: { toPlaceId: place, happenedOn: day, note: '' },
    body: (said) => ({ ...selectionOf(target), ...said }),
    onSaved: ({ entryId, units }, said) => {
      keepDay(said.happenedOn);
      keepPlace(said.toPlaceId);
      tell(bulk.moveSaved(units), entryId);
      onDone();
    },
  });
  return (
    <Sheet open onClose={onClose} title={bulk.moveTitle(target.name)}>
      <Form {...form.props}>
        <PlaceField label={sheets.moveTo} {...form.field('toPlaceId')} />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{sheets.moveSave}</Submit>
      </Form>
    </Sheet>
  );
}
