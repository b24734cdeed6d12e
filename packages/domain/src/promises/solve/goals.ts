/**
 * Costs that are compared goal by goal, the first goal that differs deciding. Neighbouring goals are written into one number where that is exact:
 * a sum over any way through a network of `nodes` nodes has at most 2·nodes + 1 terms, so that a lesser goal's sum never reaches the weight that
 * is given to one unit of the goal before it. Twice as many terms stay within half of the whole numbers that a double holds exactly, which leaves the
 * other half to potentials (see `SpanningTree`).
 */
export function joinGoals(goals: readonly Float64Array[], nodes: number): Float64Array[] {
  const terms = 2 * nodes + 1;
  const joined: Float64Array[] = [];
  for (const goal of [...goals].reverse()) {
    const lesser = joined[0];
    const together = lesser && join(goal, lesser, terms);
    if (together) joined[0] = together;
    else joined.unshift(goal);
  }
  return joined;
}

function join(goal: Float64Array, lesser: Float64Array, terms: number): Float64Array | null {
  const weight = terms * most(lesser) + 1;
  if ((most(goal) * weight + most(lesser)) * 4 * terms > Number.MAX_SAFE_INTEGER) return null;
  const joined = new Float64Array(goal.length);
  for (let at = 0; at < goal.length; at++) joined[at] = (goal[at] as number) * weight + (lesser[at] as number);
  return joined;
}

function most(costs: Float64Array): number {
  let greatest = 0;
  for (const cost of costs) greatest = Math.max(greatest, Math.abs(cost));
  return greatest;
}
