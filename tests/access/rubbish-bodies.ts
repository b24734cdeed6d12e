// Bodies that no screen would send, most of them a good one with something spoilt: those come furthest into the server.
import fc from 'fast-check';

type Step = string | number;

const NUL = String.fromCharCode(0);

/** Where something can be spoilt: each value in the body and the body itself. */
function placesIn(body: unknown, path: Step[] = []): Step[][] {
  if (body === null || typeof body !== 'object') return [path];
  const entries: [Step, unknown][] = Array.isArray(body)
    ? body.map((each: unknown, at) => [at, each])
    : Object.entries(body);
  return [path, ...entries.flatMap(([step, each]) => placesIn(each, [...path, step]))];
}

const REMOVED = Symbol('removed');

function put(body: unknown, [step, ...rest]: Step[], value: unknown): unknown {
  if (step === undefined) return value;
  if (Array.isArray(body))
    return body.flatMap((each: unknown, at) =>
      at !== step ? [each] : rest.length === 0 && value === REMOVED ? [] : [put(each, rest, value)],
    );
  // Keys go one by one, because a copy by spreading would set a prototype instead of keeping the key.
  const copy: Record<string, unknown> = {};
  for (const [key, each] of Object.entries(body as object)) {
    if (key === step && rest.length === 0 && value === REMOVED) continue;
    define(copy, key, key === step ? put(each, rest, value) : each);
  }
  return copy;
}

const define = (target: object, key: string, value: unknown) =>
  Object.defineProperty(target, key, { value, enumerable: true, configurable: true, writable: true });

const nested = (depth: number): unknown => {
  let value: unknown = 'deep';
  for (let at = 0; at < depth; at++) value = at % 2 === 0 ? [value] : { into: value };
  return value;
};

const words = fc.constantFrom(
  '',
  ' ',
  NUL,
  `a${NUL}b`,
  '\ud800',
  '\udfff tail',
  '\u202e\u0000',
  'x'.repeat(121),
  'x'.repeat(100_000),
  '%',
  "'; DROP TABLE lot; --",
  '\\',
  '{}',
  'null',
  'NaN',
  '\u{1f331}'.repeat(60),
  '__proto__',
);
const days = fc.constantFrom(
  '2026-02-30',
  '2026-13-01',
  '0000-00-00',
  '2025-02-29',
  '-2026-05-20',
  '9999-12-31',
  '+010000-01-01',
  '2026-05-20T00:00:00Z',
  '2026-W20',
  '20260520',
  '2026-winter',
  '1-1-1',
  '12026-01-01',
  '0001-01-01',
  '9998-05-20',
  '9998',
  '1899-12-31',
  '2201-spring',
);
const instants = fc.constantFrom(
  '2026-05-20T25:00:00Z',
  '9999-12-31T23:59:59Z',
  '0000-01-01T00:00:00Z',
  '2026-05-20T12:00:00+99:00',
  '2026-05-20',
);
const numbers = fc.constantFrom(
  0,
  -0,
  -1,
  0.5,
  1e-300,
  1e21,
  1e308,
  2 ** 31,
  2 ** 31 - 1,
  2 ** 53,
  -(2 ** 63),
  10_000_001,
  Number.NaN,
  Number.POSITIVE_INFINITY,
);
const ids = fc.constantFrom(
  '00000000-0000-0000-0000-000000000000',
  'ffffffff-ffff-ffff-ffff-ffffffffffff',
  '00000000-0000-4000-8000-000000000000',
  '{00000000-0000-4000-8000-000000000000}',
  'not-an-id',
);
const shapes = fc.constantFrom<unknown>(
  null,
  true,
  false,
  [],
  {},
  [[]],
  [null],
  { length: 1 },
  nested(60),
  nested(400),
  { toString: 'x' },
  { constructor: { prototype: {} } },
  Array.from({ length: 3000 }, () => ''),
);

const rubbish: fc.Arbitrary<unknown> = fc.oneof(words, days, instants, numbers, ids, shapes, fc.jsonValue());

const keys = fc.constantFrom(
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  '',
  'nurseryId',
  'nursery_id',
  `a${NUL}`,
  '0',
);

/** Where to spoil, as a share of the places there are, and how. */
type Spoiling =
  | { at: number; kind: 'replace'; value: unknown }
  | { at: number; kind: 'remove' }
  | { at: number; kind: 'repeat' }
  | { at: number; kind: 'add'; key: string; value: unknown };

const at = fc.double({ min: 0, max: 0.999, noNaN: true });
const spoiling: fc.Arbitrary<Spoiling> = fc.oneof(
  { weight: 8, arbitrary: fc.record({ at, kind: fc.constant('replace' as const), value: rubbish }) },
  { weight: 1, arbitrary: fc.record({ at, kind: fc.constant('remove' as const) }) },
  { weight: 1, arbitrary: fc.record({ at, kind: fc.constant('repeat' as const) }) },
  { weight: 1, arbitrary: fc.record({ at, kind: fc.constant('add' as const), key: keys, value: rubbish }) },
);

function spoil(body: unknown, how: Spoiling): unknown {
  const places = placesIn(body);
  const path = places[Math.floor(how.at * places.length)] ?? [];
  const here = path.reduce<unknown>((value, step) => (value as Record<Step, unknown>)[step], body);
  if (how.kind === 'replace') return put(body, path, how.value);
  if (how.kind === 'remove') return path.length === 0 ? null : put(body, path, REMOVED);
  if (how.kind === 'repeat') return put(body, path, Array.isArray(here) ? [...here, ...here] : [here, here]);
  if (here === null || typeof here !== 'object' || Array.isArray(here))
    return put(body, path, define({}, how.key, how.value));
  return put(body, path, define({ ...here }, how.key, how.value));
}

/** Whether a text that the database cannot keep as it is stands anywhere in it. */
export function holdsBrokenText(value: unknown): boolean {
  if (typeof value === 'string') return value.includes(NUL) || /\p{Surrogate}/u.test(value);
  return typeof value === 'object' && value !== null && Object.entries(value).flat().some(holdsBrokenText);
}

/** As it would arrive: what JSON cannot say is null by then, and keys of a prototype are keys. */
export const arrived = (body: unknown): unknown => JSON.parse(JSON.stringify(body ?? null)) as unknown;

/** A good body spoilt in one place or in several, or no body at all. */
export const spoilt = (good: readonly unknown[]): fc.Arbitrary<unknown> =>
  fc.oneof(
    {
      weight: 9,
      arbitrary: fc
        .tuple(fc.constantFrom(...good), fc.array(spoiling, { minLength: 1, maxLength: 3 }))
        .map(([body, ways]) => arrived(ways.reduce(spoil, body))),
    },
    { weight: 1, arbitrary: rubbish.map(arrived) },
  );
