// Walks all contracts down to every text, day and number in them.
import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import * as contracts from './index.ts';
import { readInput } from './issues.ts';

interface Leaf {
  path: string;
  kind: string;
  schema: z.ZodMiniType;
}

interface Def {
  type: string;
  shape?: Record<string, z.ZodMiniType>;
  element?: z.ZodMiniType;
  innerType?: z.ZodMiniType;
  in?: z.ZodMiniType;
  options?: z.ZodMiniType[];
  items?: z.ZodMiniType[];
  keyType?: z.ZodMiniType;
  valueType?: z.ZodMiniType;
}

const isSchema = (value: unknown): value is z.ZodMiniType =>
  typeof value === 'object' && value !== null && '_zod' in value;

function leavesOf(schema: z.ZodMiniType, path: string): Leaf[] {
  const def = schema._zod.def as unknown as Def;
  const inner: [string, z.ZodMiniType][] = [
    ...Object.entries(def.shape ?? {}),
    ...[def.element, def.innerType, def.in, def.keyType, def.valueType]
      .filter(isSchema)
      .map((each): [string, z.ZodMiniType] => ['', each]),
    ...[...(def.options ?? []), ...(def.items ?? [])]
      .filter(isSchema)
      .map((each, at): [string, z.ZodMiniType] => [String(at), each]),
  ];
  if (inner.length === 0) return [{ path, kind: def.type, schema }];
  return inner.flatMap(([step, each]) => leavesOf(each, step === '' ? path : `${path}.${step}`));
}

const features = Object.entries(contracts).filter(([, value]) => typeof value === 'object' && !isSchema(value));
const leaves = features.flatMap(([feature, exported]) =>
  Object.entries(exported as Record<string, unknown>).flatMap(([name, value]) =>
    isSchema(value) ? leavesOf(value, `${feature}.${name}`) : [],
  ),
);
const texts = leaves.filter(({ kind }) => kind === 'string');
// The number of a command is the database's own and only ever compared.
const numbers = leaves.filter(({ kind, path }) => (kind === 'number' || kind === 'int') && !path.endsWith('ersion'));

const accepted = ({ schema }: Leaf, value: unknown) => readInput(schema, value).ok;
/** Of many lengths, so that none is refused for its length alone. */
const spoiltBy = (character: string) =>
  [1, 2, 3, 4, 8, 10, 15, 30].map((length) => `a${character}${'b'.repeat(length)}`);

describe('the walk', () => {
  it('comes to everything that can be sent', () => {
    expect(texts.length).toBeGreaterThan(300);
    expect(numbers.length).toBeGreaterThan(100);
    // Unknown is what a field held when its form read it: that is compared and never stored.
    expect(new Set(leaves.map(({ kind }) => kind))).toEqual(
      new Set(['string', 'number', 'boolean', 'enum', 'literal', 'object', 'unknown', 'custom']),
    );
    expect(leaves.filter(({ kind, path }) => kind === 'unknown' && !path.endsWith('.was'))).toEqual([]);
    // A file is no text: what it may be is told by its own bytes.
    expect(leaves.filter(({ kind, path }) => kind === 'custom' && !path.endsWith('.bytes'))).toEqual([]);
  });
});

describe('every text', () => {
  it.each([
    ['NUL', '\0'],
    ['the first half of a pair', '\ud83c'],
    ['the second half of a pair', '\udf31'],
  ])('refuses %s', (_, character) => {
    expect(
      texts.filter((leaf) => spoiltBy(character).some((value) => accepted(leaf, value))).map(({ path }) => path),
    ).toEqual([]);
  });

  it('says which character it is about and keeps a whole pair', () => {
    expect(readInput(contracts.fields.shortText, 'a\0b')).toEqual({
      ok: false,
      issues: [{ path: '', problem: 'broken-text' }],
    });
    expect(readInput(contracts.fields.optionalText, 'a\ud83c')).toEqual({
      ok: false,
      issues: [{ path: '', problem: 'broken-text' }],
    });
    expect(readInput(contracts.fields.shortText, 'Łąka \u{1f331}')).toEqual({ ok: true, data: 'Łąka \u{1f331}' });
  });
});

describe('every day, month, season, year and instant', () => {
  const near = ['2026-05-20', '2026-05', '2026-spring', '2026', '2026-05-20T12:00:00Z'];
  const dated = texts.filter(
    (leaf) =>
      near.some((day) => accepted(leaf, day)) &&
      !['a word', 'a-word', 'more than a word'].some((word) => accepted(leaf, word)),
  );

  it('is known by what it takes', () => expect(dated.length).toBeGreaterThan(60));

  it.each(['0001', '1899', '2201', '9998', '9999'])('refuses the year %s', (year) => {
    const far = near.map((day) => day.replace('2026', year));
    expect(dated.filter((leaf) => far.some((day) => accepted(leaf, day))).map(({ path }) => path)).toEqual([]);
  });

  it('says which years there are, and of what is no day at all that instead', () => {
    const { calendarDate, roughDay, instant } = contracts.fields;
    for (const [schema, day] of [
      [calendarDate, '9998-05-20'],
      [roughDay, '9998'],
      [roughDay, '1899-12'],
      [roughDay, '2201-winter'],
      [instant, '9998-05-20T00:00:00Z'],
    ] as const) {
      expect(readInput(schema, day)).toEqual({
        ok: false,
        issues: [{ path: '', problem: 'far-year', least: 1900, most: 2200 }],
      });
    }
    for (const [schema, day] of [
      [calendarDate, '9998-02-30'],
      [roughDay, '9998-13'],
      [roughDay, '9998-autum'],
    ] as const) {
      expect(readInput(schema, day)).toEqual({ ok: false, issues: [{ path: '', problem: 'not-a-date' }] });
    }
    for (const day of ['1900-01-01', '2200-12-31', '1900', '2200-winter'])
      expect(readInput(roughDay, day).ok).toBe(true);
  });
});

describe('every number', () => {
  it.each([-1e15, 1e15, 1e21, Number.MAX_SAFE_INTEGER + 2, Number.NaN, Number.POSITIVE_INFINITY])(
    'refuses %s, which no sum or quotient could bear',
    (value) => {
      expect(numbers.filter((leaf) => accepted(leaf, value)).map(({ path }) => path)).toEqual([]);
    },
  );

  it('that must be above nothing is never so little that the database would keep nothing of it', () => {
    const aboveNothing = numbers.filter((leaf) => !accepted(leaf, 0) && !accepted(leaf, -1));
    expect(aboveNothing.length).toBeGreaterThan(30);
    // Grams are read to the milligram before they are kept, and never to nothing.
    expect(
      aboveNothing
        .filter((leaf) => [0.0004, 1e-300].some((value) => accepted(leaf, value)) && !/[gG]rams$/.test(leaf.path))
        .map(({ path }) => path),
    ).toEqual([]);
    expect(readInput(contracts.fields.grams, 1e-300)).toEqual({ ok: true, data: 0.001 });
  });
});
