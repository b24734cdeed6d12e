import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, fromDayNumber, toDayNumber } from '../../kernel/dates.ts';
import { backAt, backSchedule, forwardAt, forwardSchedule } from './schedule.ts';
import { PACES, type ProtocolPlan, requireProtocolPlan, STAGE_KINDS, type StagePlan } from './stages.ts';

const stage = (kind: StagePlan['kind'], days: number, more: Partial<StagePlan> = {}): StagePlan => ({
  kind,
  shortDays: days,
  usualDays: days,
  longDays: days,
  share: 1,
  season: null,
  rests: false,
  ...more,
});
const milkweed: ProtocolPlan = {
  stages: [
    stage('stratification', 30),
    stage('sowing', 0),
    stage('emergence', 14),
    stage('growing-on', 70, { rests: true }),
    stage('ready', 0),
  ],
  dormantMonths: [1, 2, 3, 10, 11, 12],
};
const days = (from: string, schedule: { stages: { beginsOn: string }[] }) => [
  from,
  ...schedule.stages.map(({ beginsOn }) => beginsOn),
];

describe('a schedule forward', () => {
  it('begins each stage when the one before it has run', () => {
    const { stages, readyOn } = forwardAt(milkweed, '2027-02-15', 'usual');
    expect(stages.map(({ beginsOn }) => beginsOn)).toEqual([
      '2027-02-15',
      '2027-03-17',
      '2027-03-17',
      '2027-03-31',
      '2027-06-10',
    ]);
    expect(readyOn).toBe('2027-06-10');
  });
  it('makes no headway while the plant is dormant', () => {
    expect(
      forwardAt(
        { stages: [stage('growing-on', 40, { rests: true })], dormantMonths: [10, 11, 12, 1, 2, 3] },
        '2026-09-11',
        'usual',
      ).readyOn,
    ).toBe('2027-04-21');
  });
  it('waits for the season of a stage', () => {
    const cuttings = {
      stages: [stage('sticking', 0, { season: { fromMd: '06-01', toMd: '07-15' } }), stage('rooting', 28)],
      dormantMonths: [],
    };
    expect(forwardAt(cuttings, '2026-07-16', 'usual').stages[0]?.beginsOn).toBe('2027-06-01');
    expect(forwardAt(cuttings, '2026-07-15', 'usual').readyOn).toBe('2026-08-12');
  });
  it('has a season over the end of the year', () => {
    const outdoors = {
      stages: [stage('sowing', 0, { season: { fromMd: '11-01', toMd: '02-29' } })],
      dormantMonths: [],
    };
    expect(forwardAt(outdoors, '2027-02-28', 'usual').readyOn).toBe('2027-02-28');
    expect(forwardAt(outdoors, '2027-03-01', 'usual').readyOn).toBe('2027-11-01');
    expect(backAt(outdoors, '2027-10-31', 'usual').readyOn).toBe('2027-10-31');
    expect(backAt(outdoors, '2027-10-31', 'usual').stages[0]?.beginsOn).toBe('2027-02-28');
  });
  it('counts the leap day and not the night that daylight saving shortens', () => {
    const month = { stages: [stage('stratification', 30)], dormantMonths: [] };
    expect(forwardAt(month, '2028-02-01', 'usual').readyOn).toBe('2028-03-02');
    expect(forwardAt(month, '2027-02-01', 'usual').readyOn).toBe('2027-03-03');
    expect(forwardAt(month, '2027-03-01', 'usual').readyOn).toBe('2027-03-31');
    expect(forwardAt(month, '2026-12-20', 'usual').readyOn).toBe('2027-01-19');
  });
  it('answers at each pace', () => {
    const { short, usual, long } = forwardSchedule(
      { stages: [{ ...stage('emergence', 0), shortDays: 7, usualDays: 14, longDays: 28 }], dormantMonths: [] },
      '2027-03-01',
    );
    expect([short.readyOn, usual.readyOn, long.readyOn]).toEqual(['2027-03-08', '2027-03-15', '2027-03-29']);
    expect(
      backSchedule(
        { stages: [{ ...stage('emergence', 0), shortDays: 7, usualDays: 14, longDays: 28 }], dormantMonths: [] },
        '2027-03-29',
      ).long.stages[0]?.beginsOn,
    ).toBe('2027-03-01');
  });
});

