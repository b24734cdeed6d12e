import { describe, expect, it } from 'vitest';
import { reckonStart, type StartAsked } from './reckon-start.ts';

/** A share that is sure, so that the binomial figures of the trade's arithmetic apply. */
const sure = (share: number) => ({ alpha: share * 1e9, beta: (1 - share) * 1e9 });
const asked: StartAsked = {
  wanted: 50,
  confidence: 0.9,
  unit: 'cell',
  ahead: [sure(0.8)],
  seedsPerCell: 2,
  cellsPerTray: 72,
  cellMl: 60,
  potMl: 1000,
};

describe('what has to be started', () => {
  it('is the fewest cells that give the plants so surely: 68 for 50 at 0.8 and 90 % (exact binomial)', () => {
    expect(reckonStart(asked)).toMatchObject({ units: 68, counts: 'units', trays: 1, inTrays: 72, seeds: 144 });
  });
  it('takes the medium of whole trays and of the pots wanted, packed down', () => {
    const reckoned = reckonStart(asked);
    expect(reckoned).toMatchObject({
      cellLitres: expect.closeTo((72 * 0.06) / 0.85, 9),
      potLitres: expect.closeTo(50 / 0.85, 9),
    });
  });
  it('is as many as are wanted where nothing is ahead', () =>
    expect(reckonStart({ ...asked, ahead: [] })).toMatchObject({ units: 50 }));
  it('is counted in seeds where plants are pricked out of trays', () => {
    expect(reckonStart({ ...asked, unit: 'tray', seedsPerCell: null })).toMatchObject({
      units: 68,
      counts: 'seeds',
      seeds: 68,
      trays: null,
      cellLitres: null,
    });
  });
  it('is single pieces without a tray', () =>
    expect(
      reckonStart({ ...asked, unit: 'piece', seedsPerCell: null, cellsPerTray: null, cellMl: null }),
    ).toMatchObject({ units: 68, trays: null, seeds: null }));
  it('is never enough where nothing passes', () =>
    expect(reckonStart({ ...asked, ahead: [{ alpha: 1e-9, beta: 20 }] })).toBe('never'));
  it.each([
    ['no number', { wanted: null }],
    ['none wanted', { wanted: 0 }],
    ['half a plant', { wanted: 1.5 }],
    ['certainty', { confidence: 1 }],
    ['no confidence', { confidence: null }],
  ])('is not reckoned for %s', (_what, part) => expect(reckonStart({ ...asked, ...part })).toBe('incomplete'));
});
