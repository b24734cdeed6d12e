import type { Edited } from '@rootclock/contracts';
import { describe, expect, it } from 'vitest';
import { type AsRead, asReadOf, isAsStored, sentWith, settled, valuesOf } from './as-read.ts';

const read: AsRead = { edition: 4, body: { clientId: 'c', name: 'Fen Hollow', phone: null, note: 'gate' } };
const typed = { clientId: 'c', name: 'Fen Hollow', phone: '555 0102', note: 'gate' };
const edited: Edited = {
  edition: 9,
  by: 'Teodor',
  at: '2026-05-20T17:00:00.000Z',
  fields: [{ field: 'phone', stored: '555 0101', sent: '555 0102' }],
  stored: { name: 'Fen Hollow Farm', phone: '555 0101', note: 'gate' },
  called: {},
};

describe('what goes with an edit', () => {
  it('is the edition and what the changed fields held', () => {
    expect(sentWith(read, typed)).toEqual({ edition: 4, was: { phone: null } });
  });

  it('takes an emptied field for no change where it was empty', () => {
    expect(sentWith(read, { ...typed, phone: '' })).toEqual({ edition: 4, was: {} });
  });

  it('counts a field that was not there to be read as changed', () => {
    expect(sentWith(read, { ...typed, purity: 0.9 })).toEqual({ edition: 4, was: { phone: null, purity: null } });
  });

  it('is the edition alone where nobody knows what was read', () => {
    expect(sentWith(asReadOf({ ...typed, edition: 4 }), typed)).toEqual({ edition: 4 });
    expect(sentWith(asReadOf(typed), typed)).toEqual({ edition: 1 });
  });

  it('is the same for an entry that was kept', () => {
    expect(sentWith(asReadOf({ ...typed, edition: 4, was: { phone: null } }), typed)).toEqual({
      edition: 4,
      was: { phone: null },
    });
  });
});

describe('an edit over another', () => {
  const sent = { ...typed, edition: 4, was: { phone: null } };

  it('keeps mine where both changed a field, and theirs where only they did', () => {
    expect(settled(sent, edited, 'mine')).toEqual({
      clientId: 'c',
      name: 'Fen Hollow Farm',
      phone: '555 0102',
      note: 'gate',
    });
  });

  it('takes theirs, and keeps what only I changed', () => {
    const body = settled({ ...sent, note: 'north gate', was: { phone: null, note: 'gate' } }, edited, 'theirs');
    expect(body).toEqual({ clientId: 'c', name: 'Fen Hollow Farm', phone: '555 0101', note: 'north gate' });
    expect(isAsStored(body, edited)).toBe(false);
    expect(isAsStored(settled(sent, edited, 'theirs'), edited)).toBe(true);
  });

  it('counts every field as mine where nobody knows what was read', () => {
    expect(settled({ ...typed, edition: 4 }, edited, 'mine')).toEqual(typed);
  });

  it('shows no value as an empty text, and leaves what is no field of the body', () => {
    expect(valuesOf({ phone: null, units: null }, { phone: '1', units: 2, open: true })).toEqual({
      phone: '',
      units: null,
      open: true,
    });
  });
});
