import { stock } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../../trpc/operation.ts';
import { reIdentify } from '../re-identify.ts';

export const reIdentifyLot = command({
  name: 'reIdentifyLot',
  input: stock.reIdentifyLot,
  roles: GROWERS,
  run: (context, { lotId, ...said }) => reIdentify(context, { kind: 'lot', id: lotId }, said),
});
