import { expect, test } from 'vitest';
import { matches, rowsOf, sorted } from './rows.ts';

const plant = (plantId: string, scientificName: string) => ({
  plantId,
  code: plantId.toUpperCase(),
  scientificName,
  vernacularName: '',
  genus: '',
  rootHabit: 'fibrous' as const,
});
const shares = (plantId: string, passed: number | null) => ({
  plantId,
  method: 'seed' as const,
  label: '',
  protocol: null,
  evidence:
    passed === null ? [] : [{ stage: 'emergence' as const, tried: 100, passed, batches: 1, ofSeeds: false, over: 0 }],
});
const rows = rowsOf(
  {
    plants: [plant('a', 'Liatris aspera'), plant('b', 'Asclepias tuberosa'), plant('c', 'Monarda punctata')],
    shares: [shares('a', 40), shares('b', null), shares('c', 90)],
  },
  { priorWeight: 20, evidenceLimit: 400 },
);
const names = (of: typeof rows) => of.map((row) => row.plant.plantId).join('');

test('rows are sorted by name, or by a share with those that have none at the end', () => {
  expect([
    names(sorted(rows, 'plant', false)),
    names(sorted(rows, 'cameUp', false)),
    names(sorted(rows, 'cameUp', true)),
    names(sorted(rows, 'tried', true)),
  ]).toEqual(['bac', 'acb', 'cab', 'acb']);
});

test('a plant is found by a part of its names or its code', () => {
  expect(rows.map((row) => matches(row, ' monar'))).toEqual([false, false, true]);
});
