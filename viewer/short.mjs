// Shorts: cycles of solid components and supply voltages that do not sum to zero, and the elements on them.

import { SOLID, PLUS, MINUS, CLOSE } from './netlist.mjs';
import { Blocks } from './blocks.mjs';

/** A cycle's voltages agree when every node of its block can be given a potential; loops in gain graphs. */
class Potentials {
  constructor() { this.parent = new Map(); }

  /** @returns {{root:number,re:number,im:number}} root of the node and its potential against the root */
  find(node) {
    let re = 0, im = 0;
    for (let link = this.parent.get(node); link !== undefined; link = this.parent.get(node)) {
      re += link.re; im += link.im; node = link.to;
    }
    return { root: node, re, im };
  }

  /** States that b stands this far above a. @returns {boolean} whether that agrees with all stated before */
  state(a, b, re, im, scale) {
    const x = this.find(a), y = this.find(b);
    if (x.root !== y.root) { this.parent.set(y.root, { to: x.root, re: x.re + re - y.re, im: x.im + im - y.im }); return true; }
    return Math.hypot(x.re + re - y.re, x.im + im - y.im) <= 10 * CLOSE * scale;
  }
}

/**
 * Blocks whose cycles do not all sum to zero: two unsynchronised supplies share it, or its potentials disagree.
 * In such a block every edge lies on a cycle that does not sum to zero.
 * @param {{a:number,b:number,re:number,im:number,supply:number}[]} edges supply -1 for a plain join
 * @param {Int32Array} blockOf
 * @param {number} count
 * @param {import('./netlist.mjs').Supply[]} supplies
 * @returns {Uint8Array}
 */
function faultyBlocks(edges, blockOf, count, supplies) {
  const faulty = new Uint8Array(count), groups = new Array(count), potentials = new Array(count);
  const scale = supplies.reduce((most, s) => s.volts.reduce((m, v) => Math.max(m, v), most), 0);
  edges.forEach((edge, i) => {
    const block = blockOf[i];
    if (block < 0 || faulty[block]) return;
    if (edge.supply >= 0) {
      const { group } = supplies[edge.supply];
      groups[block] ??= group;
      if (groups[block] !== group) { faulty[block] = 1; return; }
    }
    potentials[block] ??= new Potentials();
    if (!potentials[block].state(edge.a, edge.b, edge.re, edge.im, scale)) faulty[block] = 1;
  });
  return faulty;
}

export class Shorts {
  /**
   * @param {import('./graph.mjs').Graph} graph
   * @param {import('./sources.mjs').Sources} sources
   * @param {import('./reach.mjs').Reach} reach
   * @param {import('./carries.mjs').Carries} carries lends its graph of elements and supply nodes
   */
  constructor(graph, sources, reach, carries) {
    this.graph = graph;
    this.sources = sources;
    this.reach = reach;
    this.carries = carries;
    const panel = this.panel = graph.panel, nets = panel.nets.length;
    /** Elements join without voltage; a conductor's net stands its voltage above its supply's node. */
    this.edges = [
      ...panel.elements.map(e => ({ a: e.a, b: e.b, re: 0, im: 0, supply: -1 })),
      ...panel.supplies.flatMap(s => s.conductors.map(c => ({ a: nets + s.index, b: c.net, re: c.re, im: c.im, supply: s.index }))),
    ];
    this.on = new Uint8Array(carries.on.length);
    this.blockOf = new Int32Array(carries.on.length);
    this.supplies = new Uint8Array(this.panel.supplies.length);
    this.parent = new Int32Array(this.panel.nets.length + this.panel.supplies.length);
    this.forget();
  }

  forget() { this.has = false; this.hasElements = false; }

  /** Marks the supplies that are shorted. @returns {boolean} whether any is */
  find() {
    if (this.has) return this.any;
    this.supplies.fill(0);
    this.findLoops();
    if (this.suppliesMeetTwice()) this.findCycles();
    this.findDiodeShorts();
    this.any = this.supplies.includes(1);
    this.has = true;
    return this.any;
  }

  /** Two conductors of different voltage of one supply in one component. */
  findLoops() {
    const { panel, sources } = this, { solid } = this.graph;
    for (const s of panel.working) {
      const { conductors, volts } = panel.supplies[s], mask = sources.mask[s], n = conductors.length;
      for (let p = 0; p < n; p++) if (mask >> p & 1) for (let q = p + 1; q < n; q++) {
        if (mask >> q & 1 && volts[p * n + q] !== 0 && solid[conductors[p].net] === solid[conductors[q].net]) this.supplies[s] = 1;
      }
    }
  }

