import type { promises } from '@rootclock/contracts';
import type * as z from 'zod/mini';
import type { ReadContext } from '../../../trpc/operation.ts';
import { loadSite, type SiteFacts } from '../../clients/store.ts';
import { loadScope } from '../allocation/load.ts';
import { itemOf, type Scope, type ScopeLine } from '../allocation/scope.ts';
import { loadAskingClient, loadItem } from './store.ts';

type ItemInput = z.output<typeof promises.offersForItem>;

interface Item {
  plantId: string;
  containerId: string;
}

/** What is asked besides the item itself: how many, what else is taken, and items that are only looked at. */
export interface AskedBesides {
  units?: number;
  alternatives?: readonly (Item & { penalty: number })[];
  looksAt?: readonly Item[];
}

/** A line that nobody has written down yet, behind all others, with all that has to be looked at together with it. */
export async function askedLine(
  context: ReadContext,
  input: ItemInput,
  { units = 1, alternatives = [], looksAt = [] }: AskedBesides = {},
): Promise<{ scope: Scope; line: ScopeLine; site: SiteFacts | null }> {
  const item = await loadItem(context, input.plantId, input.containerId);
  const site = input.siteId === null ? null : await loadSite(context, input.siteId);
  const region = site?.region ?? null;
  const client = input.clientId === null ? null : await loadAskingClient(context, input.clientId);
  const scope = await loadScope(context, {
    items: [input, ...alternatives, ...looksAt],
    asksTreatments: input.untreated,
    regions: region === null ? [] : [region],
  });
  const line: ScopeLine = {
    id: 'asked',
    orderId: '',
    orderCode: '',
    orderKind: input.siteId === null ? 'pickup' : 'installation',
    clientName: client?.name ?? '',
    siteName: site?.name ?? null,
    region,
    leadDays: client?.leadDays ?? 0,
    rank: 1 + Math.max(0, ...scope.lines.map(({ rank }) => rank)),
    dueOn: input.on,
    plantId: input.plantId,
    ...item,
    units,
    stagedUnits: 0,
    deliveredUnits: 0,
    seedZone: input.seedZone,
    wildType: input.wildType,
    untreated: input.untreated,
    nativesOnly: input.nativesOnly,
    accepts: [
      { item: itemOf(input.plantId, input.containerId), penalty: 0 },
      ...alternatives.map(({ plantId, containerId, penalty }) => ({ item: itemOf(plantId, containerId), penalty })),
    ],
    refusedIds: [],
  };
  return { scope, line, site };
}
