import { addDays, type CalendarDate } from '../kernel/dates.ts';
import type { PlanLine } from './answer.ts';
import type { PlanDemand } from './demand-facts.ts';
import { areaOfStart } from './space/area.ts';
import { meanOf } from './start/amounts.ts';
import type { StartDraft } from './start/draft.ts';
import { gramsFor, mediumFor, type StartSize } from './start/size.ts';
import type { Sourced } from './start/take-seed.ts';
import { mondayOf } from './weeks.ts';

interface LineParts {
  draft: StartDraft;
  size: StartSize;
  sourced: Sourced;
  served: readonly { demand: PlanDemand; units: number; servedUnits: number }[];
  firstOn: CalendarDate;
}

/** One batch of the plan with everything its screen says. */
export function lineOf({ draft, size, sourced: { source, gramsLeft }, served, firstOn }: LineParts): PlanLine {
  const { protocol, timing, container, sownInto } = draft;
  const area = areaOfStart(draft, size, firstOn);
  const used = area.flatMap((cm2, week) => (cm2 > 0 ? [week] : []));
  return {
    key: draft.key,
    plantId: draft.plant.id,
    containerId: container.id,
    protocolId: protocol.protocolId,
    versionId: protocol.versionId,
    label: protocol.label,
    method: protocol.method,
    state: timing.state,
    startOn: timing.startOn,
    missedOn: timing.missedOn,
    stages: timing.schedule.stages,
    targetOn: timing.targetOn,
    readyOn: timing.readyOn,
    usualReadyOn: timing.usualReadyOn,
    servesOn: timing.servesOn,
    window: timing.window && { opensOn: timing.window.opensOn, closesOn: timing.window.closesOn },
    wantedUnits: draft.wantedUnits,
    plants: size.plants,
    unit: protocol.startUnit,
    units: size.units,
    trays: size.trays,
    counted: size.counted,
    startContainerId: protocol.startContainerId,
    sownIntoId: sownInto?.id ?? null,
    seedsPerCell: protocol.seedsPerCell,
    seeds: size.seeds,
    sourceId: source.id,
    grams: gramsFor(size.seeds, source),
    gramsLeft,
    mediumLitres: mediumFor(draft, size),
    potted: size.potted,
    cautiousPlants: size.cautiousPlants,
    usualPlants: size.usualPlants,
    share: meanOf(draft.success),
    restsOn: protocol.passing.map(({ stage, covers, share: passing, tried, batches }) => ({
      stage,
      covers,
      share: passing,
      tried,
      batches,
    })),
    potLife: draft.potLife,
    benchCm2: Math.max(0, ...area),
    benchFromOn: used[0] === undefined ? null : mondayOf(firstOn, used[0]),
    benchUntilOn: used.length === 0 ? null : addDays(mondayOf(firstOn, used.at(-1) ?? 0), 6),
    wantedFor: served.map(({ demand, units, servedUnits }) => ({
      demandId: demand.id,
      kind: demand.kind,
      on: demand.on,
      units,
      servedUnits,
      unitValue: demand.unitValue,
    })),
  };
}
