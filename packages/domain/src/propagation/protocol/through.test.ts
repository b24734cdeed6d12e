import { describe, expect, it } from 'vitest';
import type { StageDetail } from './detail.ts';
import { stageDifferences } from './differences.ts';
import { stagesForMethod } from './method-stages.ts';
import type { StageKind } from './stages.ts';
import { mayWait, phaseDays, shareReady, unitShareOf } from './through.ts';

const stage = (kind: StageKind, days: number, more: Partial<StageDetail> = {}): StageDetail => ({
  kind,
  shortDays: days,
  usualDays: days,
  longDays: days,
  share: 1,
  season: null,
  rests: false,
  durationStanding: 'assumed',
  durationSource: null,
  shareStanding: 'assumed',
  shareSource: null,
  temperatureLowC: null,
  temperatureHighC: null,
  light: '',
  depthMm: null,
  medium: '',
  containerId: null,
  note: '',
  ...more,
});
const plan = (...stages: StageDetail[]) => ({ stages, dormantMonths: [1, 2, 12] });

describe('the phases of a protocol', () => {
  const seed = plan(
    stage('stratification', 30),
    stage('sowing', 0),
    { ...stage('emergence', 14), longDays: 28 },
    stage('growing-on', 60),
    stage('hardening', 10),
    stage('root-check', 4),
  );
  it('are the sums of their stages', () => {
    expect(phaseDays(seed)).toEqual({
      treatment: { short: 30, usual: 30, long: 30 },
      establishment: { short: 14, usual: 14, long: 28 },
      'active-growth': { short: 60, usual: 60, long: 60 },
      hardening: { short: 14, usual: 14, long: 14 },
      total: { short: 118, usual: 118, long: 132 },
    });
  });
  it('may take longer where a stage waits for its season or rests while the plant is dormant', () => {
    expect(mayWait(seed)).toBe(false);
    expect(mayWait(plan(stage('sticking', 0, { season: { fromMd: '06-01', toMd: '07-15' } })))).toBe(true);
    expect(mayWait(plan(stage('growing-on', 40, { rests: true })))).toBe(true);
    expect(mayWait({ ...plan(stage('growing-on', 40, { rests: true })), dormantMonths: [] })).toBe(false);
  });
});

describe('the share that gets ready', () => {
  const halves = plan(stage('emergence', 1, { share: 0.5 }), stage('growing-on', 1, { share: 0.9 }));
  it('is the product of the stages', () => {
    expect(shareReady(halves)).toBeCloseTo(0.45, 12);
  });
  it('of cells with several seeds counts the cells in which none comes up', () => {
    // Five seeds fill 97 % of cells where half the seeds come up: 1 − 0.5⁵ = 0.96875.
    expect(unitShareOf({ kind: 'emergence', share: 0.5 }, 5)).toBeCloseTo(0.96875, 12);
    expect(shareReady(halves, 5)).toBeCloseTo(0.96875 * 0.9, 12);
  });
  it('leaves every other stage as it is, however many seeds lie in a cell', () => {
    expect(unitShareOf({ kind: 'growing-on', share: 0.5 }, 5)).toBe(0.5);
  });
  it('refuses half a seed', () => {
    expect(() => unitShareOf({ kind: 'emergence', share: 0.5 }, 1.5)).toThrow(/seedsPerCell/);
  });
});

describe('the stages of a method', () => {
  it('keep their order and know neither sown cuttings nor stuck seed', () => {
    expect(stagesForMethod('seed')).not.toContain('sticking');
    expect(stagesForMethod('cutting')).toEqual([
      'stratification',
      'sticking',
      'emergence',
      'rooting',
      'pricking-out',
      'growing-on',
      'hardening',
      'root-check',
      'ready',
    ]);
  });
});

describe('what two versions say differently', () => {
  const before = [stage('sowing', 0), stage('emergence', 14), stage('ready', 0)];
  it('is nothing for the same stages', () => {
    expect(
      stageDifferences(
        before,
        before.map((each) => ({ ...each })),
      ),
    ).toEqual([]);
  });
  it('names the stages that came and went, and the parts of those that stayed', () => {
    const after = [
      stage('stratification', 30),
      stage('sowing', 0),
      stage('emergence', 10, { share: 0.8, note: 'in light' }),
    ];
    expect(
      stageDifferences(before, after).map(({ kind, before: was, after: is, parts }) => [
        kind,
        was !== null,
        is !== null,
        parts,
      ]),
    ).toEqual([
      ['stratification', false, true, []],
      ['emergence', true, true, ['days', 'share', 'note']],
      ['ready', true, false, []],
    ]);
  });
});
