/** What the balance says of the store: it holds, and the difference to the books is booked. */
import { sources as contracts } from '@rootclock/contracts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { NumberField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { DayAndNote } from '../../lots/fields/day-note.tsx';
import { useLastDay } from '../../lots/fields/last.ts';
import type { SeedSheetProps } from './seed-sheet.ts';
import { useSeedUndo } from './use-seed-undo.ts';

export function WeighSheet({ source, onClose }: SeedSheetProps) {
  const { seed } = useMessages();
  const { measures } = useFormat();
  const [day, keepDay] = useLastDay();
  const tell = useSeedUndo();
  const title = `${seed.weigh}: ${source.code}`;
  const left = source.seed?.gramsLeft ?? null;
  const form = useCommandForm({
    command: useCommand('sources.weighSeed', { title }),
    contract: contracts.weighSeed,
    initial: { grams: null as number | null, happenedOn: day, note: '' },
    body: (values) => ({ sourceId: source.sourceId, ...values }),
    onSaved: ({ movementId, difference }, { happenedOn }) => {
      keepDay(happenedOn);
      const weight = measures.seedWeight(Math.abs(difference));
      tell(
        difference === 0 ? seed.weighSame : difference > 0 ? seed.weighMore(weight) : seed.weighLess(weight),
        movementId,
      );
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={title}>
      <Form {...form.props}>
        <NumberField
          label={seed.grams}
          unit={seed.gramsUnit}
          decimal
          hint={left === null ? seed.weighFirstHint : seed.weighHint(measures.seedWeight(left))}
          {...form.field('grams')}
        />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{seed.weighSave}</Submit>
      </Form>
    </Sheet>
  );
}
