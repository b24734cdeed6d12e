import { promises } from '@rootclock/contracts';
import { compareText, EVERYONE, inWholeTrays } from '@rootclock/domain';
import { query } from '../../../trpc/operation.ts';
import { type Judgement, judge, readyFor } from '../allocation/judging.ts';
import { loadScope } from '../allocation/load.ts';
import { openUnits, type Scope, type ScopeLine, type ScopeReservation, type ScopeSupply } from '../allocation/scope.ts';
import { loadSupply } from '../reservations/store.ts';
import { loadKinWishes } from './store.ts';

/**
 * Where a lot or batch could go: every open line that takes its item, the one with the earliest turn first; then short lines of its plant and
 * genus that it would serve if their day, conditions or alternatives changed, those first that would save most plants.
 */
export const demandFor = query({
  name: 'demandFor',
  isHeavy: true,
  input: promises.demandFor,
  roles: EVERYONE,
  read: async (context, { supplyId }): Promise<promises.SupplyDemand> => {
    const { kind, code } = await loadSupply(context, supplyId);
    const scope = await loadScope(context, {
      [kind === 'lot' ? 'lots' : 'batches']: [supplyId],
      items: await loadKinWishes(context, supplyId),
    });
    const supply = scope.supplies.find(({ id }) => id === supplyId);
    const unitsOf = (matches: (row: ScopeReservation) => boolean) =>
      scope.reservations.filter(matches).reduce((sum, row) => sum + row.units, 0);
    const onHandUnits = supply?.units ?? 0;
    const reservedUnits = unitsOf((row) => row.supplyId === supplyId);
    const freeUnits = supply?.held ? 0 : onHandUnits - reservedUnits;
    const rows =
      supply === undefined
        ? []
        : scope.lines.flatMap((line): promises.DemandRow[] => {
            const judgement = judge(supply, line, scope);
            const shortUnits = Math.max(0, openUnits(line) - unitsOf((row) => row.lineId === line.id));
            const savedUnits = inWholeTrays(Math.min(shortUnits, Math.max(0, freeUnits)), supply.cells);
            const needs = judgement.serves ? null : needsOf(judgement, supply, scope);
            // Lines of other items matter only where they would save something, and none can take trays that does not ask for such.
            if (line.cells !== supply.cells) return [];
            if (judgement.penalty === null && (savedUnits === 0 || needs?.isTooLate || !isKin(line, supply, scope)))
              return [];
            const {
              id: lineId,
              orderId,
              orderCode,
              clientName,
              siteName,
              dueOn,
              plantId,
              scientificName,
              containerCode,
              units,
            } = line;
            return [
              {
                lineId,
                orderId,
                orderCode,
                clientName,
                siteName,
                dueOn,
                plantId,
                scientificName,
                containerCode,
                units,
                penalty: judgement.penalty,
                shortUnits,
                reservedHereUnits: unitsOf((row) => row.lineId === lineId && row.supplyId === supplyId),
                savedUnits: needs?.isTooLate ? 0 : savedUnits,
                serves: judgement.serves,
                reasons: judgement.reasons,
                needs,
              },
            ];
          });
    const taking = rows.filter(({ penalty }) => penalty !== null);
    const others = rows
      .filter(({ penalty }) => penalty === null)
      .sort((a, b) => b.savedUnits - a.savedUnits || changesOf(a) - changesOf(b) || compareText(a.dueOn, b.dueOn));
    return {
      supplyId,
      supplyKind: kind,
      code,
      onHandUnits,
      reservedUnits,
      freeUnits,
      plantByOn: supply?.plantByOn ?? null,
      lines: [...taking, ...others],
    };
  },
});

/** The same plant, or one of its genus that is native where an order that asks for natives goes. */
function isKin(line: ScopeLine, supply: ScopeSupply, scope: Scope): boolean {
  const genusOf = (name: string) => name.split(' ')[0];
  const asTaken = {
    ...line,
    accepts: [{ item: supply.item, penalty: 0 }],
    nativesOnly: line.nativesOnly || (line.region !== null && line.plantId !== supply.plantId),
  };
  return (
    genusOf(line.scientificName) === genusOf(supply.scientificName) &&
    !judge(supply, asTaken, scope).reasons.some((reason) => reason === 'not-native')
  );
}

function needsOf(
  { penalty, reasons, leaveByOn }: Judgement,
  supply: ScopeSupply,
  { today }: Scope,
): promises.DemandNeeds {
  const isLate = reasons.includes('past-plant-by');
  const isTooLate = isLate && leaveByOn !== null && leaveByOn < today;
  return {
    alternative: penalty === null,
    conditions: reasons.flatMap((reason) => (reason === 'not-ready' || reason === 'past-plant-by' ? [] : [reason])),
    fromOn: reasons.includes('not-ready') ? readyFor(supply, today) : null,
    untilOn: isLate && !isTooLate ? leaveByOn : null,
    isTooLate,
  };
}

const changesOf = ({ needs }: promises.DemandRow): number =>
  needs
    ? Number(needs.alternative) +
      needs.conditions.length +
      Number(needs.fromOn !== null) +
      Number(needs.untilOn !== null)
    : 0;
