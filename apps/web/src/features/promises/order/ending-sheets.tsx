/** How an order ends, and what can be changed of it as a whole: cancelled with its plants free again, or finished for good. */
import {
  gardens as gardensContracts,
  orders as ordersContracts,
  promises as promisesContracts,
} from '@rootclock/contracts';
import { useSession } from '../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { CheckboxField, TextArea } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { ConfirmAgain, Sheet } from '../../../ui/overlay/index.ts';
import { SuggestedPlace } from '../../orders/pickers/suggested-place.tsx';
import { tellUndoable } from '../../orders/undo.ts';
import { TriedEdit } from '../what-if/difference/tried-edit.tsx';

interface EndingProps {
  order: promisesContracts.OrderPage;
  onClose: () => void;
}

export function EditOrderSheet({ order, onClose }: EndingProps) {
  const { orders } = useMessages();
  const form = useCommandForm({
    command: useCommand('orders.editOrder', { title: orders.list.editTitle }),
    contract: ordersContracts.editOrder,
    initial: { note: order.note, nativesOnly: order.nativesOnly },
    body: ({ note, nativesOnly }) => ({ orderId: order.id, note, nativesOnly }),
    row: { id: 'orderId', edition: order.edition },
    onSaved: onClose,
  });
  return (
    <Sheet open onClose={onClose} title={orders.list.editTitle}>
      <Form {...form.props}>
        <CheckboxField
          label={orders.list.nativesOnly}
          hint={orders.list.nativesOnlyHint}
          {...form.field('nativesOnly')}
        />
        <TextArea label={orders.note} optional {...form.field('note')} />
        <TriedEdit
          edit={
            form.values.nativesOnly === order.nativesOnly
              ? null
              : { kind: 'natives-only', orderId: order.id, nativesOnly: form.values.nativesOnly }
          }
        />
        <Submit form={form}>{orders.save}</Submit>
      </Form>
    </Sheet>
  );
}

export function CancelSheet({ order, onClose }: EndingProps) {
  const { orders } = useMessages();
  const words = orders.list;
  const { today } = useSession();
  const isStaged = order.stagedUnits > 0;
  const form = useCommandForm({
    command: useCommand('gardens.cancelOrder', { title: `${words.cancel}: ${order.code}` }),
    contract: gardensContracts.cancelOrder,
    initial: { placeId: '', note: '' },
    body: ({ placeId, note }) => ({ orderId: order.id, happenedOn: today, placeId: placeId || null, note }),
    onSaved: ({ entryId }) => {
      tellUndoable(words.cancelled(order.code), entryId);
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={words.cancelTitle}>
      <Form {...form.props}>
        <p>{words.cancelText}</p>
        {isStaged && (
          <SuggestedPlace
            label={words.cancelPlace}
            hint={words.cancelStaged(order.stagedUnits)}
            preferring="quarantine"
            {...form.field('placeId')}
          />
        )}
        <TextArea label={orders.note} optional {...form.field('note')} />
        <TriedEdit
          edit={
            isStaged && form.values.placeId === ''
              ? null
              : { kind: 'cancel-order', orderId: order.id, placeId: form.values.placeId || null }
          }
        />
        <Submit form={form} look="danger">
          {words.cancelConfirm}
        </Submit>
      </Form>
    </Sheet>
  );
}

export function FinishAgain({ order, open, onClose }: EndingProps & { open: boolean }) {
  const { orders } = useMessages();
  const words = orders.list;
  const finish = useCommand('orders.finishOrder', { title: `${words.finish}: ${order.code}` });
  const undelivered = order.wantedUnits - order.deliveredUnits;
  return (
    <ConfirmAgain
      open={open}
      title={words.finishTitle}
      confirm={words.finishConfirm}
      busy={finish.state === 'sending'}
      onClose={onClose}
      onConfirm={() =>
        void finish
          .send({ orderId: order.id })
          .then(() => toast({ text: words.finished(order.code) }), tellRefused)
          .finally(onClose)
      }
    >
      <div className="stack">
        <p>{words.finishText}</p>
        {undelivered > 0 && <p>{words.finishShort(undelivered)}</p>}
      </div>
    </ConfirmAgain>
  );
}
