import { describe, expect, test } from 'vitest';
import { learnStages } from './learn-stages.ts';

const settings = { priorWeight: 20, evidenceLimit: 400, confidence: 0.9 };
const stages = [
  { kind: 'stratification', share: 1 },
  { kind: 'emergence', share: 0.6 },
  { kind: 'pricking-out', share: 0.95 },
  { kind: 'growing-on', share: 0.9 },
  { kind: 'hardening', share: 0.98 },
  { kind: 'root-check', share: 1 },
  { kind: 'ready', share: 1 },
] as const;
const protocol = { startUnit: 'cell', seedsPerCell: 2, stages } as const;

describe('learnStages', () => {
  test('learns growing on, hardening and the root check as one', () => {
    const learned = learnStages(protocol, [], settings);
    expect(learned.map(({ stage, covers }) => [stage, covers])).toEqual([
      ['stratification', ['stratification']],
      ['emergence', ['emergence']],
      ['pricking-out', ['pricking-out']],
      ['growing-on', ['growing-on', 'hardening', 'root-check']],
      ['ready', ['ready']],
    ]);
    expect(learned[3]?.priorShare).toBeCloseTo(0.882, 12);
  });

  test('of cells with two seeds it expects the share with at least one plant', () => {
    // 1 − 0.4², by hand.
    expect(learnStages(protocol, [], settings)[1]?.priorShare).toBeCloseTo(0.84, 12);
  });

  test('of seeds in trays it expects the share of seeds', () => {
    expect(learnStages({ ...protocol, startUnit: 'tray' }, [], settings)[1]?.priorShare).toBe(0.6);
  });

  test('without pricking out in the protocol, what was lost on the way into the pot counts with growing on', () => {
    const counted = [
      { stage: 'pricking-out', tried: 120, passed: 100, batches: 2 },
      { stage: 'growing-on', tried: 50, passed: 45, batches: 2 },
    ] as const;
    const straight = { ...protocol, stages: stages.filter(({ kind }) => kind !== 'pricking-out') };
    expect(learnStages(straight, counted, settings).find(({ stage }) => stage === 'growing-on')).toMatchObject({
      tried: 60,
      passed: 45,
    });
    expect(learnStages(protocol, counted, settings).find(({ stage }) => stage === 'growing-on')).toMatchObject({
      tried: 50,
      passed: 45,
    });
  });

  test('takes the evidence of each stage and no other', () => {
    const learned = learnStages(protocol, [{ stage: 'growing-on', tried: 100, passed: 50, batches: 2 }], settings);
    expect(learned.map(({ tried }) => tried)).toEqual([0, 0, 0, 100, 0]);
  });
});
