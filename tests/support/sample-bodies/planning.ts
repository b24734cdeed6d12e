import type { SampleBodies } from './bodies.ts';

export const planning: SampleBodies<'planning'> = {
  listTasks: (ids) => [{ from: ids.today, until: '2026-06-30' }, { from: ids.today, until: '2026-06-30', placeId: ids.placeId, kinds: ['pull', 'cover'] }],
  tickTask: (ids) => [{ key: `cover/${ids.closedPlaceId}/2026`, doneOn: ids.today }],
  untickTask: (ids) => [{ key: `cover/${ids.closedPlaceId}/2026` }],
};
