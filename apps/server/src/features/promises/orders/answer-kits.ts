import type { promises } from '@rootclock/contracts';
import { plantsIn, promisableKits, takeOutPins, traysIn } from '@rootclock/domain';
import type { loadKit } from '../../orders/kits/store.ts';
import { instanceOf, judgeAll } from '../allocation/plan.ts';
import { itemOf, type Scope, type ScopeLine, servedOn } from '../allocation/scope.ts';
import { askOf } from '../check/answer-check.ts';

/** Which kit was asked for, with everything it has to look at. */
export interface AskedKits {
  scope: Scope;
  /** The line of its first component, that nobody has written down yet. */
  line: ScopeLine;
  components: Awaited<ReturnType<typeof loadKit>>['components'];
}

export function answerKits({ scope, line, components }: AskedKits): promises.KitCheck {
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
}
