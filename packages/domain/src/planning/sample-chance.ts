// Seeded chance for tests that play a batch through.

/** A 32-bit mixing generator (the published "mulberry32" recurrence), good enough to follow plants. */
function uniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

export interface SampleChance {
  /** How many of `tried` plants pass, each by itself. */
  binomial(tried: number, share: number): number;
  beta(alpha: number, beta: number): number;
}

export function chanceFrom(seed: number): SampleChance {
  const next = uniform(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
  /** G. Marsaglia and W. W. Tsang, "A simple method for generating gamma variables", 2000; below 1 by the power of a uniform number. */
  const gamma = (shape: number): number => {
    if (shape < 1) return gamma(shape + 1) * (1 - next()) ** (1 / shape);
    const d = shape - 1 / 3;
    const c = 1 / Math.sqrt(9 * d);
    for (;;) {
      const x = normal();
      const v = (1 + c * x) ** 3;
      if (v > 0 && Math.log(1 - next()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
    }
  };
  return {
    binomial: (tried, share) => {
      let passed = 0;
      for (let each = 0; each < tried; each += 1) if (next() < share) passed += 1;
      return passed;
    },
    beta: (alpha, beta) => {
      const a = gamma(alpha);
      return a / (a + gamma(beta));
    },
  };
}
