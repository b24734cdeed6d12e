/** Pulling rows of a list. Where a root ball was never checked the server asks; `asking` then holds the lots until somebody has looked. */
import type { gardens as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { CommandError, sentenceOf } from '../../../lib/api/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { useUndoable } from '../undo.ts';

export interface Pulled {
  row: contracts.PullRow;
  units: number;
}

export function usePull(list: contracts.PullList, happenedOn: string) {
  const { gardens } = useMessages();
  const words = gardens.pull;
  const tell = useUndoable();
  const [asking, setAsking] = useState<{ lots: string[]; rows: readonly Pulled[] } | null>(null);
  const pull = useCommand('gardens.pullForOrder', { title: words.title(list.orderCode) });

  const send = async (rows: readonly Pulled[], confirmed: boolean): Promise<void> => {
    const total = rows.reduce((sum, { units }) => sum + units, 0);
    try {
      const { entryId } = await pull.send({
        orderId: list.orderId,
        happenedOn,
        confirmed,
        rows: rows.map(({ row, units }) => ({ lineId: row.lineId, lotId: row.lotId, placeId: row.placeId, units })),
      });
      setAsking(null);
      tell(words.pulled(total, list.orderCode), entryId);
    } catch (error) {
      if (!(error instanceof CommandError)) throw error;
      setAsking(error.failure.code === 'root-ball-not-checked' ? { rows, lots: error.failure.data?.['lots'] as string[] } : null);
    }
  };

  const failure = asking === null ? pull.failure : null;
  return {
    asking,
    /** What else was refused, as a sentence. */
    refusal: failure ? sentenceOf(failure) : undefined,
    busy: pull.state === 'sending' || pull.state === 'waiting',
    isKept: pull.state === 'waiting',
    pull: (rows: readonly Pulled[]) => void send(rows, false),
    confirm: () => void (asking && send(asking.rows, true)),
    leave: () => {
      setAsking(null);
      pull.reset();
    },
  };
}
