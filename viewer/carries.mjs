// Carries current, and energised at grade loose: which elements lie in one biconnected block with a supply.

import { LOAD } from './netlist.mjs';
import { Blocks } from './blocks.mjs';

export class Carries {
  /**
   * @param {import('./graph.mjs').Graph} graph
   * @param {import('./sources.mjs').Sources} sources
   * @param {[number, number][]} tests pairs of nets between which a test load may be put
   */
  constructor(graph, sources, tests) {
    this.graph = graph;
    this.sources = sources;
    const panel = this.panel = graph.panel, nets = panel.nets.length;
    // Nodes: the nets, then one node z per supply. Edges: elements, conductors, coupling links, test loads.
    const conductors = panel.supplies.flatMap(s => s.conductors.map((c, p) => ({ supply: s.index, p, net: c.net })));
    this.conductors = conductors;
    this.firstConductor = panel.elements.length;
    this.firstLink = this.firstConductor + conductors.length;
    this.firstTest = this.firstLink + panel.links.length;
    const edges = [
      ...panel.elements.map(e => [e.a, e.b]), ...conductors.map(c => [nets + c.supply, c.net]),
      ...panel.links.map(l => [l.a, l.b]), ...tests,
    ];
    this.blocks = new Blocks(nets + panel.supplies.length, edges);
    this.tests = tests;
    /** Elements that lie exactly where the test load would: when one conducts, its block is the test load's. */
    this.inPlace = tests.map(([a, b]) => panel.elements.filter(e => (e.a === a && e.b === b) || (e.a === b && e.b === a)).map(e => e.index));
    this.on = new Uint8Array(edges.length);
    this.carryBlock = new Int32Array(edges.length);
    this.looseOn = new Uint8Array(edges.length);
    this.looseBlock = new Int32Array(edges.length);
    this.testBlock = new Int32Array(edges.length);
    this.forget();
  }

  forget() { this.hasCarry = this.hasLoose = false; }

  /** Joins z to its present conductors. @param {boolean} stores whether stores count */
  joinSupplies(on, stores) {
    const { conductors, firstConductor, sources, panel } = this;
    for (let i = 0; i < conductors.length; i++) {
      const { supply, p } = conductors[i], counts = stores || panel.supplies[supply].store === null;
      on[firstConductor + i] = counts && sources.mask[supply] >> p & 1 ? 1 : 0;
    }
  }

  findCarrying() {
    if (this.hasCarry) return;
    this.on.set(this.graph.closed);
    // Reading: stores are not among the z ("count in live, isolated and energised at grade loose").
    this.joinSupplies(this.on, false);
    const count = this.blocks.run(this.on, this.carryBlock);
    this.fedBlock = new Uint8Array(count);
    for (let i = this.firstConductor; i < this.firstLink; i++) if (this.carryBlock[i] >= 0) this.fedBlock[this.carryBlock[i]] = 1;
    this.hasCarry = true;
  }

  /** @param {number} e @returns {boolean} */
  carries(e) {
    if (this.graph.closed[e] === 0) return false;
    const { ends, types } = this.panel, { solid } = this.graph;
    if (types[e] === LOAD && solid[ends[2 * e]] === solid[ends[2 * e + 1]]) return false;
    this.findCarrying();
    const block = this.carryBlock[e];
    return block >= 0 && this.fedBlock[block] === 1;
  }

  findLoose() {
    if (this.hasLoose) return;
    const { looseOn, graph } = this;
    for (let e = 0; e < graph.closed.length; e++) looseOn[e] = graph.closed[e] | graph.leaking[e];
    this.joinSupplies(looseOn, true);
    // Reading: in a block a link has no direction, so one driven from the first winding conducts both ways here.
    looseOn.fill(1, this.firstLink, this.firstTest);
    looseOn.fill(0, this.firstTest);
    this.blocks.run(looseOn, this.looseBlock);
    this.hasLoose = true;
  }

  /**
   * Whether a load put between the two nets of this test would carry current, leakage and couplings conducting.
   * Reading: at this grade no band is judged.
   * @param {number} test
   */
  energisedLoosely(test) {
    const [a, b] = this.tests[test], { solid } = this.graph;
    if (solid[a] === solid[b]) return false;
    this.findLoose();
    let blockOf = this.looseBlock, block = -1;
    for (const e of this.inPlace[test]) if (this.looseBlock[e] >= 0) { block = this.looseBlock[e]; break; }
    if (block < 0) {
      this.looseOn[this.firstTest + test] = 1;
      blockOf = this.testBlock;
      this.blocks.run(this.looseOn, blockOf);
      this.looseOn[this.firstTest + test] = 0;
      block = blockOf[this.firstTest + test];
    }
    for (let i = 0; i < this.conductors.length; i++) if (blockOf[this.firstConductor + i] === block) return true;
    return false;
  }
}
