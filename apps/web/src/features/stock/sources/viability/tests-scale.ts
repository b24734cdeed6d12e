import { daysBetween } from '@rootclock/domain';

/** A test as it is drawn: its mean and the span of its replicates, shares 0 to 1. */
export interface TestPoint {
  testedOn: string;
  seedsPerReplicate: number;
  replicates: readonly number[];
  meanShare: number;
}

export interface DrawnTest<Test> {
  test: Test;
  /** From 0 at the first day to 1 at the last. */
  x: number;
  mean: number;
  low: number;
  high: number;
}

/** Tests as points over time, from gathering (or the first test) to today, the oldest first. */
export function drawTests<Test extends TestPoint>(
  tests: readonly Test[],
  gatheredOn: string | null,
  today: string,
): { fromOn: string; points: DrawnTest<Test>[] } {
  const sorted = [...tests].sort((a, b) => (a.testedOn < b.testedOn ? -1 : 1));
  const fromOn = gatheredOn ?? sorted[0]?.testedOn ?? today;
  const days = Math.max(1, daysBetween(fromOn, today));
  return {
    fromOn,
    points: sorted.map((test) => ({
      test,
      x: Math.min(1, Math.max(0, daysBetween(fromOn, test.testedOn) / days)),
      mean: test.meanShare,
      low: Math.min(...test.replicates) / test.seedsPerReplicate,
      high: Math.max(...test.replicates) / test.seedsPerReplicate,
    })),
  };
}
