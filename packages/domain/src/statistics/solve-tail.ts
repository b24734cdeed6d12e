/** A tail that grows with t, and by how much it grows there. */
export interface Slope {
  tail: number;
  density: number;
}

/**
 * The t at which a growing tail is `target` (above 0, at most about a half). The logarithm of such a tail is concave in t for every distribution used here, so Newton's
 * steps on it approach from the left without ever passing the answer; where a step leaves what is known to hold it, the middle is taken.
 */
export function solveTail(
  target: number,
  start: number,
  least: number,
  most: number,
  at: (t: number) => Slope,
): number {
  const logTarget = Math.log(target);
  let low = least;
  let high = most;
  let t = Math.min(most, Math.max(least, start));
  for (let step = 0; step < 200; step += 1) {
    const { tail, density } = at(t);
    const error = Math.log(tail) - logTarget;
    if (error === 0) return t;
    if (error < 0) low = t;
    else high = t;
    const newton = t - (error * tail) / density;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - t) <= 1e-15 * Math.max(1e-3, Math.abs(t)) || (next === low && next === high)) return next;
    t = next;
  }
  return t;
}
