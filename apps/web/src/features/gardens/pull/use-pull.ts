/**
 * Pulling rows of a list. Where a root ball was never checked the server asks; `asking` then holds the lots until somebody has looked. The
 * command belongs to the page, since a row leaves the list as soon as its plants are pulled.
 */
import type { gardens as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { CommandError, sentenceOf, type Failure } from '../../../lib/api/index.ts';
import type { CommandHandle } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { tellUndoable } from '../../orders/undo.ts';

export interface Pulled {
  row: contracts.PullRow;
  units: number;
}

export interface Pulling {
  list: contracts.PullList;
  happenedOn: string;
  command: CommandHandle<'gardens.pullForOrder'>;
}

export function usePull({ list, happenedOn, command }: Pulling) {
  const { gardens } = useMessages();
  const [asking, setAsking] = useState<{ lots: string[]; rows: readonly Pulled[] } | null>(null);
  const [failure, setFailure] = useState<Failure | null>(null);
  const [busy, setBusy] = useState(false);

  const send = async (rows: readonly Pulled[], confirmed: boolean): Promise<void> => {
    const total = rows.reduce((sum, { units }) => sum + units, 0);
    setBusy(true);
    setFailure(null);
    try {
      const { entryId } = await command.send({
        orderId: list.orderId,
        happenedOn,
        confirmed,
        rows: rows.map(({ row, units }) => ({ lineId: row.lineId, lotId: row.lotId, placeId: row.placeId, units })),
      });
      setAsking(null);
      tellUndoable(gardens.pull.pulled(total, list.orderCode), entryId);
    } catch (error) {
      if (!(error instanceof CommandError)) throw error;
      const isAsked = error.failure.code === 'root-ball-not-checked';
      setAsking(isAsked ? { rows, lots: error.failure.data?.['lots'] as string[] } : null);
      setFailure(isAsked ? null : error.failure);
    } finally {
      setBusy(false);
    }
  };

  return {
    asking,
    /** What else was refused, as a sentence. */
    refusal: failure ? sentenceOf(failure) : undefined,
    busy,
    isKept: busy && command.state === 'waiting',
    pull: (rows: readonly Pulled[]) => void send(rows, false),
    confirm: () => void (asking && send(asking.rows, true)),
    leave: () => setAsking(null),
  };
}
