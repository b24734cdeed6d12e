/** Seed that leaves the store other than by being sown. */
import { sources as contracts } from '@rootclock/contracts';
import { SEED_TAKINGS, type SeedTaking } from '@rootclock/domain';
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

export function TakeOutSheet({ source, onClose }: SeedSheetProps) {
  const { seed } = useMessages();
  const { measures } = useFormat();
  const [day, keepDay] = useLastDay();
  const tell = useSeedUndo();
  const title = `${seed.takeOut}: ${source.code}`;
  const form = useCommandForm({
    command: useCommand('sources.takeSeed', { title }),
    contract: contracts.takeSeed,
    initial: { reason: '' as SeedTaking | '', grams: null as number | null, happenedOn: day, note: '' },
    body: (values) => ({ sourceId: source.sourceId, ...values }),
    onSaved: ({ movementId }, { grams, happenedOn }) => {
      keepDay(happenedOn);
      tell(seed.takeSaved(measures.seedWeight(grams ?? 0)), movementId);
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={title}>
      <Form {...form.props}>
        <RadioField
          label={seed.whatFor}
          {...form.field('reason')}
          choices={SEED_TAKINGS.map((value) => ({ value, label: seed.takings[value] }))}
        />
        <NumberField
          label={seed.grams}
          unit={seed.gramsUnit}
          decimal
          hint={seed.gramsLeftHint(measures.seedWeight(source.seed?.gramsLeft ?? 0))}
          {...form.field('grams')}
        />
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{seed.takeSave}</Submit>
      </Form>
    </Sheet>
  );
}
