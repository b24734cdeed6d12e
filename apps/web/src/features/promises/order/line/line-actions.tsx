/** What can be done with a line: change it, choose its lots, withdraw it. */
import { useState } from 'react';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { tellRefused } from '../../../../lib/tell-refused.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Menu } from '../../../../ui/action/index.ts';
import { toast } from '../../../../ui/feedback/index.ts';
import { ConfirmAgain } from '../../../../ui/overlay/index.ts';
import { TriedEdit } from '../../what-if/difference/tried-edit.tsx';
import type { LineCardProps } from './line-props.ts';
import { EditLineSheet } from './line-sheets.tsx';
import { OffersSheet } from './offers-sheet.tsx';

export function LineActions({ order, line }: Omit<LineCardProps, 'mayChange'>) {
  const { orders, promises, ui } = useMessages();
  const words = promises.line;
  const [open, setOpen] = useState<'edit' | 'choose' | 'withdraw' | null>(null);
  const close = () => setOpen(null);
  const withdraw = useCommand('orders.withdrawLine', { title: `${words.withdraw}: ${line.scientificName}` });
  return (
    <>
      <Menu
        look="quiet"
        label={ui.more}
        aria-label={words.moreActions(line.scientificName)}
        actions={[
          { id: 'edit', label: orders.edit, onAction: () => setOpen('edit') },
          { id: 'choose', label: words.choose, onAction: () => setOpen('choose') },
          { id: 'withdraw', label: words.withdraw, danger: true, onAction: () => setOpen('withdraw') },
        ]}
      />
      {open === 'edit' && <EditLineSheet order={order} line={line} onClose={close} />}
      {open === 'choose' && <OffersSheet line={line} onClose={close} />}
      <ConfirmAgain
        open={open === 'withdraw'}
        title={words.withdrawTitle}
        confirm={words.withdraw}
        busy={withdraw.state === 'sending'}
        onClose={close}
        onConfirm={() =>
          void withdraw
            .send({ lineId: line.id })
            .then(() => toast({ text: words.withdrawn(line.scientificName) }), tellRefused)
            .finally(close)
        }
      >
        <div className="stack">
          <p>{words.withdrawText}</p>
          {open === 'withdraw' && <TriedEdit edit={{ kind: 'withdraw-line', lineId: line.id }} />}
        </div>
      </ConfirmAgain>
    </>
  );
}
