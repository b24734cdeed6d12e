import { InputError, requirePositive } from '../kernel/input.ts';

export interface RootDepth {
  /** How deep the roots are thought to go, mm. */
  rootDepthMm: number;
  /** Whether that is deeper than the container. */
  outOfPot: boolean;
  /** Container depth left below the roots, mm; 0 when they are out of it. */
  spareMm: number;
}

/**
 * Whether a taproot has run out of pot: an advice and no limit. Roots are taken to go `ratio` times as deep as the top is
 * tall (two to three for milkweeds: common practice, no published source). The height is the greatest ever recorded, since a
 * dormant plant stands 0 mm tall above the same roots. Lengths in mm; throws InputError for a negative height or a ratio or
 * depth not above 0.
 */
export function rootDepth({
  greatestTopHeightMm,
  ratio,
  containerDepthMm,
}: {
  greatestTopHeightMm: number;
  ratio: number;
  containerDepthMm: number;
}): RootDepth {
  if (!Number.isFinite(greatestTopHeightMm) || greatestTopHeightMm < 0) {
    throw new InputError('greatestTopHeightMm', 'must be 0 mm or more');
  }
  const rootDepthMm = greatestTopHeightMm * requirePositive('ratio', ratio);
  const depthMm = requirePositive('containerDepthMm', containerDepthMm);
  return { rootDepthMm, outOfPot: rootDepthMm > depthMm, spareMm: Math.max(0, depthMm - rootDepthMm) };
}
