import { describe, expect, test } from 'vitest';
import { rootclock } from '../../support/process/command-line.ts';

const instance = {
  today: '2027-04-20',
  horizonOn: '2027-10-31',
  supply: [{ id: 'S1', item: 'ASTU@tall-1l', units: 40, readyOn: '2027-04-01', plantByOn: '2027-06-15', unitValue: 650 }],
  demand: [{ id: 'D1', rank: 1, on: '2027-05-12', units: 30, accepts: [{ item: 'ASTU@tall-1l', penalty: 0 }] }],
};
const allocate = (input: string) => rootclock(['allocate'], { input });

describe('rootclock allocate', () => {
  test('answers an instance on standard output, and nothing else', async () => {
    const { code, out } = await allocate(JSON.stringify(instance));
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual({
      assignments: [{ supply: 'S1', demand: 'D1', units: 30 }],
      short: [],
      declining: [{ supply: 'S1', units: 10 }],
      totals: { filled: 30, penalty: 0, savedValue: 19500, moved: 0 },
    });
  });

  test.each([
    ['nothing', '', /nothing came/],
    ['no JSON', '{', /is not JSON/],
    ['no instance', 'null', /^Rootclock: instance: /],
    ['a row that is none', '{"supply":[null],"demand":[]}', /supply\[0\]: /],
    ['a day that does not exist', JSON.stringify({ ...instance, today: '2027-02-30' }), /today: must be a day that exists/],
    ['negative units', JSON.stringify({ ...instance, supply: [{ ...instance.supply[0], units: -1 }] }), /supply\[0\]\.units: /],
  ])('refuses %s in a sentence, with exit code 1 and an empty standard output', async (_, input, sentence) => {
    const { code, out, err } = await allocate(input);
    expect(err).toMatch(sentence);
    expect({ code, out }).toEqual({ code: 1, out: '' });
  });
});
