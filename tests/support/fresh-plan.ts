// What a plan made anew of everything would reserve, beside what is stored: both by line and lot or batch.
import { stock } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { loadScope } from '../../apps/server/src/features/promises/allocation/load.ts';
import { planReservations } from '../../apps/server/src/features/promises/allocation/plan.ts';
import type { ScopeReservation } from '../../apps/server/src/features/promises/allocation/scope.ts';
import { query } from '../../apps/server/src/trpc/operation.ts';
import type { TestNursery } from './nursery.ts';

const worded = (rows: readonly ScopeReservation[]) =>
  rows.map(({ lineId, supplyId, units, pinned }) => `${lineId} ${supplyId} ${units}${pinned ? ' pinned' : ''}`).sort();

const freshPlan = query({
  name: 'freshPlan',
  // Asks nothing.
  input: stock.listPlaces,
  roles: EVERYONE,
  read: async (context) => {
    const scope = await loadScope(context, { all: true });
    return { stored: worded(scope.reservations), fresh: worded(planReservations(scope)) };
  },
});

export function readFreshPlan({
  runner,
  people,
}: Pick<TestNursery, 'runner' | 'people'>): Promise<{ stored: string[]; fresh: string[] }> {
  return runner.read(freshPlan, people.viewer, { retired: false });
}
