import { describe, expect, test } from 'vitest';
import { InputError } from '../kernel/input.ts';
import { lotDifferences, readinessTogether } from './merging.ts';

const lot = { plantId: 'milkweed', sourceId: 'prairie', containerId: 'pot' };

describe('lots that are to become one', () => {
  test('may when plant, source and container are the same', () => {
    expect(lotDifferences([lot, { ...lot }])).toEqual([]);
  });
  test('are told every difference', () => {
    expect(lotDifferences([lot, { plantId: 'aster', sourceId: 'bought', containerId: 'plug' }])).toEqual([
      'plant',
      'source',
      'container',
    ]);
  });
  test('may come from different containers when they are potted anew', () => {
    expect(lotDifferences([lot, { ...lot, containerId: 'plug' }], { sameContainer: false })).toEqual([]);
  });
  test('must be some', () => {
    expect(() => lotDifferences([])).toThrow(InputError);
  });
  test('are ready when the last of them is', () => {
    expect(
      readinessTogether([
        { readyOn: '2026-05-01', rootCheckedOn: '2026-05-01' },
        { readyOn: '2026-06-01', rootCheckedOn: null },
      ]),
    ).toEqual({ readyOn: '2026-06-01', rootCheckedOn: null });
  });
});
