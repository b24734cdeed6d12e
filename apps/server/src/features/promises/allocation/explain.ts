import { promises } from '@rootclock/contracts';
import { compareText, explainShortage, inWholeTrays, plantsIn, traysIn } from '@rootclock/domain';
import { readyFor } from './judging.ts';
import { instanceOf, judgeAll } from './plan.ts';
import { openUnits, type Scope, type ScopeLine } from './scope.ts';

const MOST_CODES = 10;

/** Explains the shortages of lines of one scope, as the reservations stand; the scope is judged once for all of them. */
export function shortageExplainer(scope: Scope): (line: ScopeLine) => promises.ShortageReason[] {
  const judged = judgeAll(scope);
  // What each line holds is told beside it: a pin may hold what does not serve.
  const instance = instanceOf(scope, judged, []);
  const cells = new Map(scope.supplies.map((supply) => [supply.id, supply.cells]));
  const assignments = scope.reservations.map(({ lineId, supplyId, units }) => ({
    supply: supplyId,
    demand: lineId,
    units: traysIn(units, cells.get(supplyId) ?? null),
  }));
  const lines = new Map(scope.lines.map((line) => [line.id, line]));
  // The database answers in no order, and people should read the same twice.
  const supplies = [...scope.supplies].sort((a, b) => compareText(a.code, b.code));
  return (line) => {
    const reserved = scope.reservations.filter((row) => row.lineId === line.id);
    const short = openUnits(line) - reserved.reduce((sum, row) => sum + row.units, 0);
    if (short <= 0) return [];
    const reasons = new Map<promises.ShortageReasonCode, promises.ShortageReason>();
    const add = (reason: promises.ShortageReasonCode, units: number, code: string, day: string | null = null) => {
      if (units <= 0) return;
      const row = reasons.get(reason) ?? { reason, units: 0, codes: [], day: null };
      row.units += units;
      if (row.codes.length < MOST_CODES) row.codes.push(code);
      // The first day on which some are ready, the last on which some could still go.
      if (day !== null && (row.day === null || (reason === 'not-ready' ? day < row.day : day > row.day))) row.day = day;
      reasons.set(reason, row);
    };
    for (const supply of supplies) {
      const judgement = judged.get(line.id)?.get(supply.id);
      if (!judgement) continue;
      add('held', supply.quarantinedUnits, supply.code);
      const [reason] = judgement.reasons;
      const mine = reserved.filter((row) => row.supplyId === supply.id).reduce((sum, row) => sum + row.units, 0);
      if (judgement.serves) add('no-whole-tray', supply.units - inWholeTrays(supply.units, supply.cells), supply.code);
      if (reason)
        add(
          reason,
          supply.units - mine,
          supply.code,
          reason === 'not-ready'
            ? readyFor(supply, scope.today)
            : reason === 'past-plant-by'
              ? judgement.leaveByOn
              : null,
        );
    }
    const isAsked = instance.demand.some(({ id }) => id === line.id);
    const { promisedToOthers } = isAsked
      ? explainShortage(instance, line.id, { assignments })
      : { promisedToOthers: [] };
    for (const other of promisedToOthers)
      add('promised', plantsIn(other.units, line.cells), lines.get(other.demand)?.orderCode ?? '');
    // What is asked beyond whole trays is never promised, however many stand there.
    const open = openUnits(line);
    add('no-whole-tray', open - inWholeTrays(open, line.cells), line.containerCode);
    if (reasons.size === 0) add('not-grown', short, line.containerCode);
    return [...reasons.values()].sort(
      (a, b) => promises.SHORTAGE_REASONS.indexOf(a.reason) - promises.SHORTAGE_REASONS.indexOf(b.reason),
    );
  };
}
