import { describe, expect, it } from 'vitest';
import { fillPath, FLOOR_Y, halfWidth, hatchPath, levelOf, RIM_Y, rootPath } from './pot-shape.ts';

describe('the pot sign', () => {
  it('is empty at no share, full to the rim at the whole, and never drawn outside itself', () => {
    expect([levelOf(0), levelOf(1), levelOf(-3), levelOf(7)]).toEqual([FLOOR_Y, RIM_Y, FLOOR_Y, RIM_Y]);
  });

  it('fills half its height at half its pot life', () => {
    expect(levelOf(0.5)).toBe((FLOOR_Y + RIM_Y) / 2);
  });

  it('tapers towards the floor', () => {
    expect(halfWidth(RIM_Y)).toBeGreaterThan(halfWidth(FLOOR_Y));
  });

  it('draws more strands and more hatching the further roots have come', () => {
    const strands = (path: string) => path.split('M').length - 1;
    expect(strands(rootPath(levelOf(0.9)))).toBeGreaterThan(strands(rootPath(levelOf(0.3))));
    expect(strands(hatchPath(levelOf(0.9)))).toBeGreaterThan(strands(hatchPath(levelOf(0.3))));
  });

  it('writes numbers that an SVG path can hold', () => {
    expect(fillPath(levelOf(1 / 3))).toMatch(/^M[\d.]+ [\d.]+(L[\d.]+ [\d.]+){3}Z$/);
  });
});
