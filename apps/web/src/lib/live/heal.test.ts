import { describe, expect, it } from 'vitest';
import { heal } from './heal.ts';

describe('the live stream', () => {
  it('marks only the features of the next change', () => {
    expect(heal({ version: 7 }, { version: 8, features: ['stock'] })).toEqual({
      heard: { version: 8 },
      stale: ['stock'],
    });
  });

  it('marks everything when a change was missed before this one', () => {
    expect(heal({ version: 7 }, { version: 9, features: ['stock'] })).toEqual({ heard: { version: 9 }, stale: 'all' });
  });

  it('marks everything when a beat shows a version never heard of', () => {
    expect(heal({ version: 7 }, { version: 9 })).toEqual({ heard: { version: 9 }, stale: 'all' });
  });

  it('marks nothing on a beat that brings no news', () => {
    expect(heal({ version: 7 }, { version: 7 })).toEqual({ heard: { version: 7 }, stale: [] });
  });

  it('takes the first beat as the start, since the reads are fresh then', () => {
    expect(heal({ version: null }, { version: 7 })).toEqual({ heard: { version: 7 }, stale: [] });
  });

  it('learns nothing from a server that has just started', () => {
    expect(heal({ version: 7 }, { version: 0 })).toEqual({ heard: { version: 7 }, stale: [] });
  });

  it('marks everything when the version went back, as after a restored backup', () => {
    expect(heal({ version: 70 }, { version: 9 }).stale).toBe('all');
  });

  it('does not go back for a change that arrives twice', () => {
    expect(heal({ version: 8 }, { version: 8, features: ['stock'] })).toEqual({
      heard: { version: 8 },
      stale: ['stock'],
    });
  });
});
