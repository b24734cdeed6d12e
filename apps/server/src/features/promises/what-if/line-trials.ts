import { found, refuse } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';
import { requireWholeTrays } from '../../orders/lines/whole-trays.ts';
import { loadOpenOrder } from '../../orders/orders/store.ts';
import { loadScope } from '../allocation/load.ts';
import { itemOf, type ScopeLine } from '../allocation/scope.ts';
import { askedLine } from '../offers/asked-line.ts';
import { loadItem } from '../offers/store.ts';
import { requireOpenLine } from '../reservations/open-line.ts';
import type { ChangeOf, Trial, TurnTrial } from './trial.ts';

type Alternatives = ChangeOf<'edit-line'>['alternatives'];

export async function editLine(
  context: ReadContext,
  { lineId, units, seedZone, wildType, untreated, alternatives, keepRank }: ChangeOf<'edit-line'>,
): Promise<TurnTrial> {
  await requireOpenLine(context, lineId);
  await requireItems(context, alternatives);
  const before = await loadScope(context, { lines: [lineId], items: alternatives, asksTreatments: untreated });
  const {
    stagedUnits: staged,
    deliveredUnits: delivered,
    cells,
    accepts,
  } = found(
    before.lines.find(({ id }) => id === lineId),
    'line',
    'lineId',
  );
  const least = Math.max(1, staged + delivered);
  if (units < least) refuse('below-what-happened', { least, staged, delivered }, 'units');
  if (units !== staged + delivered) requireWholeTrays(units, cells, 'units');
  const wanted = {
    units,
    seedZone: seedZone ?? null,
    wildType,
    untreated,
    accepts: [
      ...accepts.filter(({ penalty }) => penalty === 0),
      ...alternatives.map(({ plantId, containerId, penalty }) => ({ item: itemOf(plantId, containerId), penalty })),
    ],
  };
  return { before, changes: new Map([[lineId, wanted]]), keepRank };
}

/** What was planted of the line stays planted. Pulled plants are brought back first, as the command asks. */
export async function withdrawLine(context: ReadContext, { lineId }: ChangeOf<'withdraw-line'>): Promise<Trial> {
  const { orderCode } = await requireOpenLine(context, lineId);
  const before = await loadScope(context, { lines: [lineId] });
  const { stagedUnits } = found(
    before.lines.find(({ id }) => id === lineId),
    'line',
    'lineId',
  );
  if (stagedUnits > 0) refuse('plants-are-staged', { order: orderCode, units: stagedUnits }, 'lineId');
  return {
    before,
    after: { ...before, lines: before.lines.filter(({ id }) => id !== lineId) },
    own: new Set([lineId]),
    keepsRank: null,
  };
}

/** Under the id that it would get, since between plans that are equally good the ids decide. */
export async function addLine(
  context: ReadContext,
  { orderId, lineId, units, alternatives, ...input }: ChangeOf<'add-line'>,
): Promise<Trial> {
  const {
    code: orderCode,
    kind: orderKind,
    dueOn,
    clientId,
    siteId,
    nativesOnly,
  } = await loadOpenOrder(context, orderId);
  await requireItems(context, alternatives);
  const { scope: before, line: asked } = await askedLine(
    context,
    { ...input, seedZone: input.seedZone ?? null, on: dueOn, clientId, siteId, nativesOnly },
    { units, alternatives },
  );
  requireWholeTrays(units, asked.cells, 'units');
  if (before.lines.some(({ id }) => id === lineId)) refuse('id-taken', { what: 'line' }, 'lineId');
  const line: ScopeLine = { ...asked, id: lineId, orderId, orderCode, orderKind };
  return { before, after: { ...before, lines: [...before.lines, line] }, own: new Set([lineId]), keepsRank: null };
}

async function requireItems(context: ReadContext, alternatives: Alternatives): Promise<void> {
  for (const { plantId, containerId } of alternatives) await loadItem(context, plantId, containerId);
}
