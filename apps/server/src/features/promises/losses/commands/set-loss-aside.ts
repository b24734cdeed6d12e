import { promises } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadLoss, setAside } from '../store.ts';

export const setLossAside = command({
  name: 'setLossAside',
  input: promises.setLossAside,
  roles: GROWERS,
  run: async (context, { lossId, note }) => {
    const { lineId, orderCode, settledOn, settledHow } = await loadLoss(context, lossId);
    if (settledOn !== null && settledHow !== null)
      refuse('loss-is-settled', { order: orderCode, how: settledHow, on: settledOn }, 'lossId');
    await setAside(context, lossId, note);
    context.touched.features.add('promises');
    return { lossId, lineId };
  },
});
