import { promises } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { query } from '../../../trpc/operation.ts';
import { judge } from '../planning/judging.ts';
import { loadScope } from '../planning/load.ts';
import { openUnits, type ScopeReservation } from '../planning/scope.ts';
import { loadSupply } from '../reservations/store.ts';

/** Where a lot or batch could go: every open line that takes its item, the one with the earliest turn first. */
export const demandFor = query({
  name: 'demandFor',
  input: promises.demandFor,
  roles: EVERYONE,
  read: async (context, { supplyId }): Promise<promises.SupplyDemand> => {
    const { kind, code } = await loadSupply(context, supplyId);
    const scope = await loadScope(context, { [kind === 'lot' ? 'lots' : 'batches']: [supplyId] });
    const supply = scope.supplies.find(({ id }) => id === supplyId);
    const unitsOf = (matches: (row: ScopeReservation) => boolean) => scope.reservations.filter(matches).reduce((sum, row) => sum + row.units, 0);
    const lines = scope.lines.flatMap((line): promises.DemandRow[] => {
      const judgement = supply ? judge(supply, line, scope) : null;
      if (!judgement || judgement.penalty === null) return [];
      const { id: lineId, orderId, orderCode, clientName, siteName, dueOn, plantId, scientificName, containerCode, units } = line;
      return [{
        lineId, orderId, orderCode, clientName, siteName, dueOn, plantId, scientificName, containerCode, units, penalty: judgement.penalty,
        shortUnits: Math.max(0, openUnits(line) - unitsOf((row) => row.lineId === line.id)), reservedHereUnits: unitsOf((row) => row.lineId === line.id && row.supplyId === supplyId),
        serves: judgement.serves, reasons: judgement.reasons,
      }];
    });
    const onHandUnits = supply?.units ?? 0;
    const reservedUnits = unitsOf((row) => row.supplyId === supplyId);
    return { supplyId, supplyKind: kind, code, onHandUnits, reservedUnits, freeUnits: supply?.held ? 0 : onHandUnits - reservedUnits, plantByOn: supply?.plantByOn ?? null, lines };
  },
});
