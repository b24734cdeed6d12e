/** Keeping what is expected of a batch: the plants that may be promised of it and the day they are ready. */
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { propagation } from '@rootclock/contracts';
import { trpc, useSession } from '../../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { tellUndoable } from '../../../orders/undo.ts';
import type { ChangeOf } from '../what-if-values.ts';
import type { KeepProps } from './keep-props.ts';

export function KeepBatch({ change, values, drop }: KeepProps<ChangeOf<'change-batch'>>) {
  const { promises, propagation: words } = useMessages();
  const { today } = useSession();
  const navigate = useNavigate();
  const { batchId, cautiousUnits, readyOn } = change;
  const { data } = useQuery(trpc.propagation.readBatch.queryOptions({ batchId }));
  const form = useCommandForm({
    command: useCommand('propagation.setBatchForecast', {
      title: `${words.sheet.forecastTitle}: ${values.batch?.code ?? ''}`,
    }),
    contract: propagation.setBatchForecast,
    initial: {},
    // Usually no fewer come up than cautiously.
    body: () => ({
      batchId,
      cautiousUnits,
      readyOn,
      usualUnits: Math.max(data?.usualUnits ?? 0, cautiousUnits),
      targetContainerId: data?.targetContainerId ?? null,
      happenedOn: today,
    }),
    onSaved: ({ entryId }) => {
      tellUndoable(words.sheet.forecastSaved(cautiousUnits), entryId);
      void navigate({ to: paths.batch(batchId) });
    },
  });
  // As it is expected already, there is nothing to keep.
  const isDifferent = data !== undefined && (data.cautiousUnits !== cautiousUnits || data.readyOn !== readyOn);
  if (!isDifferent) return <div className="row">{drop}</div>;
  return (
    <Form {...form.props}>
      <Submit form={form} others={drop}>
        {promises.whatIf.keepForecast}
      </Submit>
    </Form>
  );
}
