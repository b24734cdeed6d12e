import { stock } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../../trpc/operation.ts';
import { reIdentify } from '../re-identify.ts';

export const reIdentifySource = command({
  name: 'reIdentifySource',
  input: stock.reIdentifySource,
  roles: GROWERS,
  run: (context, { sourceId, ...said }) => reIdentify(context, { kind: 'source', id: sourceId }, said),
});
