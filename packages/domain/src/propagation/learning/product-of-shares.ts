import { InputError } from '../../kernel/input.ts';
import { requireShapes, type Shapes } from '../../statistics/beta-binomial.ts';

const HAIR = 1e-9;
/** As many tries as a product may be worth; what is surer than that is no longer told apart. */
const SUREST = 1e9;

/**
 * The beta distribution with the mean and the variance of the product of independent shares, each given by its own beta distribution: the share
 * that gets through all stages one after the other. The product itself is no beta distribution; this one agrees with it in its first two moments,
 * E[Πp] = Πa/(a+b) and E[Πp²] = Πa(a+1)/((a+b)(a+b+1)), which is what is needed of it. Of one share it is that share. Throws InputError for no shares
 * and for a shape that is not above 0.
 */
export function productOfShares(shares: readonly Shapes[]): Shapes {
  const [first, ...others] = shares;
  if (!first) throw new InputError('shares', 'must hold at least one share');
  if (others.length === 0) return requireShapes(first);
  let mean = 1;
  let square = 1;
  for (const shapes of shares) {
    const { alpha, beta } = requireShapes(shapes);
    const tried = alpha + beta;
    mean *= alpha / tried;
    square *= (alpha / tried) * ((alpha + 1) / (tried + 1));
  }
  const variance = square - mean * mean;
  const worth = variance > 0 ? Math.min(SUREST, (mean * (1 - mean)) / variance - 1) : SUREST;
  return { alpha: Math.max(HAIR, mean * worth), beta: Math.max(HAIR, (1 - mean) * worth) };
}
