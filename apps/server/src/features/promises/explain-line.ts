import { promises } from '@rootclock/contracts';
import { EVERYONE, explainAssignments, traysIn } from '@rootclock/domain';
import { query } from '../../trpc/operation.ts';
import { loadScope } from './allocation/load.ts';
import { instanceOf, judgeAll } from './allocation/plan.ts';
import { requireOpenLine } from './reservations/open-line.ts';

/** Why a line holds the plants that it holds: what else would serve it, when that must leave its pot and whom it is promised to. */
export const explainLine = query({
  name: 'explainLine',
  isHeavy: true,
  input: promises.explainLine,
  roles: EVERYONE,
  read: async (context, { lineId }): Promise<promises.LineExplanation> => {
    await requireOpenLine(context, lineId);
    const scope = await loadScope(context, { lines: [lineId] });
    const line = scope.lines.find(({ id }) => id === lineId);
    const supplies = new Map(scope.supplies.map((supply) => [supply.id, supply]));
    const orders = new Map(scope.lines.map(({ id, orderCode }) => [id, orderCode]));
    const named = (id: string) => ({
      code: supplies.get(id)?.code ?? '',
      plantByOn: supplies.get(id)?.plantByOn ?? null,
    });
    const own = scope.reservations.filter((row) => row.lineId === lineId);
    // What wants nothing more holds nothing either.
    const instance = instanceOf(scope, judgeAll(scope), []);
    const traysOf = (supplyId: string, units: number) => traysIn(units, supplies.get(supplyId)?.cells ?? null);
    const explained = instance.demand.some(({ id }) => id === lineId)
      ? explainAssignments(
          instance,
          lineId,
          scope.reservations.map(({ supplyId, lineId: demand, units }) => ({
            supply: supplyId,
            demand,
            units: traysOf(supplyId, units),
          })),
        )
      : [];
    return {
      linesBefore: scope.lines.filter(({ rank }) => line !== undefined && rank < line.rank).length,
      rows: own.flatMap(({ supplyId, supplyKind, units, pinned }): promises.ReservationExplanation[] => {
        const why =
          explained.find((row) => row.supply === supplyId && row.units === traysOf(supplyId, units)) ??
          explained.find((row) => row.supply === supplyId);
        if (!why) return [];
        return [
          {
            supplyId,
            supplyKind,
            units,
            ...named(supplyId),
            reason: pinned ? 'pinned' : why.reason,
            instead: why.instead === null ? null : named(why.instead),
            sooner: pinned
              ? []
              : why.sooner.map(({ supply, demands }) => ({
                  ...named(supply),
                  orders: [...new Set(demands.flatMap((id) => orders.get(id) ?? []))],
                })),
          },
        ];
      }),
    };
  },
});
