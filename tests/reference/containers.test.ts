import {
  MILLILITRES_PER_CUBIC_INCH,
  referenceContainers,
  tradeClassOf,
  tradeClasses,
} from '@rootclock/server/reference/index';
import { CONTAINER_KINDS } from '@rootclock/domain';
import { describe, expect, it } from 'vitest';

function containerOf(code: string) {
  const container = referenceContainers.find((row) => row.code === code);
  if (container === undefined) throw new Error(`there is no container ${code}`);
  return container;
}

describe('trade classes', () => {
  // ANSI Z60.1 (2004), second-hand; millilitres by 1 in³ = 16.387064 ml.
  it.each([
    ['#1', 152, 251, 2490.83, 4113.15],
    ['#2', 320, 474, 5243.86, 7767.47],
    ['#3', 628, 742, 10_291.08, 12_159.2],
    ['#5', 785, 1242, 12_863.85, 20_352.73],
  ])('%s runs from %d to %d cubic inches, which are %d to %d ml', (tradeClass, low, high, lowMl, highMl) => {
    const row = tradeClasses.value.find((candidate) => candidate.tradeClass === tradeClass);
    expect(row).toEqual({ tradeClass, lowCubicInches: low, highCubicInches: high });
    expect(low * MILLILITRES_PER_CUBIC_INCH).toBeCloseTo(lowMl, 1);
    expect(high * MILLILITRES_PER_CUBIC_INCH).toBeCloseTo(highMl, 1);
  });

  it('hold their bounds and leave the gaps between them open', () => {
    expect(tradeClassOf(2491)).toBe('#1');
    expect(tradeClassOf(4113)).toBe('#1');
    expect(tradeClassOf(2490)).toBeNull();
    expect(tradeClassOf(4114)).toBeNull();
    expect(tradeClassOf(5000)).toBeNull();
  });

  it('name their source', () => {
    expect(tradeClasses.standing).toBe('confirmed');
    expect(tradeClasses.source).toContain('ANSI Z60.1');
  });
});

describe('containers', () => {
  it.each([
    ['class-1', '#1'],
    ['class-2', '#2'],
    ['class-3', '#3'],
    ['class-5', '#5'],
  ])('%s lies within trade class %s', (code, tradeClass) => {
    expect(containerOf(code).tradeClass).toBe(tradeClass);
  });

  it.each(['plug-288', 'plug-128', 'plug-72', 'plug-50-deep', 'pot-9cm', 'tall-1l', 'pot-2l', 'flat-open', 'ground'])(
    '%s is among them',
    (code) => {
      expect(containerOf(code).code).toBe(code);
    },
  );

  it('have a code each and a kind from the list', () => {
    expect(new Set(referenceContainers.map((row) => row.code)).size).toBe(referenceContainers.length);
    expect(referenceContainers.filter((row) => !CONTAINER_KINDS.includes(row.kind))).toEqual([]);
  });

  it('are all assumed until somebody measures them', () => {
    expect(referenceContainers.filter((row) => row.standing !== 'assumed')).toEqual([]);
  });

  it('hold no more than their outer box could', () => {
    for (const { code, volumeMl, depthMm, widthMm, lengthMm, cells } of referenceContainers) {
      if (volumeMl === null || depthMm === null || widthMm === null || lengthMm === null) continue;
      expect(volumeMl * (cells ?? 1), code).toBeLessThan((depthMm * widthMm * lengthMm) / 1000);
    }
  });

  it('have cells exactly where they are trays', () => {
    expect(referenceContainers.filter((row) => (row.cells !== null) !== (row.kind === 'tray'))).toEqual([]);
  });

  it('have no pot in the ground', () => {
    expect(containerOf('ground')).toMatchObject({ kind: 'ground', volumeMl: null, depthMm: null });
  });

  it('are whole millilitres and millimetres', () => {
    const sizes = referenceContainers.flatMap((row) => [row.volumeMl, row.depthMm, row.widthMm, row.lengthMm]);
    expect(sizes.filter((size) => size !== null && (!Number.isInteger(size) || size <= 0))).toEqual([]);
  });
});
