import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heightClass, type HabitFacts, lightsIn, sharedHabit, untoldTraits } from './habit.ts';

describe('the light a plant stands in', () => {
  it.each([
    ['full sun', ['full-sun']],
    ['full sun to part shade', ['full-sun', 'part-sun']],
    ['full to part sun', ['full-sun', 'part-sun']],
    ['part shade to sun', ['full-sun', 'part-sun']],
    ['part shade', ['part-sun']],
    ['partial or dappled', ['part-sun']],
    ['Shade', ['shade']],
    ['sun to shade', ['full-sun', 'part-sun', 'shade']],
    ['pleno sol', ['full-sun']],
    ['pleno sol a media sombra', ['full-sun', 'part-sun']],
    ['sombra', ['shade']],
  ])('is read from “%s”', (words, lights) => {
    expect(lightsIn(words)).toEqual(lights);
  });

  it.each(['', 'bright', 'not in full sun', 'never shade', 'along streams', null])(
    'is not guessed at from “%s”',
    (words) => {
      expect(lightsIn(words)).toBeNull();
    },
  );
});

describe('the height class', () => {
  it.each([
    [[20, 40], 'low'],
    [[30, 60], 'low'],
    [[31, 60], 'medium'],
    [[60, 120], 'medium'],
    [[61, 120], 'tall'],
    [[100, 200], 'tall'],
    [[150, 151], 'very-tall'],
  ] as const)('of %j cm is %s', (range, name) => {
    expect(heightClass(range)).toBe(name);
  });

  it('never falls as a plant grows taller', () => {
    const order = ['low', 'medium', 'tall', 'very-tall'];
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 0, max: 200 }),
        fc.integer({ min: 0, max: 100 }),
        (low, width, more) => {
          expect(order.indexOf(heightClass([low + more, low + width + more]))).toBeGreaterThanOrEqual(
            order.indexOf(heightClass([low, low + width])),
          );
        },
      ),
      { seed: 411 },
    );
  });
});

describe('the habit two plants share', () => {
  const plant: HabitFacts = { heightCm: [60, 90], light: 'full sun', bloomMonths: [6, 7, 8] };

  it('is told when height, light and season agree', () => {
    expect(sharedHabit(plant, { heightCm: [50, 80], light: 'full sun to part shade', bloomMonths: [9, 8, 7] })).toEqual(
      { heightClass: 'medium', lights: ['full-sun'], bloomMonths: [7, 8] },
    );
  });

  it.each([
    ['it is of another height class', { heightCm: [100, 180] as const }],
    ['it wants another light', { light: 'part shade' }],
    ['it blooms in less than half of the months', { bloomMonths: [8, 9, 10] }],
    ['its height is not told', { heightCm: null }],
    ['its light is not told', { light: null }],
    ['its bloom is not told', { bloomMonths: null }],
  ])('is none when %s', (_, change) => {
    expect(sharedHabit(plant, { ...plant, ...change })).toBeNull();
  });

  it('is none where the bed may be shadier than the other plant stands', () => {
    expect(sharedHabit({ ...plant, light: 'full sun to part shade' }, plant)).toBeNull();
  });

  it('names the traits that are not told', () => {
    expect(untoldTraits(plant)).toEqual([]);
    expect(untoldTraits({ heightCm: null, light: 'bright', bloomMonths: [] })).toEqual(['height', 'light', 'bloom']);
  });
});
