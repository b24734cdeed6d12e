import { forwardSchedule, type StagePlan } from '@rootclock/domain';
import { describe, expect, it } from 'vitest';
import { scheduleScale } from './schedule-scale.ts';

const stage = (kind: StagePlan['kind'], shortDays: number, usualDays: number, longDays: number): StagePlan => ({
  kind,
  shortDays,
  usualDays,
  longDays,
  share: 1,
  season: null,
  rests: false,
});
const of = (...stages: StagePlan[]) => forwardSchedule({ stages, dormantMonths: [] }, '2026-03-01');

describe('a schedule drawn', () => {
  const drawn = scheduleScale(
    of(stage('sowing', 0, 0, 0), stage('emergence', 10, 20, 40), stage('growing-on', 30, 40, 60)),
    '2026-03-26',
  );
  it('reaches from the first day to the last of the slow pace', () => {
    expect(drawn.bars).toEqual([
      { kind: 'sowing', from: 0, to: 0, earliest: 0, latest: 0 },
      { kind: 'emergence', from: 0, to: 0.2, earliest: 0, latest: 0 },
      { kind: 'growing-on', from: 0.2, to: 0.6, earliest: 0.1, latest: 0.4 },
    ]);
  });
  it('marks today where it lies within, and first days of months', () => {
    expect(drawn.today).toBe(0.25);
    expect(drawn.ticks.map(({ on }) => on)).toEqual(['2026-04-01', '2026-05-01', '2026-06-01']);
    expect(scheduleScale(of(stage('emergence', 1, 2, 3)), '2027-01-01').today).toBeNull();
  });
  it('has at most four marks over two years', () => {
    expect(scheduleScale(of(stage('growing-on', 700, 730, 760)), '2026-03-01').ticks.map(({ on }) => on)).toEqual([
      '2026-07-01',
      '2027-01-01',
      '2027-07-01',
      '2028-01-01',
    ]);
  });
  it('of stages without any length is drawn all the same', () => {
    expect(scheduleScale(of(stage('sowing', 0, 0, 0)), '2026-03-01').bars).toEqual([
      { kind: 'sowing', from: 0, to: 0, earliest: 0, latest: 0 },
    ]);
  });
});
