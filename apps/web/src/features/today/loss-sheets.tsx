/** What can be done for a line that lost plants, without leaving the day's page: the forms of its order, and setting the loss aside. */
import { promises as contracts } from '@rootclock/contracts';
import { useQuery } from '@tanstack/react-query';
import { trpc } from '../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../lib/form/index.ts';
import { useCommand } from '../../lib/outbox/index.ts';
import { useMessages } from '../../messages/index.ts';
import { toast } from '../../ui/feedback/index.ts';
import { TextField } from '../../ui/fields/index.ts';
import { Form } from '../../ui/form/index.ts';
import { Sheet } from '../../ui/overlay/index.ts';
import { ChangeDaySheet } from '../promises/order/change-day-sheet.tsx';
import { EditLineSheet } from '../promises/order/line/line-sheets.tsx';
import { OffersSheet } from '../promises/order/line/offers-sheet.tsx';
import '../promises/order/order-page.css';

/** Choosing other lots, taking another plant, moving the day, or leaving it at that. */
export type LossWay = 'serve' | 'accept' | 'day' | 'aside';

interface LossSheetProps {
  row: contracts.LossRow;
  onClose: () => void;
}

export function LossSheets({ way, ...props }: LossSheetProps & { way: LossWay }) {
  return way === 'aside' ? <AsideSheet {...props} /> : <OrderSheet way={way} {...props} />;
}

function OrderSheet({ row, way, onClose }: LossSheetProps & { way: Exclude<LossWay, 'aside'> }) {
  const { data: order } = useQuery(trpc.promises.readOrder.queryOptions({ orderId: row.orderId }));
  const line = order?.lineRows.find(({ id }) => id === row.lineId);
  if (!order || !line) return null;
  if (way === 'day') return <ChangeDaySheet order={order} onClose={onClose} />;
  return way === 'accept' ? (
    <EditLineSheet order={order} line={line} onClose={onClose} />
  ) : (
    <OffersSheet line={line} onClose={onClose} />
  );
}

function AsideSheet({ row, onClose }: LossSheetProps) {
  const { losses: say } = useMessages();
  const form = useCommandForm({
    command: useCommand('promises.setLossAside', { title: `${say.ways.aside}: ${row.orderCode}` }),
    contract: contracts.setLossAside,
    initial: { note: '' },
    body: ({ note }) => ({ lossId: row.lossId, note }),
    onSaved: () => {
      toast({ text: say.isAside(row.orderCode) });
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={say.asideTitle}>
      <Form {...form.props}>
        <p>{say.asideText(row.orderCode, row.shortUnits)}</p>
        <TextField label={say.note} {...form.field('note')} />
        <Submit form={form}>{say.ways.aside}</Submit>
      </Form>
    </Sheet>
  );
}
