import { plants } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { editing } from '../../../../trpc/editing.ts';
import { clocksChanged } from '../../store.ts';
import { requireCells } from '../cells.ts';
import { containerEdits, loadContainer, updateContainer } from '../store.ts';

const MEASURES = ['volumeMl', 'depthMm', 'widthMm', 'lengthMm', 'cells'] as const;

/** A measured container is the nursery's own; a new name or note alone leaves the word on which its sizes stand. */
export const editContainer = editing({
  name: 'editContainer',
  input: plants.editContainer,
  roles: GROWERS,
  edits: containerEdits,
  run: async (context, { containerId, ...measures }) => {
    const before = await loadContainer(context, containerId);
    requireCells(before.kind, measures.cells);
    const isMeasured = MEASURES.some((measure) => measures[measure] !== before[measure]);
    await updateContainer(context, {
      ...before,
      ...measures,
      ...(isMeasured ? { standing: 'own setting', source: null } : {}),
    });
    context.touched.features.add('plants');
    await clocksChanged(context);
    return { containerId };
  },
});
