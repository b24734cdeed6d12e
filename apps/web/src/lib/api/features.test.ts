import { describe, expect, it } from 'vitest';
import { staleAfter } from './features.ts';

describe('what a change makes stale', () => {
  it('is the feature and all that may read it', () => {
    expect(staleAfter(['promises'])).toEqual(['promises', 'gardens', 'sales', 'planning', 'records']);
  });

  it('begins at the earliest of several features', () => {
    expect(staleAfter(['gardens', 'pot-life'])[0]).toBe('potLife');
  });

  it('is only people when people changed', () => {
    expect(staleAfter(['people'])).toEqual(['people']);
  });

  it('is only files when files changed, which no other read looks at', () => {
    expect(staleAfter(['files'])).toEqual(['files']);
    expect(staleAfter(['files', 'gardens'])).toContain('planning');
  });

  it('is everything when the feature is not known here', () => {
    expect(staleAfter(['weather'])[0]).toBe('plants');
  });

  it('is nothing when nothing changed', () => {
    expect(staleAfter([])).toEqual([]);
  });
});
