import { sources } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { editing } from '../../../trpc/editing.ts';
import { describeSource } from '../describe.ts';
import { loadSource, sourceEdits, updateSource } from '../store.ts';
import { requireNoSeedUnless } from '../stores/require-seed.ts';

/** What orders ask of a source. */
const JUDGED = ['seedZone', 'origin', 'kind', 'pesticideStatement'] as const;

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
    // A line may ask for a seed zone, for wild or for untreated plants: whoever was promised plants of this source is looked at again.
    if (JUDGED.some((field) => before[field] !== fields[field])) context.touched.allPromises = true;
    return { sourceId: before.id };
  },
});
