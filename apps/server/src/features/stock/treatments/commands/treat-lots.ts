import { stock } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadSelection } from '../../lots/selection.ts';
import { treat } from '../treat.ts';

export const treatLots = command({
  name: 'treatLots',
  input: stock.treatLots,
  roles: FIELD,
  run: async (context, { lotIds, ...applied }) =>
    treat(context, await loadSelection(context, { lotIds }), null, applied),
});
