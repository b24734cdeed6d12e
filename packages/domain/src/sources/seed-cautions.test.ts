import { describe, expect, test } from 'vitest';
import { SOW_FRESH_DAYS, seedCautions, type SeedKeeping } from './seed-cautions.ts';

const keeping = (fields: Partial<SeedKeeping>): SeedKeeping => ({
  sowFresh: false,
  neverDry: false,
  storage: null,
  gatheredOn: '2026-06-01',
  storedOn: null,
  ...fields,
});

describe('seed that is to be sown fresh', () => {
  test('raises nothing while its days last, the last one included', () => {
    expect(seedCautions(keeping({ sowFresh: true }), '2026-06-15')).toEqual([]);
  });
  test('is cautioned of once they have passed', () => {
    expect(seedCautions(keeping({ sowFresh: true }), '2026-06-16')).toEqual(['sow-fresh-passed']);
    expect(SOW_FRESH_DAYS).toBe(14);
  });
  test('is as old as its store where nobody knows when it was gathered', () => {
    expect(seedCautions(keeping({ sowFresh: true, gatheredOn: null, storedOn: '2026-05-01' }), '2026-06-16')).toEqual([
      'sow-fresh-passed',
    ]);
  });
  test('raises nothing where its age is not known', () => {
    expect(seedCautions(keeping({ sowFresh: true, gatheredOn: null }), '2030-01-01')).toEqual([]);
  });
});

describe('seed that dies when it dries', () => {
  test.each(['room', 'cold-dry', 'frozen'] as const)('is cautioned of when it is kept %s', (storage) => {
    expect(seedCautions(keeping({ neverDry: true, storage }), '2026-06-02')).toEqual(['never-dry-stored-dry']);
  });
  test('raises nothing when it is kept cold and moist', () => {
    expect(seedCautions(keeping({ neverDry: true, storage: 'cold-moist' }), '2026-06-02')).toEqual([]);
  });
});