  /** Without a cycle through two supplies only loops can be shorts: a quick look before the long one. */
  suppliesMeetTwice() {
    const { panel, sources, parent } = this, { solid, solidCount } = this.graph;
    for (let i = 0; i < solidCount + panel.supplies.length; i++) parent[i] = i;
    const root = i => { while (parent[i] !== i) i = parent[i] = parent[parent[i]]; return i; };
    for (const s of panel.working) {
      const { conductors } = panel.supplies[s], mask = sources.mask[s], node = solidCount + s;
      for (let p = 0; p < conductors.length; p++) {
        if ((mask >> p & 1) === 0) continue;
        const comp = solid[conductors[p].net];
        let again = false;
        for (let q = 0; q < p && !again; q++) again = (mask >> q & 1) === 1 && solid[conductors[q].net] === comp;
        if (again) continue;
        const a = root(comp), b = root(node);
        if (a === b) return true;
        parent[a] = b;
      }
    }
    return false;
  }

  /** Each component a node, each supply's voltage between two of its conductors an edge; cycles by blocks. */
  findCycles() {
    const { panel, sources } = this, { solid, solidCount } = this.graph, edges = [];
    for (const s of panel.working) {
      const { conductors } = panel.supplies[s], mask = sources.mask[s];
      for (let p = 0; p < conductors.length; p++) if (mask >> p & 1) for (let q = p + 1; q < conductors.length; q++) {
        if ((mask >> q & 1) === 0) continue;
        const a = solid[conductors[p].net], b = solid[conductors[q].net];
        if (a !== b) edges.push({ a, b, re: conductors[q].re - conductors[p].re, im: conductors[q].im - conductors[p].im, supply: s });
      }
    }
    const blocks = new Blocks(solidCount, edges.map(e => [e.a, e.b])), blockOf = new Int32Array(edges.length);
    const count = blocks.run(new Uint8Array(edges.length).fill(1), blockOf);
    const faulty = faultyBlocks(edges, blockOf, count, panel.supplies);
    edges.forEach((edge, i) => { if (faulty[blockOf[i]]) this.supplies[edge.supply] = 1; });
  }

  /** A diode whose anode is reached by plus and cathode by minus of one supply, by directed solid reach. */
  findDiodeShorts() {
    const { panel, graph } = this, width = panel.supplies.length;
    this.shortedDiodes = [];
    for (const e of panel.diodes) {
      if (graph.closed[e] === 0) continue;
      const mask = this.reach.directed();
      const a = graph.solid[panel.ends[2 * e]] * width, b = graph.solid[panel.ends[2 * e + 1]] * width;
      for (const s of panel.working) {
        const { conductors } = panel.supplies[s];
        const has = (at, polarity) => conductors.some((c, p) => c.polarity === polarity && mask[at + s] >> p & 1);
        if (has(a, PLUS) && has(b, MINUS)) { this.supplies[s] = 1; this.shortedDiodes.push(e); }
      }
    }
  }

  /**
   * For each element whether it carries short current. A solid element does when it lies on a cycle, at the level of
   * nets, whose voltages do not sum to zero. A shorted diode closes such a cycle but is no solid element itself.
   * @returns {Uint8Array}
   */
  elements() {
    if (this.hasElements) return this.carried;
    this.hasElements = true;
    this.carried = new Uint8Array(this.panel.elements.length);
    if (this.find()) this.findElements();
    return this.carried;
  }

  findElements() {
    const { panel, graph, carries, on, blockOf } = this, { firstConductor, conductors } = carries;
    on.fill(0);
    for (const e of panel.elements) if (graph.closed[e.index] === 1 && SOLID[e.type] === 1) on[e.index] = 1;
    for (const e of this.shortedDiodes) on[e] = 1;
    carries.joinSupplies(on, false);
    const count = carries.blocks.run(on, blockOf), shorted = new Uint8Array(count);
    const faulty = faultyBlocks(this.edges, blockOf, count, panel.supplies);
    conductors.forEach(({ supply }, i) => {
      const block = blockOf[firstConductor + i];
      if (block >= 0 && faulty[block] && this.supplies[supply]) shorted[block] = 1;
    });
    for (const e of panel.elements) if (SOLID[e.type] === 1 && blockOf[e.index] >= 0) this.carried[e.index] = shorted[blockOf[e.index]];
  }
}
