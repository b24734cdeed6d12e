/** A spanning tree of a network's nodes, each with the arc to its parent and a potential for each goal. The last node is the root. */
export class SpanningTree {
  readonly parent: Int32Array;
  /** The arc between a node and its parent. */
  readonly arc: Int32Array;
  /** 1 where that arc leads to the parent, −1 where it comes from it. */
  readonly up: Int8Array;
  readonly #depth: Int32Array;
  readonly #firstChild: Int32Array;
  readonly #next: Int32Array;
  readonly #previous: Int32Array;

  /** Every node hangs on the root. */
  constructor(nodes: number, arcs: ArrayLike<number>, up: ArrayLike<number>, readonly potentials: readonly Float64Array[]) {
    const root = nodes - 1;
    this.parent = new Int32Array(nodes).fill(root);
    this.parent[root] = -1;
    this.arc = Int32Array.from({ length: nodes }, (_, node) => (node === root ? -1 : (arcs[node] as number)));
    this.up = Int8Array.from({ length: nodes }, (_, node) => (node === root ? 0 : (up[node] as number)));
    this.#depth = new Int32Array(nodes).fill(1);
    this.#depth[root] = 0;
    this.#firstChild = new Int32Array(nodes).fill(-1);
    this.#next = new Int32Array(nodes).fill(-1);
    this.#previous = new Int32Array(nodes).fill(-1);
    for (let node = 0; node < root; node++) this.#attach(node, root);
  }

  /** Where the ways from two nodes to the root meet. */
  meeting(a: number, b: number): number {
    let [left, right] = [a, b];
    while (left !== right) {
      if ((this.#depth[left] as number) >= (this.#depth[right] as number)) left = this.parent[left] as number;
      else right = this.parent[right] as number;
    }
    return left;
  }

  /**
   * Takes out the arc above `cut` and hangs the branch below it, turned so that `hung` becomes its top, on `onto` by an arc; `up` is 1 where the
   * arc leads from `hung` to `onto`. `shifts` are added to the potentials of the branch.
   */
  swap(cut: number, hung: number, onto: number, arc: number, up: number, shifts: readonly number[]): void {
    let [node, above, by, way] = [hung, onto, arc, up];
    for (;;) {
      const before = { parent: this.parent[node] as number, arc: this.arc[node] as number, up: this.up[node] as number };
      this.#detach(node);
      this.parent[node] = above;
      this.arc[node] = by;
      this.up[node] = way;
      this.#attach(node, above);
      if (node === cut) break;
      [above, by, way, node] = [node, before.arc, -before.up, before.parent];
    }
    this.#settle(hung, shifts);
  }

  #settle(top: number, shifts: readonly number[]): void {
    const shift = shifts.flatMap((by, goal) => (by === 0 ? [] : [{ by, of: this.potentials[goal] as Float64Array }]));
    for (let node = top; ;) {
      this.#depth[node] = (this.#depth[this.parent[node] as number] as number) + 1;
      for (const { by, of } of shift) of[node] = (of[node] as number) + by;
      let next = this.#firstChild[node] as number;
      while (next < 0) {
        if (node === top) return;
        next = this.#next[node] as number;
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
    const [next, previous] = [this.#next[node] as number, this.#previous[node] as number];
    if (previous >= 0) this.#next[previous] = next;
    else this.#firstChild[this.parent[node] as number] = next;
    if (next >= 0) this.#previous[next] = previous;
  }
}
