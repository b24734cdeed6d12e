import { describe, expect, it } from 'vitest';
import { readList, writeList, type ListDefaults } from './list-search.ts';

const defaults: ListDefaults = { sort: 'plantBy', filters: ['q', 'place'] };

describe('a list in the address', () => {
  it('is the first page in its usual order when the address says nothing', () => {
    expect(readList({}, defaults)).toEqual({ page: 1, sort: 'plantBy', descending: false, filters: {} });
  });

  it('is read back as it was written', () => {
    const state = { page: 3, sort: 'units', descending: true, filters: { q: 'milk', place: 'house-1' } };
    expect(readList(writeList({}, defaults, state), defaults)).toEqual(state);
  });

  it('goes back to the first page when a filter changes', () => {
    expect(writeList({ page: 4 }, defaults, { filters: { q: 'aster' } })).toEqual({ q: 'aster' });
  });

  it('leaves other parts of the address alone', () => {
    expect(writeList({ view: 'board' }, defaults, { page: 2 })).toEqual({ view: 'board', page: 2 });
  });

  it('takes nonsense for the first page', () => {
    expect(['x', -2, 1.5, null].map((page) => readList({ page }, defaults).page)).toEqual([1, 1, 1, 1]);
  });

  it('does not take up filters it does not know', () => {
    expect(readList({ colour: 'red' }, defaults).filters).toEqual({});
  });
});
