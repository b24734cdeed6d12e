import { latestOf, type PlanDemand, type PlanSupply, type Wearing } from '@rootclock/domain';
import type { ReadContext } from '../../../trpc/operation.ts';
import { readyFor } from '../../promises/allocation/judging.ts';
import { loadScope } from '../../promises/allocation/load.ts';
import { judgeAll } from '../../promises/allocation/plan.ts';
import { itemOf, openUnits, type Scope, servedOn } from '../../promises/allocation/scope.ts';
import type { ExpectedRow } from './store.ts';

/** Everything that is wanted and everything there is, with the open lines by id for their names. */
export interface WantedAndThere {
  scope: Scope;
  demands: PlanDemand[];
}

/** What open lines still want, with what is reserved for them and what was judged unfit, and then what is only expected. `items` have their supply loaded as well. */
export async function loadDemands(
  context: ReadContext,
  expected: readonly ExpectedRow[],
  items: readonly { plantId: string; containerId: string }[] = [],
): Promise<WantedAndThere> {
  const scope = await loadScope(context, { all: true, items: [...expected, ...items] });
  const judged = judgeAll(scope);
  const ofLines = scope.lines
    .filter((line) => openUnits(line) > 0)
    .map((line): PlanDemand => ({
      id: line.id,
      kind: line.orderKind,
      rank: line.rank,
      on: servedOn(line, context.today),
      units: openUnits(line),
      ...asked(line.accepts),
      accepts: line.accepts,
      refuses: [...(judged.get(line.id) ?? [])].filter(([, { serves }]) => !serves).map(([id]) => id),
      held: scope.reservations
        .filter(({ lineId }) => lineId === line.id)
        .map(({ supplyId, units }) => ({ supplyId, units })),
      unitValue: null,
      seedZone: line.seedZone,
      wildType: line.wildType,
    }));
  const ofExpected = expected.map(({ id, plantId, containerId, wantedOn, units, unitValueMinor }): PlanDemand => ({
    id,
    kind: 'expected',
    rank: null,
    on: wantedOn,
    units,
    plantId,
    containerId,
    accepts: [{ item: itemOf(plantId, containerId), penalty: 0 }],
    refuses: [],
    held: [],
    unitValue: unitValueMinor,
    seedZone: null,
    wildType: false,
  }));
  return { scope, demands: [...ofLines, ...ofExpected] };
}

/** The item a line asks for; what else it accepts is no reason to grow that. */
function asked(accepts: readonly { item: string; penalty: number }[]): { plantId: string; containerId: string } {
  const [plantId = '', containerId = ''] = (accepts.find(({ penalty }) => penalty === 0)?.item ?? '').split('@');
  return { plantId, containerId };
}

/** Lots and batches on the way, as they are expected to live on. What is held serves nobody. */
export function suppliesOf(
  { supplies, today }: Pick<Scope, 'supplies' | 'today'>,
  wearing: (plantId: string) => Wearing,
  unitsOf: (supply: Scope['supplies'][number]) => number = ({ units }) => units,
): PlanSupply[] {
  return supplies
    .filter(({ held }) => !held)
    .map((supply) => {
      const readyOn = readyFor(supply, today);
      return {
        id: supply.id,
        item: supply.item,
        units: unitsOf(supply),
        readyOn,
        plantByOn: supply.plantByOn,
        // A batch's yield was reckoned for its ready day, so that losses before are in it already.
        countedOn: supply.kind === 'batch' && readyOn !== null ? latestOf(readyOn, today) : today,
        ...wearing(supply.plantId),
      };
    });
}
