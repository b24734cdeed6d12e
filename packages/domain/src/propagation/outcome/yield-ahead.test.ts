import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betaBinomialUpperTail } from '../../statistics/beta-binomial.ts';
import { stageProgress } from '../batch-stages.ts';
import { learnStages } from '../learning/learn-stages.ts';
import type { ProtocolPlan, StageKind, StagePlan } from '../protocol/stages.ts';
import { expectedYield } from './expected-yield.ts';
import { type BatchNow, yieldAhead } from './yield-ahead.ts';

const stage = (kind: StageKind, share: number, days = 20): StagePlan => ({
  kind,
  shortDays: days,
  usualDays: days,
  longDays: days,
  share,
  season: null,
  rests: false,
});
const plan: ProtocolPlan = {
  dormantMonths: [],
  stages: [stage('sowing', 1, 0), stage('emergence', 0.7), stage('growing-on', 0.9, 60), stage('ready', 1, 0)],
};
const learned = learnStages({ startUnit: 'cell', seedsPerCell: null, stages: plan.stages }, [], {
  priorWeight: 1000,
  evidenceLimit: 400,
  confidence: 0.95,
});
const cells: BatchNow = {
  unit: 'cell',
  startedUnits: 100,
  standingUnits: 100,
  seedsSown: null,
  aliveUnits: null,
  pottedPlants: 0,
};
const at = (position: number, begunOn: string, today: string, batch: BatchNow) =>
  yieldAhead(batch, learned, stageProgress(plan, '2026-04-01', [{ position, on: begunOn }], today), today, 0.9);

describe('the yield ahead', () => {
  it('has all stages ahead of cells that nobody counted', () => {
    expect(at(1, '2026-04-01', '2026-04-02', cells)).toMatchObject({
      tried: 100,
      from: 'units',
      usualUnits: 63,
      ahead: [{ stage: 'emergence' }, { stage: 'growing-on' }, { stage: 'ready' }],
    });
  });
  it('is not cut down by a first count while more may come up', () => {
    expect(at(2, '2026-04-10', '2026-04-12', { ...cells, aliveUnits: 5 })).toMatchObject({ from: 'count', tried: 5 });
    const progress = stageProgress(
      plan,
      '2026-04-01',
      [
        { position: 1, on: '2026-04-01' },
        { position: 2, on: '2026-04-10' },
      ],
      '2026-04-12',
    );
    expect(yieldAhead({ ...cells, aliveUnits: 5 }, learned, progress, '2026-04-12', 0.9)).toMatchObject({
      from: 'units',
      tried: 100,
      usualUnits: 63,
    });
  });
  it('rests on the count once the long wait is over', () => {
    const progress = stageProgress(
      plan,
      '2026-04-01',
      [
        { position: 1, on: '2026-04-01' },
        { position: 2, on: '2026-04-10' },
      ],
      '2026-05-01',
    );
    expect(yieldAhead({ ...cells, aliveUnits: 50 }, learned, progress, '2026-05-01', 0.9)).toMatchObject({
      from: 'count',
      tried: 50,
      usualUnits: 45,
    });
  });
  it('rests on a count that is better than expected at once', () => {
    expect(at(1, '2026-04-01', '2026-04-12', { ...cells, aliveUnits: 95 })).toMatchObject({ from: 'count', tried: 95 });
  });
  it('takes the seeds of trays, as many as are left of them', () => {
    expect(
      at(1, '2026-04-01', '2026-04-02', { ...cells, unit: 'tray', startedUnits: 4, standingUnits: 3, seedsSown: 400 }),
    ).toMatchObject({ from: 'seeds', tried: 300, usualUnits: 189 });
  });
  it('is unknown for trays of which neither seeds nor plants are known', () => {
    expect(at(1, '2026-04-01', '2026-04-02', { ...cells, unit: 'tray', startedUnits: 4, standingUnits: 3 })).toBeNull();
  });
});

describe('what gets through the stages', () => {
  it('is all of it where no stage is ahead', () =>
    expect(expectedYield({ tried: 40, ahead: [], confidence: 0.9 })).toEqual({ cautiousUnits: 40, usualUnits: 40 }));
  it('is nothing of nothing', () =>
    expect(expectedYield({ tried: 0, ahead: [{ alpha: 2, beta: 3 }], confidence: 0.9 })).toEqual({
      cautiousUnits: 0,
      usualUnits: 0,
    }));
  it('is refused for a confidence that is none', () => {
    expect(() => expectedYield({ tried: 4, ahead: [], confidence: 90 })).toThrow(
      expect.objectContaining({ name: 'InputError', argument: 'confidence' }),
    );
  });
  it('is the most that is held at the confidence, whatever is believed', () => {
    const shape = fc.double({ min: 0.01, max: 300, noNaN: true });
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        shape,
        shape,
        fc.double({ min: 0.5, max: 0.999, noNaN: true }),
        (tried, alpha, beta, confidence) => {
          const { cautiousUnits, usualUnits } = expectedYield({ tried, ahead: [{ alpha, beta }], confidence });
          expect(usualUnits).toBeGreaterThanOrEqual(cautiousUnits);
          expect(betaBinomialUpperTail({ atLeast: cautiousUnits, tried, alpha, beta })).toBeGreaterThanOrEqual(
            confidence,
          );
          if (cautiousUnits < tried)
            expect(betaBinomialUpperTail({ atLeast: cautiousUnits + 1, tried, alpha, beta })).toBeLessThan(confidence);
        },
      ),
      { seed: 36, numRuns: 400 },
    );
  });
});
