import { planning } from '@rootclock/contracts';
import { EVERYONE, supplyOutlook } from '@rootclock/domain';
import { found } from '../../refusal.ts';
import { query, type ReadContext } from '../../trpc/operation.ts';
import { itemOf } from '../promises/allocation/scope.ts';
import { loadDemands, suppliesOf } from './facts/demands.ts';
import { loadExpected } from './facts/store.ts';
import { loadWearing } from './facts/wearing.ts';
import { loadItems, loadUsualUnits } from './outlook-store.ts';

async function weeksOf(
  context: ReadContext,
  item: { plantId: string; containerId: string },
  weeks: number,
): Promise<planning.OutlookWeek[]> {
  const { scope, demands } = await loadDemands(context, await loadExpected(context), [item]);
  const wearing = await loadWearing(context, [...new Set(scope.supplies.map(({ plantId }) => plantId))]);
  const usualUnits = await loadUsualUnits(
    context,
    scope.supplies.filter(({ kind }) => kind === 'batch').map(({ id }) => id),
  );
  const key = itemOf(item.plantId, item.containerId);
  const cautious = supplyOutlook(key, { today: context.today, weeks, demands, supplies: suppliesOf(scope, wearing) });
  const usual = supplyOutlook(key, {
    today: context.today,
    weeks,
    demands,
    supplies: suppliesOf(scope, wearing, ({ id, units }) => usualUnits.get(id) ?? units),
  });
  return cautious.map(({ startsOn, plants, orders, expected, short }, week) => ({
    startsOn,
    cautious: plants,
    usual: usual[week]?.plants ?? plants,
    orders,
    expected,
    shortCautious: short,
    shortUsual: usual[week]?.short ?? short,
  }));
}

/** Supply of one item by week beside what is wanted of it. */
export const readOutlook = query({
  name: 'readOutlook',
  isHeavy: true,
  input: planning.readOutlook,
  roles: EVERYONE,
  read: async (context, { item, weeks }): Promise<planning.OutlookAnswer> => {
    const items = await loadItems(context);
    const names =
      item === null
        ? null
        : found(
            items.find(({ plantId, containerId }) => plantId === item.plantId && containerId === item.containerId),
            'item',
            'item',
          );
    return {
      today: context.today,
      items,
      chosen: names === null ? null : { item: names, weeks: await weeksOf(context, names, weeks) },
    };
  },
});
