import {
  daysBetween,
  PROPAGATION_METHODS,
  type PropagationMethod,
  type TimeToObservation,
  timeToQuantiles,
} from '@rootclock/domain';
import type { BatchCourse } from './reads.ts';

/** How long batches took: the days by which a tenth, half and nine tenths of them had come so far. */
export interface TimeTaken {
  /** Batches that it rests on, and those of them that are not so far yet and count as long as they were watched. */
  batches: number;
  unfinished: number;
  lowDays: number | null;
  medianDays: number | null;
  highDays: number | null;
}

export interface TimesOfMethod {
  method: PropagationMethod;
  toPotting: TimeTaken;
  toReady: TimeTaken;
}

function timeTaken(observations: readonly TimeToObservation[]): TimeTaken {
  const [lowDays = null, medianDays = null, highDays = null] = timeToQuantiles(observations, [0.1, 0.5, 0.9]);
  return {
    batches: observations.length,
    unfinished: observations.filter(({ reached }) => !reached).length,
    lowDays,
    medianDays,
    highDays,
  };
}

/**
 * Times from the start to the first potting and to the first root ball that held, by method. Batches of which nothing was ever potted and nothing stands
 * have no such time and are left out; what is still under way, or ended without a root ball being looked at, counts as long as it was watched.
 */
export function timesOf(courses: readonly BatchCourse[], today: string): TimesOfMethod[] {
  return PROPAGATION_METHODS.flatMap((method) => {
    const own = courses.filter(
      (course) => course.method === method && (course.pottedOn !== null || course.endedOn === null),
    );
    if (own.length === 0) return [];
    const observed = (course: BatchCourse, on: string | null): TimeToObservation => ({
      days: Math.max(0, daysBetween(course.startedOn, on ?? course.endedOn ?? today)),
      reached: on !== null,
    });
    return [
      {
        method,
        toPotting: timeTaken(own.map((course) => observed(course, course.pottedOn))),
        toReady: timeTaken(own.map((course) => observed(course, course.readyOn))),
      },
    ];
  });
}
