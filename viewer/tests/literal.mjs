// The definitions once more, word for word and slow, to compare the interpreter with.

import { SOLID, CARRYING, BONDING, HARD, LOAD, DIODE, SEMICONDUCTOR, PLUS, MINUS } from '../netlist.mjs';

/** Nets reached from some, over edges {a, b, ab, ba}, entering only nets that are accepted. */
function reach(from, edges, accept = () => true) {
  const seen = new Set(from), list = [...from];
  for (const net of list) {
    for (const e of edges) {
      for (const [x, y, way] of [[e.a, e.b, e.ab], [e.b, e.a, e.ba]]) {
        if (x === net && way && !seen.has(y) && accept(y)) { seen.add(y); list.push(y); }
      }
    }
  }
  return seen;
}

const both = e => ({ a: e.a, b: e.b, ab: true, ba: true });

export class Literal {
  /** @param {import('../network.mjs').Network} network already solved */
  constructor(network) {
    this.panel = network.panel;
    this.closed = network.graph.closed;
    this.leaking = network.graph.leaking;
    this.mask = network.sources.mask;
    const conducting = this.panel.elements.filter(e => this.closed[e.index]);
    this.conducting = conducting;
    this.solidEdges = conducting.filter(e => SOLID[e.type]).map(both);
    this.hard = reach([this.panel.earth], conducting.filter(e => HARD[e.type]).map(both));
    this.bonded = reach([this.panel.earth], conducting.filter(e => BONDING[e.type]).map(both));
  }

  solid(a, b) { return reach([a], this.solidEdges).has(b); }

  /** Edges a conductor of this polarity passes: those of the types and, in its own direction, diodes. */
  edgesFor(polarity, types) {
    return this.conducting.filter(e => types[e.type] || e.type === DIODE).map(e => e.type !== DIODE ? both(e)
      : { a: e.a, b: e.b, ab: polarity !== MINUS, ba: polarity !== PLUS });
  }

  present() {
    return this.panel.supplies.flatMap(s => s.conductors.map((c, p) => ({ ...c, supply: s.index, p, store: s.store })).filter(c => this.mask[s.index] >> c.p & 1));
  }

  voltage(c, d) { return this.panel.supplies[c.supply].volts[c.p * this.panel.supplies[c.supply].conductors.length + d.p]; }

  unearthed() {
    const all = this.present();
    return all.filter(c => {
      if (!this.bonded.has(c.net)) return true;
      const clash = all.some(x => all.some(y => x.supply === c.supply && y.supply === c.supply && this.bonded.has(x.net) && this.bonded.has(y.net) && this.voltage(x, y) !== 0));
      return clash && !this.hard.has(c.net);
    });
  }

  earthTied() {
    const untied = new Set();
    for (const c of this.unearthed()) {
      const avoidHard = net => !this.hard.has(net), types = BONDING;
      if (avoidHard(c.net)) for (const net of reach([c.net], this.edgesFor(c.polarity, types), avoidHard)) untied.add(net);
    }
    return new Set(this.panel.nets.map((_, i) => i).filter(n => this.hard.has(n) || (this.bonded.has(n) && !untied.has(n))));
  }

  live() {
    const { panel } = this, tied = this.earthTied(), live = new Set(), nets = panel.nets.length;
    const loose = [
      ...panel.elements.filter(e => this.closed[e.index] || this.leaking[e.index]).map(both),
      ...panel.couplings.flatMap((c, i) => c.windings.flatMap((w, k) => w.map(net => (
        { a: net, b: nets + i, ab: !c.first || k === 0, ba: !c.first || k > 0 })))),
    ];
    for (const c of this.unearthed()) {
      const first = reach([c.net], this.edgesFor(c.polarity, CARRYING));
      const second = reach([...first].filter(n => !tied.has(n)), loose, n => !tied.has(n));
      for (const net of [...first, ...second]) if (net < nets && !tied.has(net)) live.add(net);
    }
    return live;
  }