describe('a protocol whose durations are out of order', () => {
  it.each([
    [{ ...stage('emergence', 10), usualDays: 9 }, 'stages.0.usualDays'],
    [{ ...stage('emergence', 10), longDays: 9 }, 'stages.0.longDays'],
    [stage('emergence', -1), 'stages.0.shortDays'],
    [stage('emergence', 1.5), 'stages.0.shortDays'],
    [{ ...stage('emergence', 1), share: 1.01 }, 'stages.0.share'],
    [{ ...stage('emergence', 1), share: Number.NaN }, 'stages.0.share'],
    [{ ...stage('emergence', 1), season: { fromMd: '02-30', toMd: '03-01' } }, 'stages.0.season.fromMd'],
  ])('is refused by the name of what is wrong: %j', (wrong, argument) => {
    expect(() => requireProtocolPlan({ stages: [wrong], dormantMonths: [] })).toThrow(
      expect.objectContaining({ name: 'InputError', argument }),
    );
  });
  it('is refused when a stage stands twice or too early', () => {
    expect(() =>
      requireProtocolPlan({ stages: [stage('emergence', 1), stage('sowing', 1)], dormantMonths: [] }),
    ).toThrow(/stages\.1\.kind/);
  });
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
            kind: fc.constant(kind),
            durations: fc.array(fc.integer({ min: 0, max: 120 }), { minLength: 3, maxLength: 3 }),
            share: fc.double({ min: 0, max: 1, noNaN: true }),
            season: fc.option(fc.record({ fromMd: monthDay, toMd: monthDay })),
            rests: fc.boolean(),
          })
          .map(({ durations, ...rest }): StagePlan => {
            const [shortDays = 0, usualDays = 0, longDays = 0] = [...durations].sort((a, b) => a - b);
            return { ...rest, shortDays, usualDays, longDays };
          }),
      ),
    ),
  ),
  dormantMonths: fc.uniqueArray(fc.integer({ min: 1, max: 12 }), { maxLength: 8 }),
});
const dates = fc.integer({ min: toDayNumber('2023-01-01'), max: toDayNumber('2033-12-31') }).map(fromDayNumber);

describe('forward and backward scheduling are inverse', () => {
  it('so that the last day to start is in time and a day later is late', () => {
    fc.assert(
      fc.property(plans, dates, fc.constantFrom(...PACES), (plan, readyOn, pace) => {
        const start = backAt(plan, readyOn, pace).stages[0]?.beginsOn ?? '';
        expect(forwardAt(plan, start, pace).readyOn <= readyOn).toBe(true);
        expect(forwardAt(plan, addDays(start, 1), pace).readyOn > readyOn).toBe(true);
      }),
      { seed: 27, numRuns: 400 },
    );
  });
  it('so that going back from the ready day of a start never asks for an earlier one', () => {
    fc.assert(
      fc.property(plans, dates, fc.constantFrom(...PACES), (plan, startOn, pace) => {
        const forward = forwardAt(plan, startOn, pace);
        const back = backAt(plan, forward.readyOn, pace);
        expect((back.stages[0]?.beginsOn ?? '') >= startOn).toBe(true);
        expect(days('', forward).every((on, at) => on <= (days('', back)[at] ?? ''))).toBe(true);
        expect(forwardAt(plan, back.stages[0]?.beginsOn ?? '', pace).readyOn).toBe(forward.readyOn);
      }),
      { seed: 28, numRuns: 400 },
    );
  });
  it('so that a quicker pace is never ready later', () => {
    fc.assert(
      fc.property(plans, dates, (plan, startOn) => {
        const { short, usual, long } = forwardSchedule(plan, startOn);
        expect(short.readyOn <= usual.readyOn && usual.readyOn <= long.readyOn).toBe(true);
      }),
      { seed: 29, numRuns: 200 },
    );
  });
});
