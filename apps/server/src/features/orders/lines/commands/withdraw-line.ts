import { orders } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadOpenLine, setWithdrawn } from '../store.ts';

/** What was planted of the line stays planted; what was only promised is free again. */
export const withdrawLine = command({
  name: 'withdrawLine',
  input: orders.withdrawLine,
  roles: GROWERS,
  run: async (context, input) => {
    const { line, order } = await loadOpenLine(context, input.lineId);
    if (line.stagedUnits > 0) refuse('plants-are-staged', { order: order.code, units: line.stagedUnits }, 'lineId');
    await setWithdrawn(context, line.id);
    context.touched.line(line.id);
    return { lineId: line.id };
  },
});
