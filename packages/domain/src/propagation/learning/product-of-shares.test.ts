import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { productOfShares } from './product-of-shares.ts';

const moments = ({ alpha, beta }: { alpha: number; beta: number }) => {
  const tried = alpha + beta;
  return { mean: alpha / tried, square: (alpha * (alpha + 1)) / (tried * (tried + 1)) };
};
const shapes = fc.record({
  alpha: fc.double({ min: 0.01, max: 5000, noNaN: true }),
  beta: fc.double({ min: 0.01, max: 5000, noNaN: true }),
});

describe('productOfShares', () => {
  test('of one share it is that share', () => {
    expect(productOfShares([{ alpha: 3, beta: 2 }])).toEqual({ alpha: 3, beta: 2 });
  });

  test('of two even shares: mean 1/4, mean square 1/9, by hand', () => {
    // Beta(1,1) twice: E = 1/2 · 1/2, E of the square 1/3 · 1/3, variance 7/144; worth (1/4 · 3/4) / (7/144) − 1 = 20/7.
    const { alpha, beta } = productOfShares([
      { alpha: 1, beta: 1 },
      { alpha: 1, beta: 1 },
    ]);
    expect(alpha).toBeCloseTo(5 / 7, 12);
    expect(beta).toBeCloseTo(15 / 7, 12);
  });

  test('has the mean and the mean square of the product, whatever the shares', () => {
    fc.assert(
      fc.property(fc.array(shapes, { minLength: 1, maxLength: 8 }), (shares) => {
        const product = moments(productOfShares(shares));
        expect(product.mean).toBeCloseTo(
          shares.reduce((mean, share) => mean * moments(share).mean, 1),
          8,
        );
        expect(product.square).toBeCloseTo(
          shares.reduce((square, share) => square * moments(share).square, 1),
          6,
        );
      }),
    );
  });

  test('a stage that all but surely passes changes nothing that matters', () => {
    const { alpha, beta } = productOfShares([
      { alpha: 30, beta: 10 },
      { alpha: 20, beta: 1e-9 },
    ]);
    expect(alpha).toBeCloseTo(30, 5);
    expect(beta).toBeCloseTo(10, 5);
  });

  test('of shares that are all sure it is as good as sure', () => {
    const { alpha, beta } = productOfShares([
      { alpha: 20, beta: 1e-9 },
      { alpha: 20, beta: 1e-9 },
    ]);
    expect(alpha / (alpha + beta)).toBeGreaterThan(1 - 1e-9);
  });

  test.each([
    [[], 'shares'],
    [[{ alpha: 0, beta: 1 }], 'alpha'],
    [
      [
        { alpha: 1, beta: 1 },
        { alpha: 1, beta: -1 },
      ],
      'beta',
    ],
  ] as const)('refuses %o', (shares, argument) => {
    expect(() => productOfShares(shares)).toThrow(expect.objectContaining({ argument }));
  });
});
