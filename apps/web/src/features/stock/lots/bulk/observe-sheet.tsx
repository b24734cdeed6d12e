/** Note what was seen of one lot or many; the check of the root ball makes them ready. */
import { stock as contracts } from '@rootclock/contracts';
import { OBSERVATION_KINDS, type ObservationKind, ROOT_BALL_RESULTS, type RootBallResult } from '@rootclock/domain';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Callout } from '../../../../ui/feedback/index.ts';
import { DateField, NumberField, RadioField, SelectField, TextField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastDay } from '../fields/last.ts';
import { selectionOf } from '../lot-data.ts';
import { useUndoable } from '../undo.ts';
import type { TargetSheetProps } from './target-sheet.ts';

export function ObserveSheet({
  target,
  kind = '',
  onClose,
  onDone,
}: TargetSheetProps & { kind?: ObservationKind | '' }) {
  const { sheets, words } = useMessages().lots;
  const [day] = useLastDay();
  const tell = useUndoable();
  const form = useCommandForm({
    command: useCommand('stock.observeMany', { title: `${sheets.observeTitle}: ${target.name}` }),
    contract: contracts.observeMany,
    initial: {
      kind: kind as ObservationKind | '',
      ball: '' as RootBallResult | '',
      pest: '',
      amount: null as number | null,
      readyOn: '',
      happenedOn: day,
      note: '',
    },
    body: (said) => ({
      ...selectionOf(target),
      kind: said.kind,
      happenedOn: said.happenedOn,
      note: said.note,
      result: said.kind === 'root-ball' ? said.ball : said.kind === 'pest' ? said.pest : null,
      amount: said.kind === 'height' || said.kind === 'thinned' ? said.amount : null,
      readyOn: said.kind === 'root-ball' && said.ball === 'not-yet' ? said.readyOn || null : null,
    }),
    onSaved: ({ entryId }) => {
      tell(sheets.observeSaved, entryId);
      onDone();
    },
  });
  const { values } = form;
  return (
    <Sheet open onClose={onClose} title={`${sheets.observeTitle}: ${target.name}`}>
      <Form {...form.props}>
        <SelectField
          label={sheets.observeKind}
          choices={OBSERVATION_KINDS.map((each) => ({ value: each, label: words.observations[each] }))}
          {...form.field('kind')}
        />
        {values.kind === 'root-ball' && (
          <RadioField
            label={sheets.rootResult}
            choices={ROOT_BALL_RESULTS.map((result) => ({ value: result, label: words.rootBalls[result] }))}
            {...form.field('ball')}
            name="result"
          />
        )}
        {values.kind === 'root-ball' && values.ball === 'circling' && (
          <Callout tone="note">{sheets.circlingHint}</Callout>
        )}
        {values.kind === 'root-ball' && values.ball === 'not-yet' && (
          <DateField label={sheets.readyOn} hint={sheets.readyHint} optional {...form.field('readyOn')} />
        )}
        {values.kind === 'pest' && (
          <TextField label={sheets.pest} maxLength={500} optional {...form.field('pest')} name="result" />
        )}
        {values.kind === 'height' && <NumberField label={sheets.height} unit="mm" {...form.field('amount')} />}
        {values.kind === 'thinned' && <NumberField label={sheets.thinned} optional steps {...form.field('amount')} />}
        <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
        <Submit form={form}>{sheets.observeSave}</Submit>
      </Form>
    </Sheet>
  );
}
