import { plants } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { requireCells } from '../cells.ts';
import { insertContainers, loadContainerCodes } from '../store.ts';

export const addContainer = command({
  name: 'addContainer',
  input: plants.addContainer,
  roles: GROWERS,
  run: async (context, { containerId, ...container }) => {
    requireCells(container.kind, container.cells);
    if ((await loadContainerCodes(context)).has(container.code)) refuse('code-taken', { code: container.code }, 'code');
    const added = await insertContainers(context, [
      { id: containerId, ...container, standing: 'own setting', source: null },
    ]);
    if (added === 0) refuse('id-taken', { what: 'container' }, 'containerId');
    context.touched.features.add('plants');
    return { containerId };
  },
});
