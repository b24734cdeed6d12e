/** No potential of the root is let grow beyond this, so that with what `joinGoals` leaves free every potential stays a whole number that a double holds exactly. */
const FARTHEST = Math.floor(Number.MAX_SAFE_INTEGER / 4);

/**
 * A spanning tree of a network's nodes, each with the arc to its parent and a potential for each goal, of which only differences count. The last node
 * is the root.
 */
export class SpanningTree {
  /** 1 where that arc leads to the parent, −1 where it comes from it. */
  readonly up: Int8Array;
  /** How many nodes hang on a node, with itself: always more than on any below it. */
  readonly #size: Int32Array;
  readonly #firstChild: Int32Array;
  readonly #next: Int32Array;
  readonly #previous: Int32Array;

  /** Each node hangs on one with a higher number, by an arc that leads up to it. */
  constructor(
    readonly parent: Int32Array,
    /** The arc between a node and its parent. */
    readonly arc: Int32Array,
    readonly potentials: readonly Float64Array[],
  ) {
    const nodes = parent.length;
    const root = nodes - 1;
    this.up = new Int8Array(nodes).fill(1, 0, root);
    this.#size = new Int32Array(nodes).fill(1);
    this.#firstChild = new Int32Array(nodes).fill(-1);
    this.#next = new Int32Array(nodes).fill(-1);
    this.#previous = new Int32Array(nodes).fill(-1);
    for (let node = 0; node < root; node++) {
      const above = parent[node] as number;
      this.#size[above] = (this.#size[above] as number) + (this.#size[node] as number);
      this.#attach(node, above);
    }
  }

  /** Where the ways from two nodes to the root meet. */
  meeting(a: number, b: number): number {
    let left = a;
    let right = b;
    // Neither can be above the other while it is the smaller one.
    while (left !== right) {
      if ((this.#size[left] as number) < (this.#size[right] as number)) left = this.parent[left] as number;
      else right = this.parent[right] as number;
    }
    return left;
  }

  /**
   * Takes out the arc above `cut` and hangs the branch below it, turned so that `hung` becomes its top, on `onto` by an arc; `up` is 1 where the
   * arc leads from `hung` to `onto`, and `meeting` is where their ways to the root meet. `shifts` are added to the potentials of the branch.
   */
  swap(cut: number, hung: number, onto: number, meeting: number, arc: number, up: number, shifts: Float64Array): void {
    const branch = this.#size[cut] as number;
    for (let node = this.parent[cut] as number; node !== meeting; node = this.parent[node] as number)
      this.#size[node] = (this.#size[node] as number) - branch;
    for (let node = onto; node !== meeting; node = this.parent[node] as number)
      this.#size[node] = (this.#size[node] as number) + branch;
    let node = hung;
    let above = onto;
    let by = arc;
    let way = up;
    let below = 0;
    for (;;) {
      const parent = this.parent[node] as number;
      const arcBefore = this.arc[node] as number;
      const upBefore = this.up[node] as number;
      const sizeBefore = this.#size[node] as number;
      this.#detach(node);
      this.parent[node] = above;
      this.arc[node] = by;
      this.up[node] = way;
      this.#size[node] = branch - below;
      this.#attach(node, above);
      if (node === cut) break;
      above = node;
      by = arcBefore;
      way = -upBefore;
      below = sizeBefore;
      node = parent;
    }
    for (let goal = 0; goal < shifts.length; goal++)
      if (shifts[goal] !== 0) this.#shift(this.potentials[goal] as Float64Array, hung, shifts[goal] as number);
  }

  /** Adds to the potentials of a branch, or takes as much from all others where these are fewer. */
  #shift(potential: Float64Array, top: number, by: number): void {
    const nodes = this.parent.length;
    const root = nodes - 1;
    if (2 * (this.#size[top] as number) <= nodes) {
      this.#addTo(potential, top, -1, by);
      return;
    }
    this.#addTo(potential, root, top, -by);
    const drift = potential[root] as number;
    if (Math.abs(drift) > FARTHEST)
      for (let node = 0; node < nodes; node++) potential[node] = (potential[node] as number) - drift;
  }

  /** Adds to the potentials of a node and all that hang on it, but for one branch. */
  #addTo(potential: Float64Array, top: number, without: number, by: number): void {
    for (let node = top; ;) {
      potential[node] = (potential[node] as number) + by;
      let next = this.#firstChild[node] as number;
      if (next === without && next >= 0) next = this.#next[next] as number;
      while (next < 0) {
        if (node === top) return;
        next = this.#next[node] as number;
        if (next === without && next >= 0) next = this.#next[next] as number;
        if (next < 0) node = this.parent[node] as number;
      }
      node = next;
    }
  }

  #attach(node: number, parent: number): void {
    const first = this.#firstChild[parent] as number;
    this.#next[node] = first;
    this.#previous[node] = -1;
    if (first >= 0) this.#previous[first] = node;
    this.#firstChild[parent] = node;
  }

  #detach(node: number): void {
    const next = this.#next[node] as number;
    const previous = this.#previous[node] as number;
    if (previous >= 0) this.#next[previous] = next;
    else this.#firstChild[this.parent[node] as number] = next;
    if (next >= 0) this.#previous[next] = previous;
  }
}
