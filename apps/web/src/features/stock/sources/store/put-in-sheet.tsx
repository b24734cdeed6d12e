/** Seed that comes into the store. */
import { sources as contracts } from '@rootclock/contracts';
import { SEED_ARRIVALS, type SeedArrival } from '@rootclock/domain';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { NumberField, RadioField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { DayAndNote } from '../../lots/fields/day-note.tsx';
import { useLastDay } from '../../lots/fields/last.ts';
import type { SeedSheetProps } from './seed-sheet.ts';
import { useSeedUndo } from './use-seed-undo.ts';

export function PutInSheet({ source, onClose }: SeedSheetProps) {
  const { seed } = useMessages();
  const { measures } = useFormat();
  const [day, keepDay] = useLastDay();
  const tell = useSeedUndo();
  const title = `${seed.putIn}: ${source.code}`;
  const form = useCommandForm({
    command: useCommand('sources.receiveSeed', { title }),
    contract: contracts.receiveSeed,
    initial: {
      kind: (source.kind === 'bought-seed' ? 'bought' : 'cleaned') as SeedArrival,
      grams: null as number | null,
      happenedOn: day,
      note: '',
    },
    body: (values) => ({ sourceId: source.sourceId, ...values }),
    onSaved: ({ movementId }, { grams, happenedOn }) => {
      keepDay(happenedOn);
      tell(seed.putInSaved(measures.seedWeight(grams ?? 0)), movementId);
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={title}>
      <Form {...form.props}>
        <RadioField
          label={seed.howCame}
          look="segments"
          {...form.field('kind')}
          choices={SEED_ARRIVALS.map((value) => ({ value, label: seed.arrivals[value] }))}
        />
        <NumberField label={seed.grams} unit={seed.gramsUnit} decimal {...form.field('grams')} />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{seed.putInSave}</Submit>
      </Form>
    </Sheet>
  );
}
