import { describe, expect, it } from 'vitest';
import { movedOn } from './move-on.ts';

const before = { happenedOn: '2026-05-20', units: null as number | null, note: '', lines: [] as string[] };
const now = { ...before, happenedOn: '2026-05-21', lines: [] };

describe('a form that is open over midnight', () => {
  it('takes the new day where nobody has chosen one, and keeps what was typed', () => {
    expect(movedOn({ ...before, units: 12, note: 'late' }, new Set(['units', 'note']), before, now)).toEqual({
      ...before,
      happenedOn: '2026-05-21',
      units: 12,
      note: 'late',
    });
  });

  it('keeps a day that somebody chose, be it the one that was there', () => {
    expect(movedOn(before, new Set(['happenedOn']), before, now)).toBe(before);
    const chosen = { ...before, happenedOn: '2026-05-11' };
    expect(movedOn(chosen, new Set(['happenedOn']), before, now)).toBe(chosen);
  });

  it('keeps words, which another reading of what is edited may have changed meanwhile', () => {
    expect(movedOn(before, new Set(), before, { ...now, note: 'of somebody else' })).toEqual({
      ...before,
      happenedOn: '2026-05-21',
    });
  });

  it('keeps lists as they are, which only look new because they are made anew', () => {
    const typed = { ...before, lines: ['A'] };
    expect(movedOn(typed, new Set(), before, now).lines).toBe(typed.lines);
  });
});
