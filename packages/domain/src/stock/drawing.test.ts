import { describe, expect, test } from 'vitest';
import { drawUnits, unitsOfPercent } from './drawing.ts';

const twoPlaces = [
  { placeId: 'bench', units: 12 },
  { placeId: 'yard', units: 8 },
];

describe('drawing units from where a lot stands', () => {
  test('a lot at one place is drawn on there without naming it', () => {
    expect(drawUnits([{ placeId: 'bench', units: 12 }], 5)).toEqual({ drawn: [{ placeId: 'bench', units: 5 }] });
  });
  test('part of a lot in several places asks which place', () => {
    expect(drawUnits(twoPlaces, 5)).toEqual({ refused: 'which-place', places: twoPlaces });
  });
  test('the whole of a lot is drawn everywhere it stands', () => {
    expect(drawUnits(twoPlaces, 20)).toEqual({ drawn: twoPlaces });
  });
  test('a named place gives no more than stands there', () => {
    expect(drawUnits(twoPlaces, 9, 'yard')).toEqual({ refused: 'not-enough-units', wanted: 9, available: 8 });
  });
  test.each([0, -1, 1.5, Number.NaN])('%s units are refused as input', (units) => {
    expect(() => drawUnits(twoPlaces, units)).toThrow('units');
  });
});

test('a small share of a lot is at least one plant and never more than there is', () => {
  expect([unitsOfPercent(40, 1), unitsOfPercent(40, 50), unitsOfPercent(3, 100)]).toEqual([1, 20, 3]);
});
