import { describe, expect, it } from 'vitest';
import { partsOf } from './progress-parts.ts';

const counted = { wantedUnits: 75, reservedUnits: 40, stagedUnits: 8, deliveredUnits: 4, shortUnits: 23 };

describe('the parts of what is wanted', () => {
  it('stand in the order in which plants travel', () => {
    expect(partsOf(counted).map(({ part, units }) => `${part} ${units}`)).toEqual([
      'delivered 4',
      'staged 8',
      'reserved 40',
      'short 23',
    ]);
  });

  it('leave out what holds nothing', () => {
    expect(partsOf({ ...counted, stagedUnits: 0, deliveredUnits: 0 }).map(({ part }) => part)).toEqual([
      'reserved',
      'short',
    ]);
  });

  it('are none of an order without lines', () => {
    expect(partsOf({ wantedUnits: 0, reservedUnits: 0, stagedUnits: 0, deliveredUnits: 0, shortUnits: 0 })).toEqual([]);
  });
});
