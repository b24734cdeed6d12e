import { promises } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { query } from '../../../trpc/operation.ts';
import { loadOrderDay } from '../offers/store.ts';
import { loadScope } from '../planning/load.ts';
import { turnOf } from '../planning/outlook.ts';

/** What moving an order would do, worked out and not stored. */
export const whatIfDay = query({
  name: 'whatIfDay',
  input: promises.whatIfDay,
  roles: EVERYONE,
  read: async (context, { orderId, dueOn: newDueOn }): Promise<promises.DayOutlook> => {
    const { dueOn, openLines } = await loadOrderDay(context, orderId);
    const scope = await loadScope(context, { lines: openLines });
    const own = new Map(openLines.map((lineId) => [lineId, { dueOn: newDueOn }]));
    const { keepsRank, lines } = turnOf(scope, own, 1 + Math.max(0, ...scope.lines.map(({ rank }) => rank)));
    return {
      orderId, dueOn, newDueOn, keepsRank,
      lines: [...lines.filter(({ lineId }) => own.has(lineId)), ...lines.filter(({ lineId, filledNow, filledThen }) => !own.has(lineId) && filledNow !== filledThen)],
    };
  },
});
