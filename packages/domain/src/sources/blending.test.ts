import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { agreedOn, blendSeed, type BlendPart } from './blending.ts';

const part = (fields: Partial<BlendPart> = {}): BlendPart => ({
  grams: 10,
  purity: null,
  seedsPerGram: null,
  gatheredOn: null,
  sowFresh: false,
  neverDry: false,
  ...fields,
});

describe('a blend', () => {
  test('has shares by weight', () => {
    expect(blendSeed([part({ grams: 30 }), part({ grams: 10 })])).toMatchObject({ grams: 40, shares: [0.75, 0.25] });
  });

  test('is as pure as its parts together', () => {
    expect(blendSeed([part({ grams: 30, purity: 0.9 }), part({ grams: 10, purity: 0.5 })]).purity).toBeCloseTo(0.8, 12);
  });

  test('counts seeds per gram of pure seed', () => {
    // 27 g pure at 100 a gram and 5 g pure at 260 a gram: 4,000 seeds in 32 g.
    expect(
      blendSeed([
        part({ grams: 30, purity: 0.9, seedsPerGram: 100 }),
        part({ grams: 10, purity: 0.5, seedsPerGram: 260 }),
      ]).seedsPerGram,
    ).toBeCloseTo(125, 9);
  });

  test('claims no purity where that of one part is not known', () => {
    expect(blendSeed([part({ purity: 0.9 }), part()]).purity).toBeNull();
  });

  test('is as old as its oldest part', () => {
    expect(blendSeed([part({ gatheredOn: '2025-09-01' }), part({ gatheredOn: '2023-10-01' }), part()]).gatheredOn).toBe(
      '2023-10-01',
    );
  });

  test('takes over what one part may not suffer', () => {
    expect(blendSeed([part({ sowFresh: true }), part({ neverDry: true })])).toMatchObject({
      sowFresh: true,
      neverDry: true,
    });
  });

  test('refuses parts that weigh nothing', () => {
    expect(() => blendSeed([part({ grams: 0 })])).toThrow('grams');
  });

  test('has shares that make a whole, whatever the parts weigh', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.001, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 20 }),
        (weights) => {
          expect(
            blendSeed(weights.map((grams) => part({ grams }))).shares.reduce((sum, share) => sum + share, 0),
          ).toBeCloseTo(1, 9);
        },
      ),
    );
  });
});

describe('what parts agree on', () => {
  test('is kept', () => expect(agreedOn(['8b', '8b'])).toBe('8b'));
  test('is nothing where one differs', () => expect(agreedOn(['8b', '9a'])).toBeNull());
  test('is nothing where one is not known', () => expect(agreedOn(['8b', null])).toBeNull());
});
