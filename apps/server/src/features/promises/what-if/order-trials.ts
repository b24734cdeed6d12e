import { refuse } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';
import { requireWholeTrays } from '../../orders/lines/whole-trays.ts';
import { loadOpenOrder, type OrderFacts } from '../../orders/orders/store.ts';
import { requireSince } from '../../stock/ledger/post.ts';
import { requireOpenPlaces } from '../../stock/lots/open-places.ts';
import { loadScope } from '../allocation/load.ts';
import { changed } from '../allocation/outlook.ts';
import type { Scope } from '../allocation/scope.ts';
import { askedLine } from '../offers/asked-line.ts';
import { restand } from './stands.ts';
import { loadShelter, loadStagedLots, loadStands, type StagedLot } from './store.ts';
import type { ChangeOf, Trial, TurnTrial } from './trial.ts';

export async function moveOrder(
  context: ReadContext,
  { orderId, dueOn, keepRank }: ChangeOf<'move-order'>,
): Promise<TurnTrial> {
  const { openLines } = await loadOpenOrder(context, orderId);
  requireSince(dueOn, context.today, 'dueOn');
  const before = await loadScope(context, { lines: openLines });
  return { before, changes: new Map(openLines.map((lineId) => [lineId, { dueOn }])), keepRank };
}

/** Its plants become free. What was pulled for it stands at the place it is brought to, as after the command. */
export async function cancelOrder(
  context: ReadContext,
  { orderId, placeId }: ChangeOf<'cancel-order'>,
): Promise<Trial> {
  const order = await loadOpenOrder(context, orderId);
  const staged = await loadStagedLots(context, orderId);
  const own = new Set(order.openLines);
  const before = await loadScope(context, { lines: order.openLines, lots: staged.map(({ lotId }) => lotId) });
  const without = { ...before, lines: before.lines.filter(({ id }) => !own.has(id)) };
  return {
    before,
    after: staged.length === 0 ? without : await broughtBack(context, without, order, staged, placeId),
    own,
    keepsRank: null,
  };
}

async function broughtBack(
  context: ReadContext,
  scope: Scope,
  { id: orderId, code, stagedUnits }: OrderFacts,
  staged: readonly StagedLot[],
  placeId: string | null,
): Promise<Scope> {
  if (placeId === null) refuse('plants-are-staged', { order: code, units: stagedUnits }, 'placeId');
  await requireOpenPlaces(context, [placeId]);
  const shelter = await loadShelter(context, placeId);
  const stands = await loadStands(
    context,
    staged.map(({ lotId }) => lotId),
  );
  return restand(
    context,
    scope,
    new Map(
      staged.map(({ lotId, units }) => {
        const others = (stands.get(lotId) ?? []).filter(({ lineOrderId }) => lineOrderId !== orderId);
        return [lotId, { stands: [...others, { placeId, lineOrderId: null, units, ...shelter }] }];
      }),
    ),
  );
}

export async function addOrder(context: ReadContext, input: ChangeOf<'add-order'>): Promise<Trial> {
  requireSince(input.dueOn, context.today, 'dueOn');
  const {
    scope: before,
    line,
    site,
  } = await askedLine(
    context,
    { ...input, on: input.dueOn, seedZone: input.seedZone ?? null, nativesOnly: false },
    { units: input.units },
  );
  requireWholeTrays(input.units, line.cells, 'units');
  if (site && input.clientId !== null && site.clientId !== input.clientId)
    refuse('site-of-other-client', { site: site.name }, 'siteId');
  return { before, after: { ...before, lines: [...before.lines, line] }, own: new Set([line.id]), keepsRank: null };
}

/** Plants that are not known to be native to the region of its site leave it, but for those that are planted already. */
export async function turnToNatives(
  context: ReadContext,
  { orderId, nativesOnly }: ChangeOf<'natives-only'>,
): Promise<Trial> {
  const { openLines, region, siteName } = await loadOpenOrder(context, orderId);
  if (nativesOnly && region === null) refuse('natives-need-region', { site: siteName }, 'nativesOnly');
  const before = await loadScope(context, { lines: openLines });
  return {
    before,
    after: changed(before, { lines: new Map(openLines.map((lineId) => [lineId, { nativesOnly }])) }),
    own: new Set(openLines),
    keepsRank: null,
  };
}
