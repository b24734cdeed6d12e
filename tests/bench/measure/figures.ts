/** The value that a share of the others does not exceed: the smallest that covers it, no value is made up between two. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const value = sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))];
  if (value === undefined) throw new Error('nothing was measured');
  return value;
}

export const median = (values: readonly number[]) => quantile(values, 0.5);

export interface Spread {
  medianMs: number;
  p95Ms: number;
  times: number;
}

export const spread = (values: readonly number[]): Spread => ({
  medianMs: median(values),
  p95Ms: quantile(values, 0.95),
  times: values.length,
});

/** What a figure is printed and passed on with: more digits than a clock on a busy machine can tell are noise. */
export const rounded = (value: number, digits = 2) => Number(value.toFixed(digits));
