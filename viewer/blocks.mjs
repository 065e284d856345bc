// Biconnected blocks: two edges lie in one block when some cycle passes both. Every "carries current" question is
// "does this element lie in one block with a supply", and every short is a block whose voltages do not agree.

export class Blocks {
  /** @param {number} nodes @param {[number, number][]} edges all edges there can be; each run chooses some */
  constructor(nodes, edges) {
    this.nodes = nodes;
    this.count = 0;
    const degree = new Int32Array(nodes + 1);
    for (const [a, b] of edges) { degree[a]++; degree[b]++; }
    this.start = new Int32Array(nodes + 1);
    for (let i = 0; i < nodes; i++) this.start[i + 1] = this.start[i] + degree[i];
    const fill = this.start.slice();
    this.edgeAt = new Int32Array(2 * edges.length);
    this.nodeAt = new Int32Array(2 * edges.length);
    edges.forEach(([a, b], e) => {
      this.edgeAt[fill[a]] = e; this.nodeAt[fill[a]++] = b;
      this.edgeAt[fill[b]] = e; this.nodeAt[fill[b]++] = a;
    });
    this.seen = new Int32Array(nodes);
    this.low = new Int32Array(nodes);
    this.cursor = new Int32Array(nodes);
    this.path = new Int32Array(nodes + 1);
    this.entered = new Int32Array(nodes + 1);
    this.pending = new Int32Array(edges.length);
  }

  /**
   * Tarjan's walk with an explicit stack.
   * @param {Uint8Array} on edges that exist
   * @param {Int32Array} blockOf filled with the block of each edge, -1 where the edge is off or a loop
   * @returns {number} how many blocks
   */
  run(on, blockOf) {
    this.seen.fill(0);
    blockOf.fill(-1);
    this.time = 0;
    this.count = 0;
    for (let root = 0; root < this.nodes; root++) if (this.seen[root] === 0) this.walk(root, on, blockOf);
    return this.count;
  }

  walk(root, on, blockOf) {
    const { start, edgeAt, nodeAt, seen, low, cursor, path, entered, pending } = this;
    let depth = 0, waiting = 0;
    path[0] = root; entered[0] = -1;
    seen[root] = low[root] = ++this.time;
    cursor[root] = start[root];
    while (depth >= 0) {
      const u = path[depth];
      if (cursor[u] < start[u + 1]) {
        const at = cursor[u]++, e = edgeAt[at], w = nodeAt[at];
        if (on[e] === 0 || e === entered[depth] || w === u) continue;
        if (seen[w] === 0) {
          pending[waiting++] = e;
          path[++depth] = w; entered[depth] = e;
          seen[w] = low[w] = ++this.time;
          cursor[w] = start[w];
        } else if (seen[w] < seen[u]) {
          pending[waiting++] = e;
          if (seen[w] < low[u]) low[u] = seen[w];
        }
      } else {
        const by = entered[depth--];
        if (depth < 0) break;
        const parent = path[depth];
        if (low[u] < low[parent]) low[parent] = low[u];
        if (low[u] >= seen[parent]) {
          let e;
          do { e = pending[--waiting]; blockOf[e] = this.count; } while (e !== by);
          this.count++;
        }
      }
    }
  }
}
