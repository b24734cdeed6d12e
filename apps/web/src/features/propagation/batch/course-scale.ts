import { daysBetween } from '@rootclock/domain';

/** A count of what lives, on a day. */
export interface CoursePoint {
  on: string;
  emergedUnits: number;
}

/** The round number an axis ends on, never below `most`; its half is a whole number as well. */
export function roundTop(most: number): number {
  if (most <= 10) return Math.max(4, Math.ceil(most / 2) * 2);
  const power = 10 ** Math.floor(Math.log10(most));
  return [1, 2, 3, 4, 5, 6, 8, 10].map((step) => step * power).find((top) => top >= most) ?? most;
}

export interface Course {
  points: { x: number; y: number; point: CoursePoint; days: number }[];
  topUnits: number;
  lastDays: number;
}

/** Counts as points of a plane: x and y from 0 to 1, the start of the batch at 0 and the axis's round top at 1. */
export function courseOf(counts: readonly CoursePoint[], startedOn: string, today: string): Course {
  const lastDays = Math.max(1, daysBetween(startedOn, counts.at(-1)?.on ?? today));
  const topUnits = roundTop(Math.max(0, ...counts.map((count) => count.emergedUnits)));
  const points = counts.map((point) => {
    const days = daysBetween(startedOn, point.on);
    return { point, days, x: days / lastDays, y: point.emergedUnits / topUnits };
  });
  return { points, topUnits, lastDays };
}
