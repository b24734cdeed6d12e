import { describe, expect, it } from 'vitest';
import { byWeek, type PlanRow } from './plan-words.ts';

const row = (startOn: string) => ({ startOn }) as PlanRow;

describe('lines by week', () => {
  it('stand under the Monday of the week they start in', () => {
    expect(
      byWeek([row('2027-02-08'), row('2027-02-14'), row('2027-02-15')]).map(({ mondayOn, rows }) => [
        mondayOn,
        rows.length,
      ]),
    ).toEqual([
      ['2027-02-08', 2],
      ['2027-02-15', 1],
    ]);
  });
  it('are none without lines', () => expect(byWeek([])).toEqual([]));
});
