import { describe, expect, it } from 'vitest';
import { sayInstantsIn } from './days.ts';
import { stock as english } from './en/errors/stock.ts';
import { stock as spanish } from './es/errors/stock.ts';

const closed = { place: 'H1', until: '2026-04-14T03:30:00.000Z', reason: '' };

describe('the sentence for a closed place', () => {
  it('says the hour by the clock of the nursery, wherever its reader is', () => {
    sayInstantsIn('America/Chicago');
    expect(english['place-closed'](closed)).toMatch(/Apr 13, 2026.*10:30/);
    sayInstantsIn('Asia/Tokyo');
    expect(english['place-closed'](closed)).toMatch(/Apr 14, 2026.*12:30/);
  });

  it('says it in Spanish as well', () => {
    sayInstantsIn('America/Chicago');
    expect(spanish['place-closed'](closed)).toMatch(/13 abr 2026.*22:30/);
  });
});
