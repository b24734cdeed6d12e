/** Arcs between nodes, each from a lower to a higher number; all numbers whole. */
export interface Network {
  /** What each node gives (positive) or gets (negative); in all 0. */
  gives: readonly number[];
  from: Int32Array;
  to: Int32Array;
  /** Infinity where only what nodes give and get limits an arc. */
  capacity: Float64Array;
  /** Costs of a unit by goal, the first goal first, each by arc. */
  goals: readonly Float64Array[];
}
