import { orders } from '@rootclock/contracts';
import { dateParts, GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadClient, loadSite } from '../../../clients/store.ts';
import { nextCodes } from '../../../stock/ledger/store.ts';
import { checkLines } from '../../lines/check-lines.ts';
import { insertLines } from '../../lines/store.ts';
import { requireRegion } from '../natives.ts';
import { insertOrder } from '../store.ts';

/** New lines come behind all others, so a new order never takes a plant from one that was promised before. */
export const addOrder = command({
  name: 'addOrder',
  input: orders.addOrder,
  roles: GROWERS,
  run: async (context, input) => {
    await loadClient(context, input.clientId);
    const site = input.siteId === null ? null : await loadSite(context, input.siteId);
    if (site !== null) {
      if (site.clientId !== input.clientId) refuse('site-of-other-client', { site: site.name }, 'siteId');
    } else if (input.kind === 'installation') refuse('site-needed', undefined, 'siteId');
    const asked = { ...input, region: site?.region ?? null, siteName: site?.name ?? null };
    if (input.nativesOnly) requireRegion(asked);
    const lines = await checkLines(context, asked, input.lines, (at) => `lines.${at}.`);
    const [code = ''] = await nextCodes(context, 'G', dateParts(context.today).year, 1);
    await insertOrder(context, { ...input, code });
    await insertLines(context, input.orderId, lines);
    for (const { lineId } of lines) context.touched.line(lineId);
    context.touched.features.add('orders');
    return { orderId: input.orderId, code };
  },
});
