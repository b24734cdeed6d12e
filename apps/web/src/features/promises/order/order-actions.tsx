/** What can be done with a whole order. The way on stands in front: the pull list first, planting or handing over once plants are pulled. */
import { useNavigate } from '@tanstack/react-router';
import type { promises as contracts } from '@rootclock/contracts';
import { FIELD, GROWERS } from '@rootclock/domain';
import { useState } from 'react';
import { useSession } from '../../../lib/api/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { ButtonLink, Menu, type MenuAction } from '../../../ui/action/index.ts';
import { ChangeDaySheet } from './change-day-sheet.tsx';
import { CancelSheet, EditOrderSheet, FinishAgain } from './ending-sheets.tsx';

export function OrderActions({ order }: { order: contracts.OrderPage }) {
  const { orders, promises, ui } = useMessages();
  const words = orders.list;
  const { mayBe } = useSession();
  const [open, setOpen] = useState<'day' | 'edit' | 'cancel' | 'finish' | null>(null);
  const close = () => setOpen(null);
  const navigate = useNavigate();
  if (order.state !== 'open') return null;
  const isStaged = order.stagedUnits > 0;
  const goesOut =
    order.kind === 'installation'
      ? { to: paths.planting(order.id), label: words.toPlant }
      : { to: paths.handOver(order.id), label: words.toHandOver };
  const isGrower = mayBe(GROWERS);
  const actions: (MenuAction | false)[] = [
    isStaged && { id: 'return', label: words.bringBack, to: paths.bringBack(order.id) },
    isGrower && { id: 'day', label: words.moveDay, onAction: () => setOpen('day') },
    isGrower && { id: 'edit', label: words.editOrder, onAction: () => setOpen('edit') },
    {
      id: 'what-if',
      label: promises.whatIf.open,
      onAction: () => void navigate({ to: paths.whatIf(), search: { kind: 'move-order', order: order.id } }),
    },
    { id: 'finish', label: words.finish, onAction: () => setOpen('finish') },
    isGrower && { id: 'cancel', label: words.cancel, danger: true, onAction: () => setOpen('cancel') },
  ];
  return (
    <>
      {mayBe(FIELD) && (isStaged || order.deliveredUnits > 0) && (
        <ButtonLink to={goesOut.to} look={isStaged ? 'primary' : 'plain'}>
          {goesOut.label}
        </ButtonLink>
      )}
      <ButtonLink to={paths.pullList(order.id)} look={isStaged ? 'plain' : 'primary'}>
        {words.pullList}
      </ButtonLink>
      {mayBe(FIELD) && <Menu label={ui.more} actions={actions.filter((action) => action !== false)} />}
      {open === 'day' && <ChangeDaySheet order={order} onClose={close} />}
      {open === 'edit' && <EditOrderSheet order={order} onClose={close} />}
      {open === 'cancel' && <CancelSheet order={order} onClose={close} />}
      <FinishAgain order={order} open={open === 'finish'} onClose={close} />
    </>
  );
}
