import { addDays, type CalendarDate } from '../../kernel/dates.ts';
import { addSpan, subtractSpan } from '../../kernel/spans.ts';
import { plantBy, type PlantByState } from '../../pot-life/plant-by.ts';
import { type PotLifeBasis, winningRules } from '../../pot-life/rules.ts';
import { batchClocks, pottedClocks } from '../../propagation/batch-clocks.ts';
import type { BatchDays } from './batch-days.ts';
import type { PlanContainer, PlanPlant, PlanProtocol, PlanSeasons } from './facts.ts';

/** What the pot life of a planned batch allows. */
export interface PlannedPotLife {
  state: PlantByState;
  /** By when its plants must be out; null where nothing limits them. */
  plantByOn: CalendarDate | null;
  limitOn: CalendarDate | null;
  basis: PotLifeBasis | null;
  /** Whether it would be past that day before the last day it is wanted on. */
  passes: boolean;
  /** With `passes`: the first day of potting (container clock) or of coming up (confined clock) that would last until then; null where winter forbids it. */
  notBeforeOn: CalendarDate | null;
}

/** The first day from which a span reaches `until`. Spans of months are not exact backwards, so the days around are tried. */
function firstReaching(span: string, until: CalendarDate): CalendarDate {
  let on = addDays(subtractSpan(until, span), -3);
  while (addSpan(on, span) < until) on = addDays(on, 1);
  return on;
}

/**
 * The clocks of a batch that goes as planned, run to the last day on which its plants are wanted. It is taken to stand in the open in winter.
 * Throws InputError as plantBy does.
 */
export function plannedPotLife({
  protocol,
  days,
  startOn,
  startContainer,
  container,
  plant,
  seasons,
  wantedUntil,
}: {
  protocol: PlanProtocol;
  days: BatchDays;
  startOn: CalendarDate;
  startContainer: PlanContainer | null;
  container: PlanContainer;
  plant: PlanPlant;
  seasons: PlanSeasons;
  wantedUntil: CalendarDate;
}): PlannedPotLife {
  const batch = {
    method: protocol.method,
    unit: protocol.startUnit,
    containerKind: startContainer?.kind ?? null,
    startedOn: startOn,
  };
  const alive = days.aliveOn === null ? null : { on: days.aliveOn, assumed: true };
  const clocks =
    days.pottedOn === null ? batchClocks(batch, alive) : pottedClocks(batch, alive, container.kind, days.pottedOn);
  const rules = winningRules(seasons.rules, {
    lotId: null,
    plantId: plant.id,
    containerId: container.id,
    genus: plant.genus,
    rootHabit: plant.rootHabit,
  });
  const { state, plantByOn, limitOn, basis, ruleId } = plantBy({
    confinedOn: clocks.confinedOn,
    containerOn: clocks.containerOn,
    readyOn: days.readyOn,
    rules,
    windows: seasons.windows,
    containerMl: container.volumeMl,
    region: null,
    freezeMd: seasons.freezeMd,
    dormantMonths: plant.dormantMonths,
    coldSheltered: false,
  });
  const passes = plantByOn !== null && plantByOn < wantedUntil;
  const span = rules.find(({ id }) => id === ruleId)?.span ?? null;
  return {
    state,
    plantByOn,
    limitOn,
    basis,
    passes,
    notBeforeOn: passes && span !== null ? firstReaching(span, wantedUntil) : null,
  };
}
