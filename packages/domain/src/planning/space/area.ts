import { addDays, type CalendarDate } from '../../kernel/dates.ts';
import type { StartDraft } from '../start/draft.ts';
import type { PlanContainer } from '../start/facts.ts';
import type { StartSize } from '../start/size.ts';
import { PLAN_WEEKS, weekOf } from '../weeks.ts';

/** Bench area by week from the first, in whole square centimetres, so that sums are exact. */
export type AreaByWeek = number[];

export const noArea = (): AreaByWeek => Array.from({ length: PLAN_WEEKS }, () => 0);

/** Square centimetres that so many pots, trays or flats cover, standing pot to pot; 0 where nobody measured the container, and in the ground. */
export function areaOf(container: PlanContainer | null, containers: number): number {
  return container === null || container.kind === 'ground' || container.footprintMm2 === null
    ? 0
    : Math.ceil((containers * container.footprintMm2) / 100);
}

/** Square centimetres that so many plants take in a container: cells are counted in whole trays. */
export const areaOfPlants = (container: PlanContainer | null, plants: number): number =>
  areaOf(
    container,
    container !== null && container.cells !== null && container.kind === 'tray'
      ? Math.ceil(plants / container.cells)
      : plants,
  );

/**
 * Lets one batch or lot cover an area in every week that has a day from `from` to `to`, both included. Where it covers different areas in one week, as
 * trays give way to pots, the larger counts. What lies before the first week or beyond the last is left out.
 */
export function cover(
  area: AreaByWeek,
  firstOn: CalendarDate,
  { from, to, cm2 }: { from: CalendarDate; to: CalendarDate; cm2: number },
): void {
  const last = Math.min(area.length - 1, weekOf(firstOn, to));
  for (let week = Math.max(0, weekOf(firstOn, from)); week <= last; week++) area[week] = Math.max(area[week] ?? 0, cm2);
}

/** Adds up what several batches and lots cover. */
export function sumOfAreas(areas: readonly AreaByWeek[]): AreaByWeek {
  const total = noArea();
  for (const area of areas) for (const [week, cm2] of area.entries()) total[week] = (total[week] ?? 0) + cm2;
  return total;
}

/**
 * The bench area of a planned batch by week. Packs in the cold take none; trays stand from sowing on until they are potted; pots stand from then until
 * the last day on which they are wanted, or until they must be planted where that comes first.
 */
export function areaOfStart(draft: StartDraft, size: StartSize, firstOn: CalendarDate): AreaByWeek {
  const { days, sownInto, container, potLife, wantedUntil } = draft;
  const area = noArea();
  const leaveOn = potLife.plantByOn !== null && potLife.plantByOn < wantedUntil ? potLife.plantByOn : wantedUntil;
  const traysUntil = days.pottedOn === null ? leaveOn : addDays(days.pottedOn, -1);
  if (traysUntil >= days.sownOn)
    cover(area, firstOn, { from: days.sownOn, to: traysUntil, cm2: areaOf(sownInto, size.trays ?? size.counted) });
  if (days.pottedOn !== null && leaveOn >= days.pottedOn)
    cover(area, firstOn, { from: days.pottedOn, to: leaveOn, cm2: areaOfPlants(container, size.potted) });
  return area;
}
