import { promises } from '@rootclock/contracts';
import { EVERYONE, plantsIn, promisableKits, takeOutPins, traysIn } from '@rootclock/domain';
import { query } from '../../../trpc/operation.ts';
import { askOf } from '../check/check-promise.ts';
import { askedLine } from '../offers/asked-line.ts';
import { instanceOf, judgeAll } from '../planning/plan.ts';
import { itemOf, type ScopeLine, servedOn } from '../planning/scope.ts';
import { loadKit } from '../../orders/kits/store.ts';

/** How many whole kits could be promised for a day, all components at once; each is looked at as a line behind all others. */
export const checkKit = query({
  name: 'checkKit',
  isHeavy: true,
  input: promises.checkKit,
  roles: EVERYONE,
  read: async (context, { kitId, ...asked }): Promise<promises.KitCheck> => {
    const { components } = await loadKit(context, kitId);
    const [first] = components;
    if (!first) throw new Error('a kit without components was stored');
    const { plantId, containerId } = first;
    const { scope, line } = await askedLine(
      context,
      { ...asked, plantId, containerId, seedZone: null, wildType: false, untreated: false },
      { looksAt: components },
    );
    const { rest: instance } = takeOutPins(instanceOf(scope, judgeAll(scope)));
    const asks = components.map((component) => {
      const { units, cells } = component;
      const own: ScopeLine = {
        ...line,
        plantId: component.plantId,
        containerCode: component.containerCode,
        cells,
        units,
        accepts: [{ item: itemOf(component.plantId, component.containerId), penalty: 0 }],
      };
      return { ...askOf(own, scope), units: traysIn(units, cells) };
    });
    const { kits, alone } = promisableKits(instance, asks);
    return {
      on: servedOn(line, scope.today),
      kits,
      components: components.map((component, at) => ({
        ...component,
        promisableUnits: plantsIn(alone[at] ?? 0, component.cells),
      })),
    };
  },
});
