import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ProtocolPlan, StageKind, StagePlan } from './protocol/stages.ts';
import { type StageEvidence, stageBeginnings } from './stage-beginnings.ts';

const stage = (kind: StageKind, days: number, more: Partial<StagePlan> = {}): StagePlan => ({
  kind,
  shortDays: days,
  usualDays: days,
  longDays: days,
  share: 1,
  season: null,
  rests: false,
  ...more,
});
const plan = (...stages: StagePlan[]): ProtocolPlan => ({ stages, dormantMonths: [] });
const cells = plan(
  stage('stratification', 30),
  stage('sowing', 0),
  stage('emergence', 14),
  stage('growing-on', 70),
  stage('root-check', 0),
  stage('ready', 0),
);
const flat = plan(
  stage('sowing', 0),
  stage('emergence', 14),
  stage('pricking-out', 0),
  stage('growing-on', 70),
  stage('ready', 0),
);

let version = 0;
const entry = (kind: string, happenedOn: string, more: Partial<StageEvidence> = {}): StageEvidence => ({
  version: ++version,
  starts: false,
  kind,
  happenedOn,
  stagePosition: null,
  emergedUnits: null,
  pottedPlants: 0,
  ...more,
});
const start = (on: string, stagePosition: number | null = null) => entry('start', on, { starts: true, stagePosition });
const said = (position: number, on: string) => entry('observe', on, { stagePosition: position });
const count = (emergedUnits: number, on: string) => entry('count', on, { emergedUnits });
const pot = (on: string) => entry('pot', on, { pottedPlants: 20 });
const begun = (of: ProtocolPlan, ...entries: StageEvidence[]) =>
  stageBeginnings(of, entries).map(({ position, on, basis }) => `${position} ${on} ${basis}`);

describe('the stages a batch has begun', () => {
  it('begin with the first at its start', () =>
    expect(begun(cells, start('2026-03-01'))).toEqual(['0 2026-03-01 start']));
  it('begin with a later one that the start names', () =>
    expect(begun(cells, start('2026-03-01', 2))).toEqual(['2 2026-03-01 start']));
  it('begin with the start by conversion of packs as well', () =>
    expect(begun(cells, entry('convert', '2026-04-01', { starts: true, stagePosition: 1 }))).toEqual([
      '1 2026-04-01 start',
      '2 2026-04-01 act',
    ]));
  it('go on with what somebody says, and sowing that takes no time begins the wait for emergence', () => {
    expect(begun(cells, start('2026-03-01'), said(1, '2026-04-02'))).toEqual([
      '0 2026-03-01 start',
      '1 2026-04-02 said',
      '2 2026-04-02 act',
    ]);
  });
  it('leave emergence with the first count above zero, by its day and not by when it was written', () => {
    expect(
      begun(cells, start('2026-04-01', 2), count(70, '2026-04-20'), count(0, '2026-04-08'), count(3, '2026-04-12')),
    ).toEqual(['2 2026-04-01 start', '3 2026-04-12 count']);
  });
  it('wait on in a flat that has come up until it is pricked out', () => {
    expect(begun(flat, start('2026-04-01'), count(70, '2026-04-20'))).toEqual([
      '0 2026-04-01 start',
      '1 2026-04-01 act',
    ]);
  });
  it('leave pricking out with the first potting', () => {
    expect(begun(flat, start('2026-04-01'), count(70, '2026-04-20'), pot('2026-05-03'), pot('2026-05-01'))).toEqual([
      '0 2026-04-01 start',
      '1 2026-04-01 act',
      '3 2026-05-01 potting',
    ]);
  });
  it('enter a pricking out that takes its time with the first count', () => {
    expect(
      begun(
        plan(stage('emergence', 14), stage('pricking-out', 21), stage('growing-on', 70)),
        start('2026-04-01'),
        count(9, '2026-04-20'),
      ),
    ).toEqual(['0 2026-04-01 start', '1 2026-04-20 count']);
  });
  it('never become ready by a count or by potting', () => {
    expect(
      begun(
        plan(stage('emergence', 40), stage('ready', 0)),
        start('2026-04-01'),
        count(9, '2026-04-20'),
        pot('2026-05-20'),
      ),
    ).toEqual(['0 2026-04-01 start']);
  });
  it('take what somebody says before what follows from a count', () => {
    expect(begun(cells, start('2026-04-01', 2), count(3, '2026-04-12'), said(3, '2026-04-15'))).toEqual([
      '2 2026-04-01 start',
      '3 2026-04-15 said',
    ]);
  });
  it('take the last word where somebody says it twice', () => {
    expect(begun(cells, start('2026-04-01', 2), said(3, '2026-04-15'), said(3, '2026-04-14'))).toEqual([
      '2 2026-04-01 start',
      '3 2026-04-14 said',
    ]);
  });
  it('are not drawn back by a count of a day before a stage that somebody began', () => {
    expect(begun(cells, start('2026-03-01'), said(2, '2026-04-15'), count(3, '2026-04-12'))).toEqual([
      '0 2026-03-01 start',
      '2 2026-04-15 said',
    ]);
  });
  it('are not drawn back by potting once they harden', () => {
    expect(
      begun(
        plan(stage('emergence', 14), stage('growing-on', 40), stage('hardening', 10)),
        start('2026-04-01'),
        said(2, '2026-05-20'),
        pot('2026-05-25'),
      ),
    ).toEqual(['0 2026-04-01 start', '2 2026-05-20 said']);
  });
  it('wait for the season of what follows an act', () => {
    const autumn = plan(stage('sowing', 0), stage('emergence', 30, { season: { fromMd: '04-01', toMd: '06-30' } }));
    expect(begun(autumn, start('2026-11-01'))).toEqual(['0 2026-11-01 start']);
  });
  it('are none where the start was taken back, also of packs that were drawn on', () => {
    expect(begun(cells, count(3, '2026-04-12'), pot('2026-05-01'), entry('convert', '2026-04-20'))).toEqual([]);
  });
});

it('the days of stages never run backwards, whatever was written in whatever order', () => {
  const day = fc.integer({ min: 1, max: 28 }).map((at) => `2026-04-${String(at).padStart(2, '0')}`);
  const implied = fc.oneof(
    fc.tuple(fc.nat(9), day).map(([units, on]) => count(units, on)),
    day.map(pot),
  );
  fc.assert(
    fc.property(fc.array(implied, { maxLength: 12 }), day, fc.nat(5), (entries, on, position) => {
      const known = stageBeginnings(cells, [start('2026-04-01'), ...entries, said(position, on)]);
      for (const [at, each] of known.entries()) {
        const before = known[at - 1];
        if (before) expect(before.position < each.position && before.on <= each.on).toBe(true);
      }
    }),
    { seed: 34, numRuns: 300 },
  );
});
