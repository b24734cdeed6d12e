import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, fromDayNumber, toDayNumber } from '../kernel/dates.ts';
import { readyFrom, stageProgress } from './batch-stages.ts';
import { forwardAt } from './protocol/schedule.ts';
import { type ProtocolPlan, STAGE_KINDS, type StagePlan } from './protocol/stages.ts';

const stage = (
  kind: StagePlan['kind'],
  shortDays: number,
  usualDays: number,
  longDays: number,
  more: Partial<StagePlan> = {},
): StagePlan => ({
  kind,
  shortDays,
  usualDays,
  longDays,
  share: 1,
  season: null,
  rests: false,
  ...more,
});
const milkweed: ProtocolPlan = {
  stages: [
    stage('stratification', 28, 30, 60),
    stage('sowing', 0, 0, 0),
    stage('emergence', 7, 14, 28),
    stage('growing-on', 60, 70, 100, { rests: true }),
    stage('ready', 0, 0, 0),
  ],
  dormantMonths: [10, 11, 12, 1, 2, 3],
};
const shown = (progress: ReturnType<typeof stageProgress>) =>
  progress.map(({ state, begunOn, shouldBeginOn }) => [state, begunOn, shouldBeginOn]);

describe('the stages of a batch', () => {
  it('are reckoned on from the day the current one began', () => {
    expect(shown(stageProgress(milkweed, '2026-03-01', [{ position: 0, on: '2026-03-01' }], '2026-03-10'))).toEqual([
      ['current', '2026-03-01', '2026-03-01'],
      ['coming', null, '2026-03-31'],
      ['coming', null, '2026-03-31'],
      ['coming', null, '2026-04-14'],
      ['coming', null, '2026-06-23'],
    ]);
  });
  it('keep the day on which the next should have begun, and put those after it off to today', () => {
    const progress = stageProgress(milkweed, '2026-03-01', [{ position: 0, on: '2026-03-01' }], '2026-04-20');
    expect(progress[0]).toMatchObject({ state: 'current', dueOn: '2026-03-31', lateOn: '2026-04-30' });
    expect(progress.slice(1, 4).map(({ shouldBeginOn }) => shouldBeginOn)).toEqual([
      '2026-03-31',
      '2026-04-20',
      '2026-05-04',
    ]);
  });
  it('are not late on the last long day', () => {
    expect(stageProgress(milkweed, '2026-03-01', [{ position: 0, on: '2026-03-01' }], '2026-04-30')[0]?.state).toBe(
      'current',
    );
  });
  it('are late the day after', () => {
    expect(stageProgress(milkweed, '2026-03-01', [{ position: 0, on: '2026-03-01' }], '2026-05-01')[0]?.state).toBe(
      'late',
    );
  });
  it('are done where they were passed over without a day', () => {
    expect(
      stageProgress(milkweed, '2026-03-01', [{ position: 2, on: '2026-03-01' }], '2026-03-02')
        .map(({ state, begunOn }) => [state, begunOn])
        .slice(0, 3),
    ).toEqual([
      ['done', null],
      ['done', null],
      ['current', '2026-03-01'],
    ]);
  });
  it('make no headway while the plant is dormant', () => {
    expect(stageProgress(milkweed, '2026-07-01', [{ position: 3, on: '2026-09-11' }], '2026-09-12')[3]).toMatchObject({
      dueOn: '2027-05-21',
      lateOn: '2027-06-20',
    });
  });
  it('are never late once ready', () => {
    expect(stageProgress(milkweed, '2026-03-01', [{ position: 4, on: '2026-06-23' }], '2027-06-23')[4]?.state).toBe(
      'current',
    );
  });
  it('are all to come where none has begun', () => {
    expect(stageProgress(milkweed, '2026-03-01', [], '2026-03-02').every(({ state }) => state === 'coming')).toBe(true);
  });
  it.each([[5], [-1], [1.5]])('do not include a position %s that the protocol lacks', (position) => {
    expect(() => stageProgress(milkweed, '2026-03-01', [{ position, on: '2026-03-01' }], '2026-03-02')).toThrow(
      expect.objectContaining({ name: 'InputError', argument: 'begun.position' }),
    );
  });
});

describe('a stage whose successor has a season', () => {
  const sown = (season: StagePlan['season']): ProtocolPlan => ({
    stages: [stage('stratification', 28, 30, 60), stage('sowing', 0, 0, 0, { season })],
    dormantMonths: [],
  });
  it('goes on until that season opens, and is late as many days after', () => {
    expect(
      stageProgress(
        sown({ fromMd: '03-01', toMd: '05-31' }),
        '2026-11-01',
        [{ position: 0, on: '2026-11-01' }],
        '2026-11-02',
      )[0],
    ).toMatchObject({ dueOn: '2027-03-01', lateOn: '2027-03-31' });
  });
  it('is late when that season closes', () => {
    expect(
      stageProgress(
        sown({ fromMd: '03-01', toMd: '05-31' }),
        '2027-04-15',
        [{ position: 0, on: '2027-04-15' }],
        '2027-04-16',
      )[0],
    ).toMatchObject({ dueOn: '2027-05-15', lateOn: '2027-05-31' });
  });
});

