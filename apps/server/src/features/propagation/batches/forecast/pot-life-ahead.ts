import {
  type BatchUnit,
  plantBy,
  type PlantByState,
  pottedClocks,
  type PropagationMethod,
  STAGE_KINDS,
  type StageKind,
  type StageProgress,
  winningRules,
} from '@rootclock/domain';
import type { ReadContext } from '../../../../trpc/operation.ts';
import { loadClockRules } from '../../../pot-life/clocks-store.ts';
import { readContainers, readPlantReach } from '../starting/reads.ts';

/** By when the plants of a batch would have to leave their pots, if all goes at the usual pace. */
export interface PotLifeAhead {
  pottedOn: string;
  state: PlantByState;
  plantByOn: string | null;
  limitOn: string | null;
}

interface Ahead {
  plantId: string;
  method: PropagationMethod;
  unit: BatchUnit;
  startContainerId: string | null;
  targetContainerId: string | null;
  startedOn: string;
  readyOn: string | null;
  progress: readonly StageProgress[];
}

const rank = (kind: StageKind) => STAGE_KINDS.indexOf(kind);

/** It is taken that the plants are potted when growing on should begin, and stand in the open in winter. Null without a container to stand in. */
export async function potLifeAhead(
  context: ReadContext,
  { plantId, method, unit, startContainerId, targetContainerId, startedOn, readyOn, progress }: Ahead,
): Promise<PotLifeAhead | null> {
  const plant = await readPlantReach(context, plantId);
  const containers = await readContainers(
    context,
    [startContainerId, targetContainerId].filter((id) => id !== null),
  );
  const target = containers.find(({ id }) => id === targetContainerId);
  const beginning = (from: StageKind) => progress.find(({ kind }) => rank(kind) >= rank(from));
  const potting = beginning('growing-on');
  if (!plant || !target || !potting) return null;
  const pottedOn = potting.begunOn ?? potting.shouldBeginOn;
  const up = beginning('pricking-out');
  const firstAlive = up ? { on: up.begunOn ?? up.shouldBeginOn, assumed: true } : null;
  const batch = {
    method,
    unit,
    containerKind: containers.find(({ id }) => id === startContainerId)?.kind ?? null,
    startedOn,
  };
  const clocks = pottedClocks(batch, firstAlive, target.kind, pottedOn);
  const { rules, windows, freezeMd } = await loadClockRules(context);
  const { state, plantByOn, limitOn } = plantBy({
    confinedOn: clocks.confinedOn,
    containerOn: clocks.containerOn,
    readyOn,
    windows,
    containerMl: target.volumeMl,
    region: null,
    freezeMd,
    dormantMonths: plant.dormantMonths,
    coldSheltered: false,
    rules: winningRules(rules, {
      lotId: null,
      plantId,
      containerId: target.id,
      genus: plant.genus,
      rootHabit: plant.rootHabit,
    }),
  });
  return { pottedOn, state, plantByOn, limitOn };
}
