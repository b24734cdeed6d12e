import { describe, expect, it } from 'vitest';
import { readRoughDay } from './rough-day-text.ts';

const reader = { today: '2026-05-20', language: 'en' };
const read = (text: string, language = 'en') => readRoughDay(text, { ...reader, language });

describe('a day as it is jotted down', () => {
  it.each([
    ['2026-04-14', '2026-04-14'],
    ['2025-9', '2025-09'],
    ['2024', '2024'],
    ['4/14/2026', '2026-04-14'],
    ['4/14/26', '2026-04-14'],
    ['4/14', '2026-04-14'],
    ['9/14', '2025-09-14'],
    ['2/29', '2024-02-29'],
    ['9/2025', '2025-09'],
    ['Sep 2025', '2025-09'],
    ['september', '2025-09'],
    ['may', '2026-05'],
    ['Sep 14 2025', '2025-09-14'],
    ['14 Sep 2025', '2025-09-14'],
    ['sep 14', '2025-09-14'],
    ['fall 2025', '2025-autumn'],
    ['2025 fall', '2025-autumn'],
    ["fall '24", '2024-autumn'],
    ['fall', '2025-autumn'],
    ['spring', '2026-spring'],
    ['summer', '2025-summer'],
    ['winter', '2026-winter'],
  ])('%s is %s', (typed, text) => {
    expect(read(typed)).toEqual({ kind: 'known', text });
  });

  it('counts a winter that began in this year as the next one', () => {
    expect(readRoughDay('winter', { today: '2026-12-03', language: 'en' })).toEqual({
      kind: 'known',
      text: '2027-winter',
    });
  });

  it('has the day before the month in Spanish', () => {
    expect([
      read('14/4', 'es'),
      read('14 de abril de 2025', 'es'),
      read('otoño 2025', 'es'),
      read('sept', 'es'),
    ]).toEqual([
      { kind: 'known', text: '2026-04-14' },
      { kind: 'known', text: '2025-04-14' },
      { kind: 'known', text: '2025-autumn' },
      { kind: 'known', text: '2025-09' },
    ]);
  });

  it.each(['', '  ', '?'])('is unknown when nothing is said: "%s"', (typed) => {
    expect(read(typed)).toEqual({ kind: 'unknown' });
  });

  it.each([
    '13/14',
    '2/30/2026',
    '2026-02-30',
    'ju 2025',
    'yesterday',
    'Sep 31 2025',
    '12',
    '4/14/2026/1',
    'fall of the roof 2025',
    '99999',
  ])('cannot be read: %s', (typed) => {
    expect(read(typed)).toEqual({ kind: 'unreadable' });
  });
});