describe('a second winter', () => {
  const waiting = [{ position: 2, on: '2026-04-01' }];
  it('puts what is due and late off by a year', () => {
    expect(stageProgress(milkweed, '2026-03-01', waiting, '2026-06-02', '2026-06-01')[2]).toMatchObject({
      state: 'current',
      begunOn: '2026-04-01',
      dueOn: '2027-04-15',
      lateOn: '2027-04-29',
    });
  });
  it('counts once however often it is said in a year', () => {
    expect(stageProgress(milkweed, '2026-03-01', waiting, '2026-12-02', '2026-12-01')[2]?.lateOn).toBe('2027-04-29');
  });
  it('may be followed by a third', () => {
    expect(stageProgress(milkweed, '2026-03-01', waiting, '2027-06-02', '2027-06-01')[2]?.lateOn).toBe('2028-04-29');
  });
  it('does not concern a stage that began after it', () => {
    expect(
      stageProgress(
        milkweed,
        '2026-03-01',
        [...waiting, { position: 3, on: '2027-04-20' }],
        '2027-04-21',
        '2026-06-01',
      )[3]?.dueOn,
    ).toBe('2027-06-29');
  });
});

describe('the ready day of a batch', () => {
  const on = (today: string, pace: 'usual' | 'long') =>
    readyFrom(milkweed, stageProgress(milkweed, '2026-03-01', [{ position: 0, on: '2026-03-01' }], today), today, pace);
  it('follows at the usual pace', () => expect(on('2026-03-02', 'usual')).toBe('2026-06-23'));
  it('follows at the long pace', () => expect(on('2026-03-02', 'long')).toBe('2026-09-05'));
  it('is put off by what is overdue', () => expect(on('2026-04-10', 'usual')).toBe('2026-07-03'));
});

const monthDay = fc
  .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 28 }))
  .map(([month, day]) => `${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`);
const plans: fc.Arbitrary<ProtocolPlan> = fc.record({
  stages: fc.subarray([...STAGE_KINDS], { minLength: 1 }).chain((kinds) =>
    fc.tuple(
      ...kinds.map((kind) =>
        fc
          .record({
            days: fc.tuple(fc.nat(60), fc.nat(60), fc.nat(60)),
            season: fc.option(fc.record({ fromMd: monthDay, toMd: monthDay })),
            rests: fc.boolean(),
          })
          .map(({ days, season, rests }): StagePlan =>
            stage(kind, days[0], days[0] + days[1], days[0] + days[1] + days[2], { season, rests }),
          ),
      ),
    ),
  ),
  dormantMonths: fc.uniqueArray(fc.integer({ min: 1, max: 12 }), { maxLength: 7 }),
});
const dates = fc.integer({ min: toDayNumber('2024-01-01'), max: toDayNumber('2030-12-31') }).map(fromDayNumber);

describe('whatever the protocol', () => {
  it('a batch that has just begun is ready on the day its schedule says, at either pace', () => {
    fc.assert(
      fc.property(plans, dates, (plan, startOn) => {
        const [first] = forwardAt(plan, startOn, 'usual').stages;
        const begunOn = first?.beginsOn ?? startOn;
        const progress = stageProgress(plan, begunOn, [{ position: 0, on: begunOn }], begunOn);
        expect(progress.map(({ shouldBeginOn }) => shouldBeginOn)).toEqual(
          forwardAt(plan, begunOn, 'usual').stages.map(({ beginsOn }) => beginsOn),
        );
        for (const pace of ['usual', 'long'] as const)
          expect(readyFrom(plan, progress, begunOn, pace)).toBe(forwardAt(plan, begunOn, pace).readyOn);
      }),
      { seed: 31, numRuns: 300 },
    );
  });
  it('exactly one stage is the current one, and none is late before it is due', () => {
    fc.assert(
      fc.property(plans, dates, fc.nat(10), fc.nat(800), (plan, startOn, at, days) => {
        const position = at % plan.stages.length;
        const progress = stageProgress(plan, startOn, [{ position, on: startOn }], addDays(startOn, days));
        expect(
          progress.filter(({ state }) => state === 'current' || state === 'late').map((each) => each.position),
        ).toEqual([position]);
        expect(
          progress.every(
            ({ begunOn, shouldBeginOn, dueOn, lateOn }) => (begunOn ?? shouldBeginOn) <= dueOn && dueOn <= lateOn,
          ),
        ).toBe(true);
      }),
      { seed: 32, numRuns: 300 },
    );
  });
  it('a day of waiting never brings the ready day nearer', () => {
    fc.assert(
      fc.property(plans, dates, fc.nat(400), (plan, startOn, days) => {
        const ready = (today: string) =>
          readyFrom(plan, stageProgress(plan, startOn, [{ position: 0, on: startOn }], today), today, 'usual') ?? '';
        expect(ready(addDays(startOn, days)) <= ready(addDays(startOn, days + 1))).toBe(true);
      }),
      { seed: 33, numRuns: 300 },
    );
  });
});
