import { promises } from '@rootclock/contracts';
import { compareText, EVERYONE, inWholeTrays, MAX_UNITS } from '@rootclock/domain';
import { query, type ReadContext } from '../../../trpc/operation.ts';
import { shortageExplainer } from '../allocation/explain.ts';
import { judge } from '../allocation/judging.ts';
import { loadScope } from '../allocation/load.ts';
import { type Scope, type ScopeLine, servedOn } from '../allocation/scope.ts';
import { requireOpenLine } from '../reservations/open-line.ts';
import { askedLine } from './asked-line.ts';

const LAST = '9999-12-31';

/** What could serve a line, or someone who asks for an item on a day: what must leave its pot first comes first. */
export const offersFor = query({
  name: 'offersFor',
  isHeavy: true,
  input: promises.offersFor,
  roles: EVERYONE,
  read: async (context, input): Promise<promises.Offers> => {
    const { scope, line } = 'lineId' in input ? await ofLine(context, input.lineId) : await askedLine(context, input);
    const offers = scope.supplies.flatMap((supply): promises.OfferRow[] => {
      const { penalty, reasons, leaveByOn } = judge(supply, line, scope);
      const releasedByHand = reasons.includes('released-by-hand');
      if (penalty === null || supply.units === 0 || reasons.some((reason) => reason !== 'released-by-hand')) return [];
      const reservedUnits = scope.reservations
        .filter((row) => row.supplyId === supply.id)
        .reduce((sum, row) => sum + row.units, 0);
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
        seedZone,
        origin,
        units,
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
          penalty,
          onHandUnits: units,
          reservedUnits,
          freeUnits: inWholeTrays(units - reservedUnits, supply.cells),
          readyOn,
          rootChecked,
          clockOn,
          plantByOn,
          plantByState,
          leaveByOn,
          seedZone,
          origin,
          releasedByHand,
        },
      ];
    });
    offers.sort(
      (a, b) =>
        compareText(a.leaveByOn ?? LAST, b.leaveByOn ?? LAST) || a.penalty - b.penalty || compareText(a.code, b.code),
    );
    // Asking for more than there can be makes the explanation name all that cannot serve.
    const asking = { ...line, units: MAX_UNITS, stagedUnits: 0, deliveredUnits: 0 };
    const explain = shortageExplainer({ ...scope, lines: [...scope.lines.filter(({ id }) => id !== line.id), asking] });
    return { on: servedOn(line, scope.today), offers, reasons: explain(asking) };
  },
});

async function ofLine(context: ReadContext, lineId: string): Promise<{ scope: Scope; line: ScopeLine }> {
  await requireOpenLine(context, lineId);
  const scope = await loadScope(context, { lines: [lineId] });
  const line = scope.lines.find(({ id }) => id === lineId);
  if (!line) throw new Error('an open line is missing from its own scope');
  return { scope, line };
}
