import { stock } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { command } from '../../../../../trpc/operation.ts';
import { leave } from '../leave.ts';

export const giveFromLot = command({
  name: 'giveFromLot',
  input: stock.giveFromLot,
  roles: FIELD,
  run: (context, input) => leave(context, 'give', input),
});
