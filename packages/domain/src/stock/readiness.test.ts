import { describe, expect, test } from 'vitest';
import { readinessAfter } from './readiness.ts';

const expected = { readyOn: '2026-06-10', rootCheckedOn: null };

describe('a root ball that was looked at', () => {
  test('and holds makes the plants ready that day', () => {
    expect(readinessAfter(expected, { result: 'holds', on: '2026-06-01' })).toEqual({
      readyOn: '2026-06-01',
      rootCheckedOn: '2026-06-01',
    });
  });
  test('and holds later than expected keeps the earlier day', () => {
    expect(readinessAfter(expected, { result: 'holds', on: '2026-06-20' })).toEqual({
      readyOn: '2026-06-10',
      rootCheckedOn: '2026-06-20',
    });
  });
  test('and falls apart takes the check back', () => {
    expect(
      readinessAfter({ readyOn: '2026-05-01', rootCheckedOn: '2026-05-01' }, { result: 'not-yet', on: '2026-05-20' }),
    ).toEqual({ readyOn: null, rootCheckedOn: null });
  });
  test('and falls apart may be expected for a later day', () => {
    expect(readinessAfter(expected, { result: 'not-yet', on: '2026-06-12', expectedOn: '2026-07-01' })).toEqual({
      readyOn: '2026-07-01',
      rootCheckedOn: null,
    });
  });
  test('and circles says nothing of readiness', () => {
    expect(readinessAfter(expected, { result: 'circling', on: '2026-06-12' })).toEqual(expected);
  });
  test('on a day that does not exist is refused', () => {
    expect(() => readinessAfter(expected, { result: 'holds', on: '2026-02-30' })).toThrow('on');
  });
});
