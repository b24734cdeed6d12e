/** Sold or given away. More than is free may go: what happened is recorded and promises give way. */
import { stock as contracts } from '@rootclock/contracts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Callout } from '../../../../ui/feedback/index.ts';
import { NumberField, TextField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastDay } from '../fields/last.ts';
import { FromPlaceField, onlyPlace } from '../fields/place-field.tsx';
import type { LotSheetProps } from '../lot-data.ts';
import { useUndoable } from '../undo.ts';

export function LeaveSheet({ lot, kind, onClose }: LotSheetProps & { kind: 'sell' | 'give' }) {
  const { sheets } = useMessages().lots;
  const title = `${kind === 'sell' ? sheets.sellTitle : sheets.giveTitle}: ${lot.code}`;
  const [day, keepDay] = useLastDay();
  const tell = useUndoable();
  const form = useCommandForm({
    command: useCommand(kind === 'sell' ? 'stock.sellFromLot' : 'stock.giveFromLot', { title }),
    contract: kind === 'sell' ? contracts.sellFromLot : contracts.giveFromLot,
    initial: { placeId: onlyPlace(lot), units: null as number | null, party: '', happenedOn: day, note: '' },
    body: (said) => ({ ...said, lotId: lot.id, placeId: said.placeId || null }),
    onSaved: ({ entryId }, said) => {
      keepDay(said.happenedOn);
      tell(sheets.leftSaved(said.units ?? 0, lot.code), entryId);
      onClose();
    },
  });
  const { units } = form.values;
  return (
    <Sheet open onClose={onClose} title={title}>
      <Form {...form.props}>
        <FromPlaceField
          standing={lot.standing}
          value={form.values.placeId}
          onChange={(placeId) => form.set({ placeId })}
        />
        <NumberField label={sheets.units} steps min={1} {...form.field('units')} />
        {units !== null && lot.units.promised > 0 && units > lot.units.free && units <= lot.units.onHand && (
          <Callout tone="note">{sheets.promisedWarning(lot.units.free)}</Callout>
        )}
        <TextField label={sheets.party} optional maxLength={500} {...form.field('party')} />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{kind === 'sell' ? sheets.sellSave : sheets.giveSave}</Submit>
      </Form>
    </Sheet>
  );
}
