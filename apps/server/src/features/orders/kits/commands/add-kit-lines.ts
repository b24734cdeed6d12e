import { orders } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { checkLines } from '../../lines/check-lines.ts';
import { insertLines } from '../../lines/store.ts';
import { loadOpenOrder } from '../../orders/store.ts';
import { loadKit } from '../store.ts';

/** All lines of the kit or none: half a kit is not what was asked for. */
export const addKitLines = command({
  name: 'addKitLines',
  input: orders.addKitLines,
  roles: GROWERS,
  run: async (context, { orderId, kitId, units, bedId, lineIds }) => {
    const order = await loadOpenOrder(context, orderId);
    const { name, components } = await loadKit(context, kitId);
    if (components.length !== lineIds.length) refuse('kit-changed', { kit: name }, 'kitId');
    const lines = components.map(({ plantId, containerId, units: each }, at) => ({
      lineId: lineIds[at] ?? '',
      plantId,
      containerId,
      units: each * units,
      bedId,
      seedZone: null,
      wildType: false,
      untreated: false,
      alternatives: [],
      kit: { kitId, units },
    }));
    // Nobody typed these lines, so what does not fit the order is said of the kit.
    await insertLines(context, orderId, await checkLines(context, order, lines, () => 'kit.'));
    for (const lineId of lineIds) context.touched.line(lineId);
    return { lineIds };
  },
});
