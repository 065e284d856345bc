// The conducting graph of one state: which elements are closed or leak, and which nets that joins. Element guards use
// variables only, so this is fixed before any voltage is asked for.

import { SOLID, CARRYING, BONDING, HARD } from './netlist.mjs';

/**
 * Labels nets so that two have one label when chosen closed elements join them.
 * @param {import('./netlist.mjs').Panel} panel
 * @param {Uint8Array} allowed by element type
 * @param {Uint8Array} closed by element
 * @param {Uint8Array|null} avoid nets that no path may touch
 * @param {Int32Array} out label of each net
 * @param {Int32Array} parent scratch
 * @returns {number} how many labels
 */
export function labelNets(panel, allowed, closed, avoid, out, parent) {
  const { ends, types } = panel, nets = parent.length;
  for (let i = 0; i < nets; i++) parent[i] = i;
  for (let e = 0; e < types.length; e++) {
    if (closed[e] === 0 || allowed[types[e]] === 0) continue;
    let a = ends[2 * e], b = ends[2 * e + 1];
    if (avoid !== null && (avoid[a] === 1 || avoid[b] === 1)) continue;
    while (parent[a] !== a) a = parent[a] = parent[parent[a]];
    while (parent[b] !== b) b = parent[b] = parent[parent[b]];
    // The smaller net is the root, so one rising pass can number the sets.
    if (a < b) parent[b] = a; else parent[a] = b;
  }
  let count = 0;
  for (let i = 0; i < nets; i++) out[i] = parent[i] === i ? count++ : out[parent[i]];
  return count;
}

export class Graph {
  /** @param {import('./netlist.mjs').Panel} panel */
  constructor(panel) {
    this.panel = panel;
    const nets = panel.nets.length, elements = panel.elements.length;
    this.closed = new Uint8Array(elements);
    this.leaking = new Uint8Array(elements);
    this.parent = new Int32Array(nets);
    this.solid = new Int32Array(nets);
    this.carrying = new Int32Array(nets);
    this.scratch = new Int32Array(nets);
    this.bonded = new Uint8Array(nets);
    this.hard = new Uint8Array(nets);
    this.avoiding = new Int32Array(nets);
  }

  /** @param {Int32Array} values @param {Uint8Array|null} removed elements taken out: they neither conduct nor leak */
  set(values, removed) {
    const { elements, varyingClosed, varyingLeaks } = this.panel;
    if (!this.constantsSet || removed !== this.removedBefore) {
      for (const e of elements) { this.ask(e.index, values); this.askLeak(e.index, values); }
      if (removed !== null) for (let e = 0; e < elements.length; e++) if (removed[e]) this.closed[e] = this.leaking[e] = 0;
      this.constantsSet = true;
      this.removedBefore = removed;
      return;
    }
    for (const e of varyingClosed) if (removed === null || !removed[e]) this.ask(e, values);
    for (const e of varyingLeaks) if (removed === null || !removed[e]) this.askLeak(e, values);
  }

  ask(e, values) { this.closed[e] = this.panel.elements[e].closed(values) ? 1 : 0; }
  askLeak(e, values) { this.leaking[e] = this.panel.elements[e].leaks(values) ? 1 : 0; }

  /** Components, bonds and ties; needs `set` first. */
  label() {
    const { panel, closed, parent, scratch } = this, earth = panel.earth;
    this.solidCount = labelNets(panel, SOLID, closed, null, this.solid, parent);
    this.carryingCount = panel.series.length === 0 ? (this.carrying.set(this.solid), this.solidCount)
      : labelNets(panel, CARRYING, closed, null, this.carrying, parent);
    labelNets(panel, BONDING, closed, null, scratch, parent);
    for (let i = 0; i < scratch.length; i++) this.bonded[i] = scratch[i] === scratch[earth] ? 1 : 0;
    labelNets(panel, HARD, closed, null, scratch, parent);
    for (let i = 0; i < scratch.length; i++) this.hard[i] = scratch[i] === scratch[earth] ? 1 : 0;
    // Solid parts without faults, cut at every net that is tied hard.
    this.avoidingCount = labelNets(panel, BONDING, closed, this.hard, this.avoiding, parent);
  }
}
