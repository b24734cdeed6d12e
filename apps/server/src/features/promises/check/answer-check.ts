import type { promises } from '@rootclock/contracts';
import { compareText, inWholeTrays, plantsIn, promisableUnits, promise, takeOutPins, traysIn } from '@rootclock/domain';
import { shortageExplainer } from '../allocation/explain.ts';
import { judge } from '../allocation/judging.ts';
import { instanceOf, judgeAll } from '../allocation/plan.ts';
import { itemOf, type Scope, type ScopeLine, servedOn } from '../allocation/scope.ts';
import type { KinItem } from './store.ts';

const MOST_INSTEAD = 6;
const MOST_CODES = 10;

/** What a promise check was asked, with everything it has to look at. */
export interface AskedCheck {
  scope: Scope;
  /** The line that nobody has written down yet. */
  wish: ScopeLine;
  kin: KinItem[];
}

export function answerCheck({ scope, wish, kin }: AskedCheck): promises.PromiseCheck {
  const { cells } = wish;
  // Of what fills no tray the whole trays are looked at, one at least.
  const line = { ...wish, units: Math.max(plantsIn(1, cells), inWholeTrays(wish.units, cells)) };
  const { pins, rest: instance } = takeOutPins(instanceOf(scope, judgeAll(scope)));
  const { units: trays, firstOn, lastBeforeOn, from, inTheWay } = promise(instance, askOf(line, scope));
  const units = plantsIn(trays, cells);
  const isMet = units === line.units;
  const given = from.map((row) => ({ supply: row.supply, units: plantsIn(row.units, cells) }));
  const others = [...inTheWay.promisedToOthers, ...pins.filter(({ supply }) => mayServe(supply, line, scope))].map(
    (row) => ({ demand: row.demand, units: plantsIn(row.units, cells) }),
  );
  const supplies = new Map(scope.supplies.map((supply) => [supply.id, supply]));
  return {
    on: servedOn(line, scope.today),
    askedUnits: line.units,
    cells,
    units,
    firstOn,
    lastBeforeOn,
    from: given.flatMap(({ supply: id, units: fromHere }): promises.PromiseSource[] => {
      const supply = supplies.get(id);
      if (!supply) return [];
      const { kind: supplyKind, code, plantId, scientificName, containerCode, readyOn, plantByOn } = supply;
      return [
        {
          supplyId: id,
          supplyKind,
          code,
          plantId,
          scientificName,
          containerCode,
          units: fromHere,
          readyOn,
          plantByOn,
        },
      ];
    }),
    reasons: isMet ? [] : reasonsFor(line, scope, given, others),
    instead: isMet
      ? []
      : kin
          .map((item) => ({
            ...item,
            units: plantsIn(promisableUnits(instance, askOf(asKin(line, item), scope)), cells),
          }))
          .filter((row) => row.units > 0)
          .sort(
            (a, b) =>
              b.units - a.units ||
              compareText(a.scientificName, b.scientificName) ||
              compareText(a.containerName, b.containerName),
          )
          .slice(0, MOST_INSTEAD),
  };
}

/** What a line asks, judged for each lot and batch; only the days are left to be compared. */
export function askOf(line: ScopeLine, scope: Scope) {
  const items = new Set(line.accepts.map(({ item }) => item));
  const judged = scope.supplies
    .filter(({ item }) => items.has(item))
    .map((supply) => ({ id: supply.id, isDayKnown: supply.readyOn !== null, ...judge(supply, line, scope) }));
  return {
    accepts: line.accepts,
    units: traysIn(line.units, line.cells),
    on: servedOn(line, scope.today),
    refuses: judged
      .filter(
        ({ isDayKnown, reasons }) =>
          !isDayKnown || reasons.some((reason) => reason !== 'not-ready' && reason !== 'past-plant-by'),
      )
      .map(({ id }) => id),
    leaveBy: new Map(judged.flatMap(({ id, leaveByOn }) => (leaveByOn === null ? [] : [[id, leaveByOn] as const]))),
  };
}

/** The same wish for another item. Another plant is only offered where the site's region has it as a native, if the region is known. */
const asKin = (line: ScopeLine, { kind, plantId, containerId }: KinItem): ScopeLine => ({
  ...line,
  accepts: [{ item: itemOf(plantId, containerId), penalty: 0 }],
  nativesOnly: line.nativesOnly || (kind === 'kin' && line.region !== null),
});

const mayServe = (supplyId: string, line: ScopeLine, scope: Scope) =>
  scope.supplies.some((supply) => supply.id === supplyId && judge(supply, line, scope).serves);

/** What keeps the line from the rest: what cannot serve as it is, and what others would hold once everything is allocated with the line. */
function reasonsFor(
  line: ScopeLine,
  scope: Scope,
  from: readonly { supply: string; units: number }[],
  others: readonly { demand: string; units: number }[],
): promises.ShortageReason[] {
  const kinds = new Map(scope.supplies.map(({ id, kind }) => [id, kind]));
  const own = from.map(({ supply, units }) => ({
    lineId: line.id,
    supplyId: supply,
    supplyKind: kinds.get(supply) ?? 'lot',
    units,
    pinned: false,
  }));
  const unfit = shortageExplainer({ ...scope, lines: [...scope.lines, line], reservations: own })(line).filter(
    ({ reason }) => reason !== 'not-grown',
  );
  const codes = new Map(scope.lines.map(({ id, orderCode }) => [id, orderCode]));
  const promised = others.reduce((sum, { units }) => sum + units, 0);
  const held: promises.ShortageReason = {
    reason: 'promised',
    units: promised,
    codes: [...new Set(others.flatMap(({ demand }) => codes.get(demand) ?? []))].slice(0, MOST_CODES),
    day: null,
  };
  const reasons = [...unfit, ...(promised > 0 ? [held] : [])];
  const short = line.units - own.reduce((sum, { units }) => sum + units, 0);
  return reasons.length > 0 ? reasons : [{ reason: 'not-grown', units: short, codes: [line.containerCode], day: null }];
}
