import { propagation } from '@rootclock/contracts';
import { batchAt, FIELD, moved, outside } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { postEntry } from '../../../stock/ledger/post.ts';
import { drawFromLot } from '../../../stock/lots/draw.ts';
import { settleBatch } from '../history/settle.ts';
import { askBeforeDead, loadOpenBatch } from '../open.ts';

/** Writes off cells, trays, pieces or packs with a cause; promises give way where too little is left. */
export const loseFromBatch = command({
  name: 'loseFromBatch',
  input: propagation.loseFromBatch,
  roles: FIELD,
  run: async (context, input) => {
    const batch = await loadOpenBatch(context, input.batchId, input.happenedOn);
    askBeforeDead(batch, input.cause, input.happenedOn, input.confirmed, 'cause');
    const drawn = drawFromLot(batch, input.units, input.placeId);
    const entryId = await postEntry(
      context,
      {
        kind: 'lose',
        happenedOn: input.happenedOn,
        cause: input.cause,
        note: input.note,
        subjects: [{ kind: 'batch', id: batch.id }],
      },
      drawn.map(({ placeId, units }) => moved(units, batchAt(batch.id, placeId), outside('lost'))),
    );
    await settleBatch(context, batch.id);
    return { entryId };
  },
});
