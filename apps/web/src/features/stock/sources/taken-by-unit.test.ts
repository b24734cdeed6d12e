import { expect, it } from 'vitest';
import { takenByUnit } from './taken-by-unit.ts';

it('adds cuttings to cuttings and nothing else', () => {
  expect(
    takenByUnit([
      { unit: 'piece', startedUnits: 40 },
      { unit: 'cell', startedUnits: 72 },
      { unit: 'piece', startedUnits: 25 },
    ]),
  ).toEqual([
    { unit: 'piece', units: 65 },
    { unit: 'cell', units: 72 },
  ]);
});
