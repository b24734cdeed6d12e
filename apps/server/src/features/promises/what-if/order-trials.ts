import { refuse } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';
import { requireSince } from '../../stock/ledger/post.ts';
import { requireOpenPlaces } from '../../stock/lots/places.ts';
import { askedLine } from '../offers/asked-line.ts';
import { loadScope } from '../planning/load.ts';
import { changed, turnOf } from '../planning/outlook.ts';
import type { Scope, ScopeLine } from '../planning/scope.ts';
import { restand } from './stands.ts';
import { loadClientName, loadOpenOrder, loadShelter, loadSite, loadStands, type TriedOrder } from './store.ts';
import type { ChangeOf, Trial } from './trial.ts';

const nextRank = (scope: Scope) => 1 + Math.max(0, ...scope.lines.map(({ rank }) => rank));

export async function moveOrder(context: ReadContext, { orderId, dueOn }: ChangeOf<'move-order'>): Promise<Trial> {
  const { openLines } = await loadOpenOrder(context, orderId);
  requireSince(dueOn, context.today, 'dueOn');
  const before = await loadScope(context, { lines: openLines });
  const changes = new Map<string, Partial<ScopeLine>>(openLines.map((lineId) => [lineId, { dueOn }]));
  const { keepsRank, ranks } = turnOf(before, changes, nextRank(before));
  for (const { lineId, rank } of ranks) changes.set(lineId, { dueOn, rank });
  return { before, after: changed(before, { lines: changes }), own: new Set(openLines), keepsRank };
}

/** Its plants become free. What was pulled for it stands at the place it is brought to, as after the command. */
export async function cancelOrder(context: ReadContext, { orderId, placeId }: ChangeOf<'cancel-order'>): Promise<Trial> {
  const order = await loadOpenOrder(context, orderId);
  const own = new Set(order.openLines);
  const before = await loadScope(context, { lines: order.openLines, lots: order.staged.map(({ lotId }) => lotId) });
  const without = { ...before, lines: before.lines.filter(({ id }) => !own.has(id)) };
  return { before, after: order.staged.length === 0 ? without : await broughtBack(context, without, orderId, order, placeId), own, keepsRank: null };
}

async function broughtBack(context: ReadContext, scope: Scope, orderId: string, { code, staged }: TriedOrder, placeId: string | null): Promise<Scope> {
  if (placeId === null) refuse('plants-are-staged', { order: code, units: staged.reduce((sum, { units }) => sum + units, 0) }, 'placeId');
  await requireOpenPlaces(context, [placeId]);
  const shelter = await loadShelter(context, placeId);
  const stands = await loadStands(context, staged.map(({ lotId }) => lotId));
  return restand(context, scope, new Map(staged.map(({ lotId, units }) => {
    const others = (stands.get(lotId) ?? []).filter(({ lineOrderId }) => lineOrderId !== orderId);
    return [lotId, { stands: [...others, { placeId, lineOrderId: null, units, ...shelter }] }];
  })));
}

export async function addOrder(context: ReadContext, input: ChangeOf<'add-order'>): Promise<Trial> {
  requireSince(input.dueOn, context.today, 'dueOn');
  const { scope: before, line: asked } = await askedLine(context, { ...input, on: input.dueOn, seedZone: input.seedZone ?? null, nativesOnly: false }, { units: input.units });
  const clientName = input.clientId === null ? '' : await loadClientName(context, input.clientId);
  const site = input.siteId === null ? null : await loadSite(context, input.siteId);
  if (site && input.clientId !== null && site.clientId !== input.clientId) refuse('site-of-other-client', { site: site.name }, 'siteId');
  const line: ScopeLine = { ...asked, clientName, siteName: site?.name ?? null };
  return { before, after: { ...before, lines: [...before.lines, line] }, own: new Set([line.id]), keepsRank: null };
}
