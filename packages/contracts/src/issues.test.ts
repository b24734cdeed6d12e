import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import * as fields from './fields.ts';
import { readInput } from './issues.ts';

const shape = z.strictObject({
  id: fields.id,
  units: fields.units,
  on: fields.calendarDate,
  cause: z.enum(['frost', 'rot']),
  note: fields.shortText,
});
const good = {
  id: '6a1c7f0e-3f6d-4a55-9a52-0d8f3f6f9b11',
  units: 3,
  on: '2026-04-14',
  cause: 'rot',
  note: 'by the door',
};
const problemWith = (change: object) => {
  const result = readInput(shape, { ...good, ...change });
  return result.ok ? null : result.issues.map(({ path, problem }) => `${path}: ${problem}`).join(', ');
};

describe('what is wrong with an input', () => {
  it('is nothing when every field holds', () => {
    expect(readInput(shape, good)).toEqual({ ok: true, data: good });
  });

  it.each([
    [{ units: undefined }, 'units: required'],
    [{ units: null }, 'units: required'],
    [{ units: '12' }, 'units: not-a-number'],
    [{ units: Number.NaN }, 'units: not-a-number'],
    [{ units: 1.5 }, 'units: not-whole'],
    [{ units: 0 }, 'units: too-small'],
    [{ units: 20_000_000 }, 'units: too-big'],
    [{ on: '' }, 'on: required'],
    [{ on: '2026-02-30' }, 'on: not-a-date'],
    [{ cause: '' }, 'cause: required'],
    [{ cause: 'moon' }, 'cause: not-a-choice'],
    [{ note: '   ' }, 'note: required'],
    [{ note: 'x'.repeat(121) }, 'note: too-long'],
    [{ id: 'lot 7' }, 'id: wrong-form'],
  ])('names the field and the kind of problem of %j', (change, expected) => {
    expect(problemWith(change)).toBe(expected);
  });

  it('names a field that nobody asked for', () => {
    expect(problemWith({ extra: 1 })).toBe(': unknown-field');
  });

  it('carries the bounds that a sentence needs', () => {
    const result = readInput(shape, { ...good, units: 0 }, 'body');
    expect(result).toEqual({ ok: false, issues: [{ path: 'body.units', problem: 'too-small', least: 1 }] });
  });
});
