/** Hold lots back: one, or a whole selection in one entry. */
import { stock as contracts } from '@rootclock/contracts';
import { HOLD_REASONS, type HoldReason } from '@rootclock/domain';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { RadioField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastDay } from '../fields/last.ts';
import { selectionOf } from '../lot-data.ts';
import { useUndoable } from '../undo.ts';
import type { TargetSheetProps } from './target-sheet.ts';

export function HoldSheet({ target, onClose, onDone }: TargetSheetProps) {
  const { sheets, words } = useMessages().lots;
  const [day] = useLastDay();
  const tell = useUndoable();
  const form = useCommandForm({
    command: useCommand('stock.holdMany', { title: `${sheets.holdTitle}: ${target.name}` }),
    contract: contracts.holdMany,
    initial: { reason: '' as HoldReason | '', happenedOn: day, note: '' },
    body: (said) => ({ ...selectionOf(target), ...said }),
    onSaved: ({ entryId, lots }) => {
      tell(sheets.holdSaved(lots), entryId);
      onDone();
    },
  });
  return (
    <Sheet open onClose={onClose} title={`${sheets.holdTitle}: ${target.name}`}>
      <Form {...form.props}>
        <RadioField
          label={sheets.holdReason}
          hint={sheets.holdHint}
          choices={HOLD_REASONS.map((reason) => ({ value: reason, label: words.holds[reason] }))}
          {...form.field('reason')}
        />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{sheets.holdSave}</Submit>
      </Form>
    </Sheet>
  );
}
