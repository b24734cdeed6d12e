import { daysBetween } from '@rootclock/domain';

/** A count of what lives, on a day. */
export interface CoursePoint {
  on: string;
  emergedUnits: number;
}

/** The counts of a batch. Without knowing what was sown there is no share, and nothing to set beside other batches. */
export interface CountedCourse {
  code: string;
  startedOn: string;
  sown: number | null;
  counts: readonly CoursePoint[];
}

/** The round number an axis ends on, never below `most`; its half is a whole number as well. */
export function roundTop(most: number): number {
  if (most <= 10) return Math.max(4, Math.ceil(most / 2) * 2);
  const power = 10 ** Math.floor(Math.log10(most));
  return [1, 2, 3, 4, 5, 6, 8, 10].map((step) => step * power).find((top) => top >= most) ?? most;
}

export interface CourseLine {
  code: string;
  points: { x: number; y: number; days: number; on: string }[];
}

export interface Course {
  own: CourseLine;
  earlier: CourseLine[];
  /** The top of the upright axis: per cent of what was sown, or units where nobody knows it. */
  top: number;
  inShares: boolean;
  lastDays: number;
}

const PERCENT = 100;

/**
 * Counts as points of a plane, x and y from 0 to 1: days since each batch's own start, and the per cent of what it sowed. Where it is not known what
 * this one sowed its counts stand alone, in units.
 */
export function courseOf(own: CountedCourse, earlier: readonly CountedCourse[], today: string): Course {
  const inShares = own.sown !== null && own.sown > 0;
  const shown = inShares ? earlier.filter(({ sown }) => sown !== null && sown > 0) : [];
  const heightOf = ({ sown }: CountedCourse, { emergedUnits }: CoursePoint) =>
    inShares && sown ? (PERCENT * emergedUnits) / sown : emergedUnits;
  const all = [own, ...shown];
  const lastDays = Math.max(
    1,
    ...all.map(({ startedOn, counts }) =>
      daysBetween(startedOn, counts.at(-1)?.on ?? (startedOn < today ? today : startedOn)),
    ),
  );
  const top = roundTop(Math.max(0, ...all.flatMap((course) => course.counts.map((point) => heightOf(course, point)))));
  const lineOf = (course: CountedCourse): CourseLine => ({
    code: course.code,
    points: course.counts.map((point) => {
      const days = daysBetween(course.startedOn, point.on);
      return { x: days / lastDays, y: heightOf(course, point) / top, days, on: point.on };
    }),
  });
  return { own: lineOf(own), earlier: shown.map(lineOf), top, inShares, lastDays };
}
