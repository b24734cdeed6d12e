/** Keeping a loss: the plants of the lot or batch are written off with a cause. */
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { propagation, stock } from '@rootclock/contracts';
import { LOSS_CAUSES, type LossCause } from '@rootclock/domain';
import { trpc, useSession } from '../../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { useMessages } from '../../../../messages/index.ts';
import { CheckboxField, SelectField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { CauseField } from '../../../stock/lots/fields/cause-field.tsx';
import { MayBeDormant } from '../../../stock/lots/fields/may-be-dormant.tsx';
import { tellUndoable } from '../../../orders/undo.ts';
import type { ChangeOf } from '../what-if-values.ts';
import type { KeepProps } from './keep-props.ts';

interface Standing {
  placeId: string;
  units: number;
}

/** Where no number was said, all that stands there is meant. */
const lostOf = (
  { units, placeId }: { units: number | null; placeId: string | null },
  standing: readonly Standing[] = [],
) =>
  units ?? standing.filter((at) => placeId === null || at.placeId === placeId).reduce((sum, at) => sum + at.units, 0);

export function KeepLotLoss({ change, values, drop }: KeepProps<ChangeOf<'lose-lot'>>) {
  const { lots, promises } = useMessages();
  const { today } = useSession();
  const navigate = useNavigate();
  const { data } = useQuery(trpc.stock.readLot.queryOptions({ lotId: change.lotId }));
  const code = values.lot?.code ?? '';
  const units = lostOf(change, data?.standing);
  const form = useCommandForm({
    command: useCommand('stock.loseFromLot', { title: `${lots.sheets.loseTitle}: ${code}` }),
    contract: stock.loseFromLot,
    initial: { cause: '' as LossCause | '', confirmed: false },
    body: (said) => ({ ...said, lotId: change.lotId, units, placeId: change.placeId, happenedOn: today }),
    onSaved: ({ entryId }) => {
      tellUndoable(lots.sheets.loseSaved(units, code), entryId);
      void navigate({ to: paths.lot(change.lotId) });
    },
  });
  return (
    <Form {...form.props}>
      <MayBeDormant
        failure={form.failure}
        busy={form.busy}
        onWait={() => form.restart(form.values)}
        onConfirm={() => form.submit({ ...form.values, confirmed: true })}
      />
      <CauseField value={form.values.cause} onChange={(cause) => form.set({ cause })} />
      <Submit form={form} look="danger" others={drop}>
        {promises.whatIf.keepLoss}
      </Submit>
    </Form>
  );
}

export function KeepBatchLoss({ change, values, drop }: KeepProps<ChangeOf<'lose-batch'>>) {
  const { promises, propagation: words } = useMessages();
  const { today } = useSession();
  const navigate = useNavigate();
  const { data } = useQuery(trpc.propagation.readBatch.queryOptions({ batchId: change.batchId }));
  const units = lostOf(change, data?.places);
  const form = useCommandForm({
    command: useCommand('propagation.loseFromBatch', {
      title: `${words.sheet.loseTitle}: ${values.batch?.code ?? ''}`,
    }),
    contract: propagation.loseFromBatch,
    initial: { cause: '' as LossCause | '', confirmed: false },
    body: (said) => ({ ...said, batchId: change.batchId, units, placeId: change.placeId, happenedOn: today }),
    onSaved: ({ entryId }) => {
      tellUndoable(words.sheet.loseSaved(data ? words.units(units, data.unit) : String(units)), entryId);
      void navigate({ to: paths.batch(change.batchId) });
    },
  });
  return (
    <Form {...form.props}>
      <SelectField
        {...form.field('cause')}
        label={words.sheet.loseCause}
        choices={LOSS_CAUSES.map((value) => ({ value, label: words.causes[value] }))}
      />
      {form.failure?.code === 'may-be-dormant' && (
        <CheckboxField {...form.field('confirmed')} label={words.sheet.confirmDead} />
      )}
      <Submit form={form} look="danger" others={drop}>
        {promises.whatIf.keepLoss}
      </Submit>
    </Form>
  );
}
