import { promises } from '@rootclock/contracts';
import { compareText, EVERYONE, MAX_UNITS } from '@rootclock/domain';
import type * as z from 'zod/mini';
import { query, type ReadContext } from '../../../trpc/operation.ts';
import { shortageExplainer } from '../planning/explain.ts';
import { judge } from '../planning/judging.ts';
import { loadScope } from '../planning/load.ts';
import { itemOf, type Scope, type ScopeLine, servedOn } from '../planning/scope.ts';
import { requireOpenLine } from '../reservations/open-line.ts';
import { loadItem, loadLeadDays, loadRegion } from './store.ts';

const LAST = '9999-12-31';

/** What could serve a line, or someone who asks for an item on a day: what must leave its pot first comes first. */
export const offersFor = query({
  name: 'offersFor',
  input: promises.offersFor,
  roles: EVERYONE,
  read: async (context, input): Promise<promises.Offers> => {
    const { scope, line } = 'lineId' in input ? await ofLine(context, input.lineId) : await ofItem(context, input);
    const offers = scope.supplies.flatMap((supply): promises.OfferRow[] => {
      const { penalty, reasons, leaveByOn } = judge(supply, line, scope);
      const releasedByHand = reasons.includes('released-by-hand');
      if (penalty === null || supply.units === 0 || reasons.some((reason) => reason !== 'released-by-hand')) return [];
      const reservedUnits = scope.reservations.filter((row) => row.supplyId === supply.id).reduce((sum, row) => sum + row.units, 0);
      const { id: supplyId, kind: supplyKind, code, plantId, scientificName, containerId, containerCode, readyOn, rootChecked, clockOn, plantByOn, plantByState, seedZone, origin, units } = supply;
      return [{
        supplyId, supplyKind, code, plantId, scientificName, containerId, containerCode, penalty, onHandUnits: units, reservedUnits, freeUnits: units - reservedUnits,
        readyOn, rootChecked, clockOn, plantByOn, plantByState, leaveByOn, seedZone, origin, releasedByHand,
      }];
    });
    offers.sort((a, b) => compareText(a.leaveByOn ?? LAST, b.leaveByOn ?? LAST) || a.penalty - b.penalty || compareText(a.code, b.code));
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

type ItemInput = z.output<typeof promises.offersForItem>;

/** A line that nobody has written down yet, behind all others. */
async function ofItem(context: ReadContext, input: ItemInput): Promise<{ scope: Scope; line: ScopeLine }> {
  const item = await loadItem(context, input.plantId, input.containerId);
  const region = input.siteId === null ? null : await loadRegion(context, input.siteId);
  const leadDays = input.clientId === null ? 0 : await loadLeadDays(context, input.clientId);
  const scope = await loadScope(context, { items: [input], asksTreatments: input.untreated, regions: region === null ? [] : [region] });
  const line: ScopeLine = {
    id: 'asked', orderId: '', orderCode: '', orderKind: input.siteId === null ? 'pickup' : 'installation', clientName: '', siteName: null, region, leadDays,
    rank: 1 + Math.max(0, ...scope.lines.map(({ rank }) => rank)), dueOn: input.on, plantId: input.plantId, ...item, units: 1, stagedUnits: 0, deliveredUnits: 0,
    seedZone: input.seedZone, wildType: input.wildType, untreated: input.untreated, nativesOnly: input.nativesOnly, accepts: [{ item: itemOf(input.plantId, input.containerId), penalty: 0 }], refusedIds: [],
  };
  return { scope, line };
}
