/** Keeping a change of orders: moved or cancelled at once, a new one through the order form filled in. */
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { gardens as gardensContracts, promises as promisesContracts } from '@rootclock/contracts';
import { trpc, useSession } from '../../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { Read } from '../../../../lib/read/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { ButtonLink } from '../../../../ui/action/index.ts';
import { toast } from '../../../../ui/feedback/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { WouldShorten } from '../../order/would-shorten.tsx';
import { tellUndoable } from '../../../orders/undo.ts';
import type { ChangeOf } from '../what-if-values.ts';
import type { KeepProps } from './keep-props.ts';

export function KeepMoved(props: KeepProps<ChangeOf<'move-order'>>) {
  const query = useQuery(trpc.promises.readOrder.queryOptions({ orderId: props.change.orderId }));
  return <Read query={query}>{(order) => <KeepOrderMoved {...props} order={order} />}</Read>;
}

function KeepOrderMoved({
  change,
  answer,
  values,
  drop,
  order,
}: KeepProps<ChangeOf<'move-order'>> & { order: promisesContracts.OrderPage }) {
  const { promises } = useMessages();
  const navigate = useNavigate();
  // What was shown to become shorter is accepted with it; where it has become worse since, the server asks once more.
  const shown = answer.lines
    .filter(({ shorterBy }) => shorterBy > 0)
    .map(({ lineId, shorterBy }) => ({ lineId, units: shorterBy }));
  const form = useCommandForm({
    command: useCommand('promises.changeDay', { title: `${promises.day.title}: ${values.order?.code ?? ''}` }),
    contract: promisesContracts.changeDay,
    initial: { acceptedShortages: shown },
    body: ({ acceptedShortages }) => ({ orderId: change.orderId, dueOn: change.dueOn, acceptedShortages }),
    row: { id: 'orderId', edition: order.edition, shown: { dueOn: order.dueOn } },
    words: { dueOn: { label: promises.day.newDay } },
    onSaved: () => {
      toast({ text: promises.day.moved(change.dueOn) });
      void navigate({ to: paths.order(change.orderId) });
    },
  });
  return (
    <Form {...form.props}>
      <WouldShorten
        failure={form.failure}
        busy={form.busy}
        onAccept={(acceptedShortages) => form.submit({ acceptedShortages })}
      />
      <Submit form={form} others={drop}>
        {promises.whatIf.keepMove(change.dueOn)}
      </Submit>
    </Form>
  );
}

export function KeepCancelled({ change, values, drop }: KeepProps<ChangeOf<'cancel-order'>>) {
  const { orders, promises } = useMessages();
  const { today } = useSession();
  const navigate = useNavigate();
  const code = values.order?.code ?? '';
  const form = useCommandForm({
    command: useCommand('gardens.cancelOrder', { title: `${orders.list.cancel}: ${code}` }),
    contract: gardensContracts.cancelOrder,
    initial: {},
    body: () => ({ orderId: change.orderId, happenedOn: today, placeId: change.placeId }),
    onSaved: ({ entryId }) => {
      tellUndoable(orders.list.cancelled(code), entryId);
      void navigate({ to: paths.order(change.orderId) });
    },
  });
  return (
    <Form {...form.props}>
      <Submit form={form} look="danger" others={drop}>
        {promises.whatIf.keepCancel}
      </Submit>
    </Form>
  );
}

export function KeepNew({ change, drop }: KeepProps<ChangeOf<'add-order'>>) {
  const words = useMessages().promises.whatIf;
  const { plantId, containerId, units, dueOn, clientId, siteId } = change;
  return (
    <>
      <p>{words.keepNewText}</p>
      <div className="row">
        <ButtonLink
          to={paths.newOrder()}
          search={{
            plant: plantId,
            container: containerId,
            units,
            day: dueOn,
            client: clientId ?? undefined,
            site: siteId ?? undefined,
          }}
          look="primary"
        >
          {words.keepNew}
        </ButtonLink>
        {drop}
      </div>
    </>
  );
}
