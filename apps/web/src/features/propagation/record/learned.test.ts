import { expect, test } from 'vitest';
import { shapesInAll, shareInAll, shownStages, tells } from './learned.ts';

const weighing = { priorWeight: 20, evidenceLimit: 400 };
const stage = (kind: 'emergence' | 'growing-on' | 'hardening' | 'ready', share: number) => ({
  kind,
  share,
  standing: 'assumed' as const,
  source: null,
});
const counted = (kind: 'emergence' | 'growing-on', tried: number, passed: number) => ({
  stage: kind,
  tried,
  passed,
  batches: 3,
  ofSeeds: false,
  over: 0,
});
const shares = {
  plantId: 'p',
  method: 'seed' as const,
  label: '',
  protocol: {
    protocolId: 'q',
    startUnit: 'cell' as const,
    seedsPerCell: null,
    stages: [stage('emergence', 0.75), stage('growing-on', 0.9), stage('hardening', 0.5), stage('ready', 1)],
  },
  evidence: [counted('emergence', 24, 18)],
};

test('counts stand beside what the protocol says, hardening with growing on', () => {
  expect(shownStages(shares, weighing)).toMatchObject([
    {
      stage: 'emergence',
      share: 0.75,
      tried: 24,
      passed: 18,
      batches: 3,
      what: 'cell',
      prior: { share: 0.75, standing: 'assumed' },
    },
    {
      stage: 'growing-on',
      covers: ['hardening'],
      share: expect.closeTo(0.45, 9),
      tried: 0,
      what: 'plants',
      prior: { share: expect.closeTo(0.45, 9) },
    },
    { stage: 'ready', share: expect.closeTo(1, 9) },
  ]);
});

test('a stage that everything passes and nobody counted tells nothing', () => {
  expect(shownStages(shares, weighing).map(tells)).toEqual([true, true, false]);
});

test('without a protocol the counts stand alone', () => {
  expect(shownStages({ ...shares, protocol: null }, weighing)).toMatchObject([
    { stage: 'emergence', share: 0.75, prior: null },
  ]);
  expect(shapesInAll({ ...shares, protocol: null }, weighing)).toBeNull();
});

test('what gets through in all is the product of the stages', () => {
  const shapes = shapesInAll(shares, weighing);
  const { share, low, high } = shareInAll(shapes ?? { alpha: 1, beta: 1 });
  expect(share).toBeCloseTo(0.75 * 0.45, 6);
  expect([low < share, share < high]).toEqual([true, true]);
});
