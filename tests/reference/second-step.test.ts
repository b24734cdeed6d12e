import { describe, expect, it } from 'vitest';
import {
  plainCode,
  recoveryCodes,
  recoveryHash,
  stepOf,
} from '../../apps/server/src/features/people/second-step/codes.ts';

/** The secret of RFC 6238, appendix B (SHA-1): the ASCII digits 1 to 0 twice, here in base 32. */
const SECRET = 'GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ';

describe('codes of an app', () => {
  // RFC 6238 "TOTP: Time-Based One-Time Password Algorithm", appendix B, table 1, rows of SHA1. A code of six digits is the end of one of eight.
  it.each([
    [59, '94287082', 0x1],
    [1111111109, '07081804', 0x23523ec],
    [1111111111, '14050471', 0x23523ed],
    [1234567890, '89005924', 0x273ef07],
    [2000000000, '69279037', 0x3f940aa],
    [20000000000, '65353130', 0x27bc86aa],
  ])('are those of the standard at %i s', (seconds, vector, step) => {
    expect(stepOf(SECRET, vector.slice(-6), new Date(seconds * 1000), 0)).toBe(step);
  });

  const at = (seconds: number) => new Date(seconds * 1000);
  const code = '050471';
  // The half minute of the code began at 1111111110.
  it.each([
    [-31, null],
    [-30, 0x23523ed],
    [0, 0x23523ed],
    [59, 0x23523ed],
    [60, null],
  ])('work a half minute before and after, here %i s from where theirs began', (seconds, step) => {
    expect(stepOf(SECRET, code, at(1111111110 + seconds), 0)).toBe(step);
  });

  it('work once, and none of an earlier half minute afterwards', () => {
    expect(stepOf(SECRET, code, at(1111111111), 0x23523ed)).toBeNull();
    expect(stepOf(SECRET, '081804', at(1111111111), 0x23523ed)).toBeNull();
  });

  it.each([[''], ['12345'], ['1234567'], ['05047a'], ['٠٥٠٤٧١']])('are six digits: %s is none', (typed) => {
    expect(stepOf(SECRET, typed, at(1111111111), 0)).toBeNull();
  });
});

describe('recovery codes', () => {
  it('are ten, each another, in groups that can be read aloud', () => {
    const codes = recoveryCodes();
    expect(new Set(codes).size).toBe(10);
    for (const each of codes) expect(each).toMatch(/^([2-9A-HJKMNP-Z]{4}-){3}[2-9A-HJKMNP-Z]{4}$/);
  });

  it('are the same however they are typed', () => {
    expect(plainCode(' abcd-efgh jkmn–pqrs'.replace('–', '-'))).toBe('ABCDEFGHJKMNPQRS');
    expect(recoveryHash('abcd efgh jkmn pqrs')).toEqual(recoveryHash('ABCD-EFGH-JKMN-PQRS'));
  });
});
