import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betaBinomialUpperTail } from '../../statistics/beta-binomial.ts';
import { binomialUpperTail } from '../../statistics/binomial.ts';
import { unitsToStart } from './units-to-start.ts';

describe('units to start', () => {
  it.each([
    [{ wanted: 0, success: 0.5, confidence: 0.9 }, 0],
    [{ wanted: 5, success: 0.5, confidence: 0 }, 0],
    [{ wanted: 5, success: 1, confidence: 1 }, 5],
    [{ wanted: 1, success: 0.9, confidence: 0.9 }, 1],
    [{ wanted: 1, success: 0.5, confidence: 0.75 }, 2],
    [{ wanted: 1, success: 1e-9, confidence: 0.9 }, 2_302_585_092],
    [{ wanted: 1, success: { alpha: 1, beta: 1 }, confidence: 0.9 }, 9],
  ])('%j are %d', (input, units) => {
    expect(unitsToStart(input)).toBe(units);
  });

  it.each([
    ['nothing ever succeeds', { wanted: 1, success: 0, confidence: 0.5 }],
    ['certainty is asked of an uncertain share', { wanted: 1, success: 0.99, confidence: 1 }],
    ['certainty is asked of a learned share', { wanted: 1, success: { alpha: 50, beta: 1 }, confidence: 1 }],
    ['the learned share may lie next to nothing', { wanted: 1, success: { alpha: 0.01, beta: 1 }, confidence: 0.95 }],
  ])('cannot be met where %s', (_, input) => {
    expect(unitsToStart(input)).toBeNull();
  });

  const confidence = fc.double({ min: 0.05, max: 0.999, noNaN: true });
  const wanted = fc.integer({ min: 1, max: 400 });

  it('reach the confidence, and one fewer does not', () => {
    fc.assert(
      fc.property(wanted, fc.double({ min: 0.01, max: 0.999, noNaN: true }), confidence, (atLeast, share, asked) => {
        const units = unitsToStart({ wanted: atLeast, success: share, confidence: asked });
        if (units === null) return false;
        const reached = (tried: number) => binomialUpperTail({ atLeast, tried, share });
        return reached(units) >= asked - 1e-9 && (units === atLeast || reached(units - 1) < asked);
      }),
    );
  });

  it('of a learned share do so too', () => {
    const shape = fc.double({ min: 0.5, max: 300, noNaN: true });
    fc.assert(
      fc.property(wanted, shape, shape, confidence, (atLeast, alpha, beta, asked) => {
        const units = unitsToStart({ wanted: atLeast, success: { alpha, beta }, confidence: asked });
        if (units === null) return false;
        const reached = (tried: number) => betaBinomialUpperTail({ atLeast, tried, alpha, beta });
        return reached(units) >= asked - 1e-9 && (units === atLeast || reached(units - 1) < asked + 1e-9);
      }),
    );
  });

  it('of a learned share are more than of its mean, since it may be worse', () => {
    const known = unitsToStart({ wanted: 200, success: 0.8, confidence: 0.9 }) ?? 0;
    expect(unitsToStart({ wanted: 200, success: { alpha: 16, beta: 4 }, confidence: 0.9 })).toBeGreaterThan(known);
    expect(unitsToStart({ wanted: 200, success: { alpha: 16e6, beta: 4e6 }, confidence: 0.9 })).toBe(known);
  });

  it.each([
    [{ wanted: 1.5, success: 0.5, confidence: 0.9 }, 'wanted'],
    [{ wanted: -1, success: 0.5, confidence: 0.9 }, 'wanted'],
    [{ wanted: 1, success: 80, confidence: 0.9 }, 'success'],
    [{ wanted: 1, success: Number.NaN, confidence: 0.9 }, 'success'],
    [{ wanted: 1, success: { alpha: 0, beta: 1 }, confidence: 0.9 }, 'alpha'],
    [{ wanted: 1, success: { alpha: 1, beta: Number.NaN }, confidence: 0.9 }, 'beta'],
    [{ wanted: 1, success: 0.5, confidence: 90 }, 'confidence'],
  ])('are refused for %j', (input, argument) => {
    expect(() => unitsToStart(input)).toThrow(expect.objectContaining({ name: 'InputError', argument }));
  });
});
