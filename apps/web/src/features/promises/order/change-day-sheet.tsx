/** Moving an order to another day. What it would do is tried on the server and shown before anything is moved. */
import { promises as contracts } from '@rootclock/contracts';
import { isCalendarDate, OWNER } from '@rootclock/domain';
import { useSession } from '../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { CheckboxField, DateField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { TriedOutcome } from '../what-if/difference/tried-edit.tsx';
import { useTried } from '../what-if/difference/use-tried.ts';
import { WouldShorten } from './would-shorten.tsx';

export function ChangeDaySheet({ order, onClose }: { order: contracts.OrderPage; onClose: () => void }) {
  const { promises } = useMessages();
  const words = promises.day;
  const { mayBe } = useSession();
  const back = useCommand('promises.changeDay', { title: words.title });
  const form = useCommandForm({
    command: useCommand('promises.changeDay', { title: words.title }),
    contract: contracts.changeDay,
    initial: { dueOn: order.dueOn, keepRank: false, acceptedShortages: [] as { lineId: string; units: number }[] },
    body: (values) => ({ orderId: order.id, ...values }),
    row: { id: 'orderId', edition: order.edition },
    onSaved: ({ edition }, { dueOn }) => {
      toast({
        text: words.moved(dueOn),
        undo: () =>
          void back
            .send({ orderId: order.id, dueOn: order.dueOn, edition })
            .then(() => toast({ text: words.moved(order.dueOn) }), tellRefused),
      });
      onClose();
    },
  });
  const { dueOn, keepRank } = form.values;
  const isOther = isCalendarDate(dueOn) && dueOn !== order.dueOn;
  const tried = useTried(isOther ? { kind: 'move-order', orderId: order.id, dueOn, keepRank } : null);
  // Once it is ticked the answer is that the turn is kept, and it must still be there to be taken back.
  const mayKeepRank = mayBe(OWNER) && (keepRank || tried.answer?.keepsRank === false);
  return (
    <Sheet open onClose={onClose} title={words.title}>
      <Form {...form.props}>
        <WouldShorten
          failure={form.failure}
          busy={form.busy}
          onAccept={(acceptedShortages) => form.submit({ ...form.values, acceptedShortages })}
        />
        <DateField label={words.newDay} hint={words.now(order.dueOn)} {...form.field('dueOn')} />
        {isOther && <TriedOutcome tried={tried} />}
        {mayKeepRank && (
          <CheckboxField label={promises.line.keepRank} hint={promises.line.keepRankHint} {...form.field('keepRank')} />
        )}
        <Submit form={form}>{isOther ? words.move(dueOn) : words.title}</Submit>
      </Form>
    </Sheet>
  );
}
