import { InputError, requireWhole } from '../../kernel/input.ts';

export interface GerminationCourse {
  /** Germinated of what was sown, 0 to 100. */
  percentage: number;
  /** Mean germination time in days; null where nothing germinated, as are both t50. */
  meanTimeDays: number | null;
  /** Days until (N + 1) / 2 of the N that germinated had done so (P. Coolbear, A. Francis and D. Grierson, 1984). */
  t50Coolbear: number | null;
  /** Days until N / 2 had done so (M. Farooq and others, 2005). */
  t50Farooq: number | null;
  /** Germinated a day: the sum of each day's count over its day (J. D. Maguire, 1962). */
  speed: number;
}

// The day, with a fraction, on which the running total reaches the target: on a straight line between the counts around it. The line begins with
// nothing on the day of sowing.
function dayReached(counts: readonly number[], target: number): number | null {
  let before = 0;
  for (const [index, count] of counts.entries()) {
    if (count > 0 && before + count >= target) return index + (target - before) / count;
    before += count;
  }
  return null;
}

/**
 * The course of a germination from the newly germinated seeds of each day, the first count one day after sowing (0 on days without any), and the
 * seeds sown. Throws InputError naming `dailyCounts` that are negative, no whole numbers or together more than were sown, or `sown` below 1.
 * Sources: beside each figure; mean time by R. H. Ellis and E. H. Roberts, 1981, Σ count × day / Σ count.
 */
export function germinationCourse(dailyCounts: readonly number[], sown: number): GerminationCourse {
  requireWhole('sown', sown, 1, Number.MAX_SAFE_INTEGER);
  const counts = dailyCounts.map((count) => requireWhole('dailyCounts', count, 0, sown));
  const germinated = counts.reduce((sum, count) => sum + count, 0);
  if (germinated > sown)
    throw new InputError('dailyCounts', `must be ${sown} or fewer together: that many were sown`, { most: sown });
  if (germinated === 0) return { percentage: 0, meanTimeDays: null, t50Coolbear: null, t50Farooq: null, speed: 0 };
  return {
    percentage: (100 * germinated) / sown,
    meanTimeDays: counts.reduce((sum, count, index) => sum + count * (index + 1), 0) / germinated,
    t50Coolbear: dayReached(counts, (germinated + 1) / 2),
    t50Farooq: dayReached(counts, germinated / 2),
    speed: counts.reduce((sum, count, index) => sum + count / (index + 1), 0),
  };
}
