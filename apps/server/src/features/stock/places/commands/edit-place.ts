import { stock } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { editing } from '../../../../trpc/editing.ts';
import { describePlace } from '../describe.ts';
import { loadPlace, loadStanding, placeEdits, updatePlace } from '../store.ts';

export const editPlace = editing({
  name: 'editPlace',
  input: stock.editPlace,
  roles: GROWERS,
  edits: placeEdits,
  run: async (context, input) => {
    const before = await loadPlace(context, input.placeId);
    const after = await describePlace(context, input);
    const standing = await loadStanding(context, before.id);
    // What grows in its ground would grow in the ground of a bench.
    if (after.kind !== 'nursery-bed' && standing.groundUnits > 0) {
      refuse(
        'place-not-empty',
        {
          place: before.code,
          units: standing.groundUnits,
          lots: standing.lotIds.length,
          batches: standing.batchIds.length,
        },
        'kind',
      );
    }
    await updatePlace(context, before.id, after);
    // Rules against the winter bind or no longer bind what stands here; and nothing is promised out of quarantine.
    const isQuarantine = (kind: string) => kind === 'quarantine';
    if (before.winterCover !== after.winterCover || isQuarantine(before.kind) !== isQuarantine(after.kind)) {
      for (const lotId of standing.lotIds) context.touched.lot(lotId);
      for (const batchId of standing.batchIds) context.touched.batch(batchId);
    }
    return { placeId: before.id };
  },
});
