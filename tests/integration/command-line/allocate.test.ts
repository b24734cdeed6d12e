import { describe, expect, test } from 'vitest';
import { rootclock } from '../../support/process/command-line.ts';

const instance = {
  today: '2027-04-20',
  horizonOn: '2027-10-31',
  supply: [
    { id: 'S1', item: 'ASTU@tall-1l', units: 40, readyOn: '2027-04-01', plantByOn: '2027-06-15', unitValue: 650 },
  ],
  demand: [{ id: 'D1', rank: 1, on: '2027-05-12', units: 30, accepts: [{ item: 'ASTU@tall-1l', penalty: 0 }] }],
};
const pinned = (units: number, change: object) =>
  JSON.stringify({
    ...instance,
    supply: [{ ...instance.supply[0], ...change }],
    demand: [{ ...instance.demand[0], units: 60 }],
    current: [{ supply: 'S1', demand: 'D1', units, pinned: true }],
  });
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
    ['no instance', 'null', /^instance: /],
    ['a row that is none', '{"supply":[null],"demand":[]}', /supply\[0\]: /],
    [
      'a day that does not exist',
      JSON.stringify({ ...instance, today: '2027-02-30' }),
      /today: must be a day that exists/,
    ],
    [
      'negative units',
      JSON.stringify({ ...instance, supply: [{ ...instance.supply[0], units: -1 }] }),
      /supply\[0\]\.units: /,
    ],
    [
      'half units',
      JSON.stringify({ ...instance, demand: [{ ...instance.demand[0], units: 1.5 }] }),
      /demand\[0\]\.units: /,
    ],
    [
      'the same id twice',
      JSON.stringify({ ...instance, supply: [instance.supply[0], instance.supply[0]] }),
      /supply\[1\]\.id: must not occur twice/,
    ],
    [
      'an unknown id',
      JSON.stringify({ ...instance, current: [{ supply: 'S9', demand: 'D1', units: 1 }] }),
      /current\[0\]\.supply: must name a row of the same instance/,
    ],
    [
      'a pinned unit that its supply does not hold',
      pinned(50, {}),
      /current\[0\]\.units: must not pin more than the supply holds/,
    ],
    [
      'a pin on a supply that cannot serve the line',
      pinned(5, { readyOn: '2027-05-13' }),
      /current\[0\]\.supply: must be able to serve .* not-ready/,
    ],
  ])('refuses %s in a sentence, with exit code 2 and an empty standard output', async (_, input, sentence) => {
    const { code, out, err } = await allocate(input);
    expect(err).toMatch(sentence);
    expect({ code, out }).toEqual({ code: 2, out: '' });
  });

  test('names every fault on a line of its own', async () => {
    const { code, err } = await allocate(
      JSON.stringify({
        ...instance,
        today: 'soon',
        supply: [{ ...instance.supply[0], units: -1, readyOn: '2027-02-30' }],
      }),
    );
    expect({
      code,
      names: err
        .trim()
        .split('\n')
        .map((line) => line.split(':')[0]),
    }).toEqual({ code: 2, names: ['today', 'supply[0].units', 'supply[0].readyOn'] });
  });
});
