import { describe, expect, it } from 'vitest';
import type { Failure } from '../api/failure.ts';
import { isStalled, nextStep, pauseAfter, reduce, type Entry, type Queue } from './queue.ts';

const LOT = '00000000-0000-4000-8000-000000000001';
const CHILD = '00000000-0000-4000-8000-000000000002';
const refusal: Failure = { code: 'not-enough-units', class: 'refusal', data: { wanted: 13, available: 12, of: 'lot' } };

const entry = (id: string, change: Partial<Entry> = {}): Entry => ({
  id,
  name: 'stock.move',
  title: '',
  body: {},
  personId: 'ann',
  enteredAt: 0,
  creates: [],
  from: '/stock',
  tries: 0,
  dueAt: 0,
  parked: null,
  ...change,
});
const queueOf = (...entries: Entry[]): Queue =>
  entries.reduce<Queue>((queue, each) => reduce(queue, { kind: 'entered', entry: each }), []);
const ids = (queue: Queue) => queue.map((each) => each.id);
const parkedIds = (queue: Queue) => ids(queue.filter((each) => each.parked));

describe('the queue', () => {
  it('sends the oldest entry first, and the next with it', () => {
    expect(nextStep(queueOf(entry('a'), entry('b')), 'ann', 0)).toMatchObject({
      kind: 'send',
      entries: [{ id: 'a' }, { id: 'b' }],
    });
  });

  it('lets nothing overtake an entry that waits for its next try', () => {
    const queue = reduce(queueOf(entry('a'), entry('b')), { kind: 'lost', id: 'a', now: 5_000 });
    expect(nextStep(queue, 'ann', 5_400)).toEqual({ kind: 'wait', ms: 600 });
  });

  it('sends an unanswered entry again under the same id', () => {
    const queue = reduce(queueOf(entry('a')), { kind: 'lost', id: 'a', now: 0 });
    expect(nextStep(queue, 'ann', 1_000)).toMatchObject({ kind: 'send', entries: [{ id: 'a', tries: 1 }] });
  });

  it('forgets an entry only when it was answered', () => {
    expect(ids(reduce(queueOf(entry('a'), entry('b')), { kind: 'answered', id: 'a' }))).toEqual(['b']);
  });

  it('waits longer after each lost answer, up to a minute', () => {
    expect([1, 2, 3, 20].map(pauseAfter)).toEqual([1_000, 2_000, 4_000, 60_000]);
  });

  it('waits no longer once the line is back', () => {
    const queue = reduce(reduce(queueOf(entry('a')), { kind: 'lost', id: 'a', now: 0 }), { kind: 'hurried' });
    expect(nextStep(queue, 'ann', 0)).toMatchObject({ kind: 'send' });
  });

  it('sends at once what waits by a clock that was set back since', () => {
    const queue = reduce(queueOf(entry('a')), { kind: 'lost', id: 'a', now: 9 * 3_600_000 });
    expect(nextStep(queue, 'ann', 0)).toMatchObject({ kind: 'send', entries: [{ id: 'a' }] });
  });

  it('keeps the entries of somebody else until they sign in', () => {
    expect(nextStep(queueOf(entry('a', { personId: 'ben' })), 'ann', 0)).toEqual({ kind: 'idle' });
  });

  it('parks what is refused and goes on with the rest', () => {
    const queue = reduce(queueOf(entry('a'), entry('b')), { kind: 'refused', id: 'a', failure: refusal });
    expect(parkedIds(queue)).toEqual(['a']);
    expect(nextStep(queue, 'ann', 0)).toMatchObject({ kind: 'send', entries: [{ id: 'b' }] });
  });

  it('keeps the input of what it parks', () => {
    const queue = reduce(queueOf(entry('a', { body: { units: 13 } })), { kind: 'refused', id: 'a', failure: refusal });
    expect(queue[0]).toMatchObject({ body: { units: 13 }, parked: { kind: 'refused', failure: refusal } });
  });
});

describe('an entry without an answer', () => {
  const stalled = reduce(queueOf(entry('a'), entry('b')), { kind: 'lost', id: 'a', now: 0 });

  it('is stalled once it or one before it was tried in vain', () => {
    expect([isStalled(stalled, 'a'), isStalled(stalled, 'b')]).toEqual([true, true]);
  });

  it('is on its way while nothing has failed', () => {
    expect(isStalled(queueOf(entry('a')), 'a')).toBe(false);
  });

  it('is not stalled by one that comes after it', () => {
    expect(isStalled(reduce(queueOf(entry('a'), entry('b')), { kind: 'lost', id: 'b', now: 0 }), 'a')).toBe(false);
  });

  it('is unknown once it has been answered', () => {
    expect(isStalled(stalled, 'gone')).toBe(false);
  });
});

describe('entries that depend on a refused one', () => {
  const pot = entry('pot', { body: { lotId: LOT }, creates: [LOT] });
  const split = entry('split', { body: { fromLotId: LOT, lotId: CHILD }, creates: [CHILD] });
  const moveChild = entry('move', { body: { lotId: CHILD } });
  const other = entry('other', { body: { note: 'nothing to do with it' } });
  const parked = reduce(queueOf(pot, split, moveChild, other), { kind: 'refused', id: 'pot', failure: refusal });

  it('are parked with it, down to the last', () => {
    expect(parkedIds(parked)).toEqual(['pot', 'split', 'move']);
  });

  it('go out after it has been answered', () => {
    const queue = reduce(reduce(parked, { kind: 'send-again', id: 'pot' }), { kind: 'answered', id: 'pot' });
    expect(parkedIds(queue)).toEqual([]);
    expect(nextStep(queue, 'ann', 0)).toMatchObject({
      kind: 'send',
      entries: [{ id: 'split' }, { id: 'move' }, { id: 'other' }],
    });
  });

  it('follow the mended entry that takes its place', () => {
    const mended = reduce(parked, { kind: 'entered', entry: { ...pot, id: 'mended' }, replaces: 'pot' });
    expect(ids(mended)).toEqual(['mended', 'split', 'move', 'other']);
    expect(parkedIds(reduce(mended, { kind: 'answered', id: 'mended' }))).toEqual([]);
  });

  it('are parked at once when they are entered later', () => {
    const queue = reduce(parked, { kind: 'entered', entry: entry('late', { body: { lotId: LOT } }) });
    expect(queue.at(-1)?.parked).toEqual({ kind: 'depends', on: 'pot' });
  });
});
