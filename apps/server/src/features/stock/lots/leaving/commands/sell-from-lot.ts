import { stock } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { command } from '../../../../../trpc/operation.ts';
import { leave } from '../leave.ts';

export const sellFromLot = command({
  name: 'sellFromLot',
  input: stock.sellFromLot,
  roles: FIELD,
  run: (context, input) => leave(context, 'sell', input),
});
