/** Numbers 0, 1, 2, … by group: those of group g are `members` from `begin[g]` up to, and without, `begin[g + 1]`. */
export interface Grouped {
  begin: Int32Array;
  members: Int32Array;
}

/** Each number stands in the group that is given for it; within a group the numbers ascend. */
export function grouped(groupOf: Int32Array, groups: number): Grouped {
  const begin = new Int32Array(groups + 1);
  for (const group of groupOf) begin[group + 1] = (begin[group + 1] as number) + 1;
  for (let group = 0; group < groups; group++)
    begin[group + 1] = (begin[group + 1] as number) + (begin[group] as number);
  const next = begin.slice();
  const members = new Int32Array(groupOf.length);
  for (let number = 0; number < groupOf.length; number++) {
    const group = groupOf[number] as number;
    members[next[group] as number] = number;
    next[group] = (next[group] as number) + 1;
  }
  return { begin, members };
}
