import { addDays, type CalendarDate } from '../../kernel/dates.ts';
import { compareText } from '../../kernel/text.ts';
import type { Given } from '../missing.ts';
import type { PlanContainer } from '../start/facts.ts';
import { mondayOf, PLAN_WEEKS, weekStart } from '../weeks.ts';
import { type AreaByWeek, areaOf, areaOfPlants, cover, noArea, sumOfAreas } from './area.ts';

/** What stands on measured benches now, or is on the way there: a lot, or a batch in trays that will be potted. */
export interface StandingUnits {
  /** As the supply that it is: what is taken of it leaves the bench on that day. */
  id: string;
  /** Trays, or pots of a lot, with the container they stand in; none for packs. */
  now: { containerId: string; containers: number } | null;
  /** Plants that stand in a container of their own from a day on: a lot's from the beginning. */
  potted: { containerId: string; plants: number; fromOn: CalendarDate } | null;
  /** By when what nobody takes has left; null where nothing drives it out. */
  plantByOn: CalendarDate | null;
}

/** The stretches of days between which the number of plants changes, as plants are taken away. */
function stretches(
  plants: number,
  fromOn: CalendarDate,
  untilOn: CalendarDate,
  taken: readonly Given[],
): { plants: number; from: CalendarDate; to: CalendarDate }[] {
  const rows: { plants: number; from: CalendarDate; to: CalendarDate }[] = [];
  let left = plants;
  let from = fromOn;
  for (const { on, plants: leaving } of [...taken].sort((a, b) => compareText(a.on, b.on))) {
    if (on >= from && on < untilOn) {
      rows.push({ plants: left, from, to: on });
      from = addDays(on, 1);
    }
    left = Math.max(0, left - leaving);
  }
  return [...rows, { plants: left, from, to: untilOn }].filter((row) => row.plants > 0 && row.from <= row.to);
}

/**
 * The bench area of what stands already, by week from this week's Monday. Plants that somebody takes leave on that day; what nobody takes stays until it
 * must be planted, or for as long as the plan looks. Losses free no area, since nobody moves pots together for them. Square centimetres.
 */
export function standingArea(
  standing: readonly StandingUnits[],
  given: readonly Given[],
  containers: ReadonlyMap<string, PlanContainer>,
  today: CalendarDate,
): AreaByWeek {
  const firstOn = weekStart(today);
  const lastOn = addDays(mondayOf(firstOn, PLAN_WEEKS), -1);
  const takenOf = new Map<string, Given[]>();
  for (const row of given) takenOf.set(row.supplyId, [...(takenOf.get(row.supplyId) ?? []), row]);
  const containerOf = (id: string) => containers.get(id) ?? null;
  return sumOfAreas(
    standing.map(({ id, now, potted, plantByOn }) => {
      const area = noArea();
      // What is past its day stands all the same until somebody plants it.
      const untilOn = plantByOn === null ? lastOn : plantByOn < today ? addDays(firstOn, 6) : plantByOn;
      if (now)
        cover(area, firstOn, {
          from: today,
          to: potted === null ? untilOn : addDays(potted.fromOn, -1),
          cm2: areaOf(containerOf(now.containerId), now.containers),
        });
      for (const { plants, from, to } of potted === null
        ? []
        : stretches(potted.plants, potted.fromOn < today ? today : potted.fromOn, untilOn, takenOf.get(id) ?? [])) {
        cover(area, firstOn, { from, to, cm2: areaOfPlants(containerOf(potted?.containerId ?? ''), plants) });
      }
      return area;
    }),
  );
}