  /** With every other node taken out in turn, one end still reaches z. */
  throughBlock(ends, edges, z, nodes) {
    for (let v = 0; v < nodes; v++) {
      if (v === z) continue;
      const left = edges.filter(e => e.a !== v && e.b !== v);
      const from = ends.filter(n => n !== v);
      if (from.length === 0 || !reach(from, left).has(z)) return false;
    }
    return true;
  }

  supplyEdges(stores) {
    return this.present().filter(c => stores || c.store === null).map(c => both({ a: c.net, b: this.panel.nets.length + c.supply }));
  }

  carries(e) {
    const { panel } = this, element = panel.elements[e], nets = panel.nets.length;
    if (!this.closed[e] || (element.type === LOAD && this.solid(element.a, element.b))) return false;
    const edges = [...this.conducting.map(both), ...this.supplyEdges(false)];
    return panel.working.some(s => this.throughBlock([...new Set([element.a, element.b])], edges, nets + s, nets + panel.supplies.length));
  }

  energisedLoosely(a, b) {
    const { panel } = this, nets = panel.nets.length;
    if (this.solid(a, b)) return false;
    const edges = [
      ...panel.elements.filter(e => this.closed[e.index] || (e.type === SEMICONDUCTOR && this.leaking[e.index])).map(both),
      ...panel.links.map(both), ...this.supplyEdges(true), both({ a, b }),
    ];
    return panel.supplies.some(s => this.present().some(c => this.present().some(d => c.supply === s.index && d.supply === s.index && this.voltage(c, d) !== 0))
      && this.throughBlock([a, b], edges, nets + s.index, nets + panel.supplies.length));
  }

  /** Supplies on a simple cycle of components whose voltages do not sum to zero, and by diodes. */
  shorts() {
    const { panel } = this, found = new Set(), component = panel.nets.map((_, i) => Math.min(...reach([i], this.solidEdges)));
    const edges = this.present().filter(c => c.store === null).flatMap(c => this.present().filter(d => d.supply === c.supply && d.p > c.p)
      .map(d => ({ a: component[c.net], b: component[d.net], supply: c.supply, re: d.re - c.re, im: d.im - c.im, volts: this.voltage(c, d) })));
    for (const e of edges) if (e.a === e.b && e.volts !== 0) found.add(e.supply);
    const proper = edges.filter(e => e.a !== e.b);
    const judge = used => {
      const groups = new Set(used.map(u => panel.supplies[u.edge.supply].group));
      const sum = used.reduce((t, { edge, sign }) => [t[0] + sign * edge.re, t[1] + sign * edge.im], [0, 0]);
      if (groups.size > 1 || Math.hypot(...sum) > 1e-5) used.forEach(u => found.add(u.edge.supply));
    };
    const walk = (start, at, used, seen) => {
      proper.forEach((edge, i) => {
        for (const [x, y, sign] of [[edge.a, edge.b, 1], [edge.b, edge.a, -1]]) {
          if (x !== at || used.some(u => u.i === i)) continue;
          if (y === start && used.length > 0) judge([...used, { edge, sign, i }]);
          else if (y > start && !seen.has(y)) walk(start, y, [...used, { edge, sign, i }], new Set([...seen, y]));
        }
      });
    };
    for (const start of new Set(component)) walk(start, start, [], new Set([start]));
    this.diodeShorts(found);
    return found;
  }

  diodeShorts(found) {
    for (const d of this.conducting.filter(e => e.type === DIODE)) {
      const at = (net, polarity) => this.present().filter(c => c.store === null && c.polarity === polarity && reach([c.net], this.edgesFor(polarity, SOLID)).has(net));
      for (const plus of at(d.a, PLUS)) for (const minus of at(d.b, MINUS)) if (plus.supply === minus.supply) found.add(plus.supply);
    }
  }
}
