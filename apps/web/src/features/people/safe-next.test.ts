import { describe, expect, it } from 'vitest';
import { safeNext } from './safe-next.ts';

describe('where a sign-in leads', () => {
  it('is the page that asked for it', () => {
    expect(safeNext('/stock/lots?page=2')).toBe('/stock/lots?page=2');
  });

  it.each([
    ['//elsewhere.example'],
    ['/\\elsewhere.example'],
    ['https://elsewhere.example'],
    ['javascript:alert(1)'],
    [''],
    [undefined],
  ])('is the start and never %s', (next) => {
    expect(safeNext(next)).toBe('/');
  });
});
