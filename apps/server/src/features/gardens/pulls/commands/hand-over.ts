import { gardens } from '@rootclock/contracts';
import { FIELD, moved, outside, stagedFor } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { postEntry } from '../../../stock/ledger/post.ts';
import { handling } from '../details.ts';
import { loadOrderRows, requireStaged, requireUnheld } from '../rows.ts';
import { loadStaged } from '../store.ts';

/** The client has the plants. */
export const handOver = command({
  name: 'handOver',
  input: gardens.handOver,
  roles: FIELD,
  run: async (context, input) => {
    const { order, lotOf } = await loadOrderRows(context, input.orderId, input.happenedOn, input.rows);
    requireUnheld([...new Set(input.rows.map(({ lotId }) => lotId))].map(lotOf));
    requireStaged(input.rows, await loadStaged(context, order.id), lotOf);
    const entryId = await postEntry(
      context,
      {
        kind: 'sell',
        happenedOn: input.happenedOn,
        note: input.note,
        details: handling.written({ orderId: order.id }),
      },
      input.rows.map(({ lineId, lotId, units }) => moved(units, stagedFor(lotId, lineId), outside('sold'))),
    );
    return { entryId };
  },
});
