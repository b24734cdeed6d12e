/** Release a hold, with the reason that whoever asks next year will read. */
import { stock as contracts } from '@rootclock/contracts';
import type { HoldReason } from '@rootclock/domain';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { TextField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastDay } from '../fields/last.ts';
import type { LotSheetProps } from '../lot-data.ts';
import { useUndoable } from '../undo.ts';

export function ReleaseSheet({ lot, reason, onClose }: LotSheetProps & { reason: HoldReason }) {
  const { sheets, words } = useMessages().lots;
  const [day] = useLastDay();
  const tell = useUndoable();
  const form = useCommandForm({
    command: useCommand('stock.releaseLot', { title: `${sheets.releaseTitle}: ${lot.code}` }),
    contract: contracts.releaseLot,
    initial: { releaseReason: '', happenedOn: day, note: '' },
    body: (said) => ({ ...said, lotId: lot.id, reason }),
    onSaved: ({ entryId }) => {
      tell(sheets.releaseSaved(lot.code), entryId);
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={`${sheets.releaseTitle}: ${lot.code}, ${words.holds[reason]}`}>
      <Form {...form.props}>
        <TextField
          label={sheets.releaseReason}
          hint={sheets.releaseHint}
          maxLength={120}
          {...form.field('releaseReason')}
        />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{sheets.releaseSave}</Submit>
      </Form>
    </Sheet>
  );
}
