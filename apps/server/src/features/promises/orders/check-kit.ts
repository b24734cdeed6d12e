import { promises } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { queryThen } from '../../../trpc/operation.ts';
import { loadKit } from '../../orders/kits/store.ts';
import { askedLine } from '../offers/asked-line.ts';
import { solver } from '../solving/solver.ts';
import { answerKits, type AskedKits } from './answer-kits.ts';

/** How many whole kits could be promised for a day, all components at once; each is looked at as a line behind all others. */
export const checkKit = queryThen({
  name: 'checkKit',
  isHeavy: true,
  input: promises.checkKit,
  roles: EVERYONE,
  read: async (context, { kitId, ...asked }): Promise<AskedKits> => {
    const { components } = await loadKit(context, kitId);
    const [first] = components;
    if (!first) throw new Error('a kit without components was stored');
    const { plantId, containerId } = first;
    const { scope, line } = await askedLine(
      context,
      { ...asked, plantId, containerId, seedZone: null, wildType: false, untreated: false },
      { looksAt: components },
    );
    return { scope, line, components };
  },
  after: (asked): Promise<promises.KitCheck> => solver.reckon('kits', asked.scope, asked, answerKits),
});
