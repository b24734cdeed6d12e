import { describe, expect, it } from 'vitest';
import {
  InputError,
  MAX_UNITS,
  requireOneOf,
  requirePositive,
  requireShare,
  requireText,
  requireUnits,
} from './input.ts';
import { compareText } from './text.ts';

describe('required values', () => {
  it.each([0, -1, 1.5, Number.NaN, Number.POSITIVE_INFINITY, MAX_UNITS + 1, '3', null])('units refuse %j', (value) => {
    expect(() => requireUnits('units', value)).toThrow(InputError);
  });

  it.each([-0.01, 1.01, Number.NaN, '0.5'])('a share refuses %j', (value) => {
    expect(() => requireShare('success', value)).toThrow(/^success: /);
  });

  it.each([0, -3, Number.NaN, Number.POSITIVE_INFINITY])('a positive number refuses %j', (value) => {
    expect(() => requirePositive('ratio', value)).toThrow(InputError);
  });

  it('return what they were given when it is right', () => {
    expect(requireUnits('units', MAX_UNITS)).toBe(MAX_UNITS);
    expect(requireShare('share', 0)).toBe(0);
    expect(requireShare('share', 1)).toBe(1);
    expect(requireText('id', ' x ')).toBe(' x ');
    expect(requireOneOf('habit', 'b', ['a', 'b'] as const)).toBe('b');
  });

  it('a blank text and an unknown choice are refused', () => {
    expect(() => requireText('id', '  ')).toThrow(/^id: /);
    expect(() => requireOneOf('habit', 'c', ['a', 'b'] as const)).toThrow(/one of a, b/);
  });

  it('texts are ordered by code units, capitals first', () => {
    expect(['b', 'a', 'B', 'ä'].sort(compareText)).toEqual(['B', 'a', 'b', 'ä']);
    expect(compareText('a', 'a')).toBe(0);
  });

  it('an input error keeps its argument and its numbers', () => {
    const error = new InputError('units', 'are too many', { free: 12 });
    expect(error.name).toBe('InputError');
    expect(error.argument).toBe('units');
    expect(error.data).toEqual({ free: 12 });
    expect(error.message).toBe('units: are too many');
  });
});
