import { promises } from '@rootclock/contracts';
import { EVERYONE, type LineFlag } from '@rootclock/domain';
import { found } from '../../../refusal.ts';
import { query } from '../../../trpc/operation.ts';
import { shortageExplainer } from '../allocation/explain.ts';
import { judge } from '../allocation/judging.ts';
import { loadScope } from '../allocation/load.ts';
import type { Scope } from '../allocation/scope.ts';
import {
  type Namesake,
  readCircumstances,
  readEntries,
  readLines,
  readNamesakes,
  readStandings,
  type StoredLine,
} from './order-page-reads.ts';
import { orderConditions, readOrderRows } from './reads.ts';

/** An order with its lines: what each wants, holds and lacks, why, and what to look out for. */
export const readOrder = query({
  name: 'readOrder',
  input: promises.readOrder,
  roles: EVERYONE,
  read: async (context, { orderId }): Promise<promises.OrderPage> => {
    const { rows } = await readOrderRows(context, orderConditions(context, { orderId }), {
      sort: 'due',
      descending: false,
      page: 1,
      perPage: 1,
    });
    const order = found(rows[0], 'order', 'orderId');
    const lines = await readLines(context, orderId);
    const { siteAddress: _, ...circumstances } = await readCircumstances(context, orderId);
    const scope = await loadScope(context, { lines: order.state === 'open' ? lines.map(({ id }) => id) : [] });
    const namesakes = await readNamesakes(
      context,
      lines.map(({ plantId }) => plantId),
    );
    const places = await readStandings(
      context,
      scope.reservations.map(({ supplyId }) => supplyId),
    );
    const explain = shortageExplainer(scope);
    const lineRows = lines.map(({ isNative, poisonsLivestock, ...line }): promises.OrderLineRow => {
      const scoped = scope.lines.find(({ id }) => id === line.id);
      const names = namesakes.get(line.plantId) ?? [];
      const missing = Math.max(0, line.units - line.reservedUnits - line.stagedUnits - line.deliveredUnits);
      return {
        ...line,
        namesakes: names,
        flags: flagsOf({ isNative, poisonsLivestock }, names),
        reservations: reservationsOf(scope, line.id, places),
        shortUnits: scoped ? missing : 0,
        reasons: scoped ? explain(scoped) : [],
      };
    });
    return { ...order, ...circumstances, lineRows, entries: await readEntries(context, orderId) };
  },
});

/** Native range is known only for sites in a region that the reference data speaks of. */
export function flagsOf(
  { isNative, poisonsLivestock }: Pick<StoredLine, 'isNative' | 'poisonsLivestock'>,
  namesakes: readonly Namesake[],
): LineFlag[] {
  return [
    ...(namesakes.length > 0 ? ['ambiguous-name' as const] : []),
    ...(isNative === false ? ['not-native' as const] : []),
    ...(poisonsLivestock ? ['livestock-near' as const] : []),
  ];
}

function reservationsOf(
  scope: Scope,
  lineId: string,
  places: ReadonlyMap<string, promises.ReservationRow['places']>,
): promises.ReservationRow[] {
  const line = scope.lines.find(({ id }) => id === lineId);
  return scope.reservations
    .filter((row) => row.lineId === lineId)
    .flatMap((row): promises.ReservationRow[] => {
      const supply = scope.supplies.find(({ id }) => id === row.supplyId);
      if (!supply || !line) return [];
      const {
        id: supplyId,
        kind: supplyKind,
        code,
        plantId,
        scientificName,
        containerId,
        containerCode,
        readyOn,
        rootChecked,
        clockOn,
        plantByOn,
        plantByState,
      } = supply;
      return [
        {
          supplyId,
          supplyKind,
          code,
          plantId,
          scientificName,
          containerId,
          containerCode,
          units: row.units,
          pinned: row.pinned,
          readyOn,
          rootChecked,
          clockOn,
          plantByOn,
          plantByState,
          leaveByOn: judge(supply, line, scope).leaveByOn,
          places: places.get(supplyId) ?? [],
        },
      ];
    });
}
