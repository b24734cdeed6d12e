import { sources } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { editing } from '../../../trpc/editing.ts';
import { describeSource } from '../describe.ts';
import { loadSource, sourceEdits, updateSource } from '../store.ts';
import { requireNoSeedUnless } from '../stores/require-seed.ts';

export const editSource = editing({
  name: 'editSource',
  input: sources.editSource,
  roles: GROWERS,
  edits: sourceEdits,
  run: async (context, input) => {
    const before = await loadSource(context, input.sourceId);
    const fields = await describeSource(context, input, { id: before.plantId, scientificName: before.scientificName });
    await requireNoSeedUnless(context, before, fields.kind);
    await updateSource(context, before.id, fields);
    // A line may ask for a seed zone or for wild plants: whoever was promised plants of this source is looked at again.
    if (before.seedZone !== fields.seedZone || before.origin !== fields.origin) context.touched.allPromises = true;
    return { sourceId: before.id };
  },
});
