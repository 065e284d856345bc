// The network of one state: graph, sources (converters by least fixpoint) and the truth of every network predicate.

import { compileExpression } from './guard.mjs';
import { Graph } from './graph.mjs';
import { Sources } from './sources.mjs';
import { Reach, DEAD, BY_LOAD_REACH } from './reach.mjs';
import { Carries } from './carries.mjs';
import { Shorts } from './short.mjs';
import { Loads, RUNS_FORWARD, RUNS_REVERSE, RUNS, SINGLE_PHASING, STANDS_LIVE } from './loads.mjs';
import { CLOSE } from './netlist.mjs';

/** Network predicates, each numbered once. */
export class Atoms {
  /** @param {import('./netlist.mjs').Panel} panel */
  constructor(panel) {
    this.panel = panel;
    this.list = [];
    this.index = new Map();
    this.tests = [];
  }

  /** @param {any} json @returns {import('./guard.mjs').Expression} */
  expression(json) { return compileExpression(json, this.panel.lookup, (key, node) => this.intern(key, node)); }

  intern(key, json) {
    const text = JSON.stringify(json);
    let index = this.index.get(text);
    if (index === undefined) {
      index = this.list.length;
      this.list.push(this.read(key, json));
      this.index.set(text, index);
    }
    return index;
  }

  read(key, json) {
    const { panel } = this, nets = list => list.map(name => panel.net(name));
    switch (key) {
      case 'energised': {
        const [a, b] = nets(json.energised), loose = gradeOf(json, 'solid', ['solid', 'loose']) === 'loose';
        return { key, a, b, loose, within: band(json.volts), test: loose ? this.tests.push([a, b]) - 1 : -1 };
      }
      case 'carries': return { key, element: panel.element(json.carries) };
      case 'closed': return { key, element: panel.element(json.closed) };
      case 'fed': return { key, nets: nets(json.fed), order: json.order ?? 'any', grade: gradeOf(json, 'solid', GRADES) };
      case 'single': return { key, nets: nets(json.single), grade: gradeOf(json, 'load', GRADES) };
      case 'joined': return { key, nets: nets(json.joined) };
      case 'live': return { key, net: panel.net(json.live), from: json.from === undefined ? -1 : panel.supply(json.from) };
      case 'runs': return { key, load: panel.load(json.runs), bit: turnBit(json.turns ?? 'any') };
      case 'short': return { key, supply: panel.supply(json.short) };
      default:
        if (json.quiet !== true) throw new Error(`not a guard: ${JSON.stringify(json)}`);
        return { key };
    }
  }
}

const GRADES = ['solid', 'load', 'loose'];

/** Reading: energised and fed are solid when nothing is said, single goes by load reach. */
function gradeOf(json, usual, known) {
  const grade = json.grade ?? usual;
  if (!known.includes(grade)) throw new Error(`grade ${grade} is not known here`);
  return grade;
}

const turnBit = turns => turns === 'forward' ? RUNS_FORWARD : turns === 'reverse' ? RUNS_REVERSE : RUNS;

/** Inclusive bounds; a missing or null upper bound is none. */
function band(volts) {
  const lo = (volts?.[0] ?? 0) * (1 - CLOSE), hi = (volts?.[1] ?? Infinity) * (1 + CLOSE);
  return v => v >= lo && v <= hi;
}

export class Network {
  /**
   * @param {import('./netlist.mjs').Panel} panel
   * @param {Atoms} atoms predicates to be asked; converters' own are added here
   * @param {Uint8Array|null} removed elements taken out
   */
  constructor(panel, atoms, removed = null) {
    this.panel = panel;
    this.atoms = atoms;
    this.removed = removed;
    this.asked = atoms.list.length;
    this.converters = panel.converters.map(c => ({ supply: c.supply, when: atoms.expression(c.when) }));
    this.converterAtoms = converterAtoms(panel, atoms);
    this.converterVariables = panel.converterVariables;
    this.graph = new Graph(panel);
    this.sources = new Sources(panel);
    this.reach = new Reach(this.graph, this.sources);
    this.carries = new Carries(this.graph, this.sources, atoms.tests);
    this.shorts = new Shorts(this.graph, this.sources, this.reach, this.carries);
    this.loads = new Loads(this.graph, this.sources);
    this.truth = new Uint8Array(atoms.list.length);
    this.scratch = new Uint8Array(panel.nets.length);
    this.everySupply = panel.supplies.map(s => s.index);
    this.codes = [];
  }

  /**
   * Fixes the graph and the supplies on offer.
   * @param {Int32Array} values
   * @returns {string} equal for states whose networks are equal
   */
  set(values) {
    this.values = values;
    this.graph.set(values, this.removed);
    this.sources.set(values);
    return this.key();
  }

  key() {
    const { codes } = this, { closed, leaking } = this.graph, { offered } = this.sources;
    let word = 0, bits = 0, used = 0;
    const put = bit => {
      word = word << 1 | bit;
      if (++bits === 16) { codes[used++] = word; word = bits = 0; }
    };
    for (const e of this.panel.varyingClosed) put(closed[e]);
    for (const e of this.panel.varyingLeaks) put(leaking[e]);
    codes[used++] = word;
    for (let s = 0; s < offered.length; s++) { codes[used++] = offered[s] & 0xffff; codes[used++] = offered[s] >>> 16; }
    for (const v of this.converterVariables) codes[used++] = this.values[v];
    codes.length = used;
    return String.fromCharCode.apply(null, codes);
  }

  /**
   * Finds which supplies are there: the primary ones, then converters until none is added.
   * @param {Uint8Array|null} lost supplies taken away
   * @param {boolean} relabel false when the graph has not changed since the last call
   */
  solve(lost = null, relabel = true) {
    if (relabel) this.graph.label();
    this.sources.begin(lost);
    this.forget();
    const waiting = this.converters.filter(c => lost === null || !lost[c.supply]);
    for (let again = waiting.length > 0; again;) {
      for (const a of this.converterAtoms) this.truth[a] = this.ask(this.atoms.list[a]) ? 1 : 0;
      again = false;
      for (let i = waiting.length - 1; i >= 0; i--) {
        if (!waiting[i].when(this.values, this.truth)) continue;
        this.sources.add(waiting[i].supply);
        waiting.splice(i, 1);
        again = true;
      }
      if (again) this.forget();
      again = again && waiting.length > 0;
    }
  }

  forget() { this.reach.forget(); this.carries.forget(); this.shorts.forget(); this.liveKnown = false; this.bySupply = null; }

  /** The truth of the atoms of the moves and questions. @returns {Uint8Array} */
  askAll() {
    const truth = new Uint8Array(this.asked);
    for (let i = 0; i < this.asked; i++) truth[i] = this.ask(this.atoms.list[i]) ? 1 : 0;
    return truth;
  }

  /** @returns {boolean} */
  ask(atom) {
    switch (atom.key) {
      case 'energised': return atom.loose ? this.carries.energisedLoosely(atom.test) : this.energised(atom);
      case 'carries': return this.carries.carries(atom.element);
      case 'closed': return this.graph.closed[atom.element] === 1;
      case 'fed': return this.fed(atom);
      case 'single': return this.single(atom);
      case 'joined': return atom.nets.every(net => this.reach.joined(net, atom.nets[0]));
      case 'live': return (atom.from < 0 ? this.live() : this.liveFrom(atom.from))[atom.net] !== DEAD;
      case 'runs': return (this.loads.runs(atom.load) & atom.bit) !== 0;
      case 'short': return this.shorts.find() && this.shorts.supplies[atom.supply] === 1;
      // Quiet belongs to a state, not to its network: whoever asks a question fills it in.
      default: return false;
    }
  }

  /** Two nets in different solid components reached by conductors of one supply with different voltages in the band. */
  energised({ a, b, within }) {
    const { panel, reach } = this, { solid } = this.graph, width = panel.supplies.length;
    if (solid[a] === solid[b]) return false;
    const mask = reach.directed();
    for (const s of panel.working) {
      const atA = mask[solid[a] * width + s], atB = mask[solid[b] * width + s];
      if (atA === 0 || atB === 0) continue;
      const { volts, conductors } = panel.supplies[s], n = conductors.length;
      for (let p = 0; p < n; p++) if (atA >> p & 1) for (let q = 0; q < n; q++) {
        if (atB >> q & 1 && volts[p * n + q] !== 0 && within(volts[p * n + q])) return true;
      }
    }
    return false;
  }

  /** Three nets in three solid components reached by three conductors of one supply that agree, in order. */
  fed({ nets: [a, b, c], order, grade }) {
    const { panel, reach } = this, { solid } = this.graph;
    if (solid[a] === solid[b] || solid[b] === solid[c] || solid[a] === solid[c]) return false;
    for (const s of panel.working) {
      const atA = reach.reaching(a, s, grade), atB = reach.reaching(b, s, grade), atC = reach.reaching(c, s, grade);
      if (atA === 0 || atB === 0 || atC === 0) continue;
      for (const { p, q, r, forward } of panel.supplies[s].triangles) {
        if ((atA >> p & atB >> q & atC >> r & 1) === 1 && (order === 'any' || (order === 'forward') === forward)) return true;
      }
    }
    return false;
  }

  /** Exactly two different voltages reach the three. Reading: of one supply, counted over the three nets together. */
  single({ nets, grade }) {
    const { panel, reach } = this;
    return panel.working.some(s => {
      const { volts, conductors } = panel.supplies[s], n = conductors.length;
      let mask = 0;
      for (const net of nets) mask |= reach.reaching(net, s, grade);
      const different = [];
      for (let p = 0; p < n; p++) if (mask >> p & 1 && different.every(q => volts[p * n + q] !== 0)) different.push(p);
      return different.length === 2;
    });
  }

  /** DEAD or not for every net. @returns {Uint8Array} */
  live() {
    if (!this.liveKnown) { this.reach.flood(this.everySupply, true, this.scratch); this.liveKnown = true; }
    return this.scratch;
  }

  /** The same, counting the conductors of one supply only. @param {number} supply @returns {Uint8Array} */
  liveFrom(supply) {
    this.bySupply ??= [];
    return this.bySupply[supply] ??= this.reach.flood([supply], true, new Uint8Array(this.panel.nets.length));
  }

  /** Everything a table shows of one network. */
  survey() {
    const { panel, reach } = this, nets = panel.nets.length;
    const live = this.live().slice();
    // Reading: "solidly live" is by a working supply; a net that only a store reaches is "stored".
    const hasStores = panel.working.length !== panel.supplies.length;
    const solid = hasStores ? reach.flood(panel.working, true, new Uint8Array(nets)) : live;
    const loads = new Uint8Array(panel.loads.length);
    for (let i = 0; i < loads.length; i++) loads[i] = this.loadState(i, live);
    return { live, solid, earthTied: reach.findEarthTied().slice(), loads };
  }

  /** Runs; else single-phasing when any element carries current; else stands live when a terminal is live. */
  loadState(index, live) {
    const { elements, terminals } = this.panel.loads[index], runs = this.loads.runs(index);
    if (runs !== 0) return runs;
    if (elements.some(e => this.carries.carries(e))) return SINGLE_PHASING;
    return terminals.some(net => live[net] !== DEAD) ? STANDS_LIVE : 0;
  }

  /**
   * How each net is live and by whom.
   * @returns {{live:boolean,reach:'solid'|'load'|'backfeed'|'stored'|'dead',elv:boolean,from:string[]}[]}
   */
  explain() {
    const { panel, reach } = this, nets = panel.nets.length, marks = () => new Uint8Array(nets);
    const bySupply = panel.supplies.map(s => reach.flood([s.index], true, marks()));
    const working = reach.flood(panel.working, true, marks()), uncoupled = reach.flood(panel.working, false, marks());
    return panel.nets.map((_, net) => {
      const from = panel.supplies.filter(s => bySupply[s.index][net] !== DEAD);
      const grade = from.length === 0 ? 'dead' : working[net] === BY_LOAD_REACH ? 'solid' : uncoupled[net] !== DEAD ? 'load'
        : working[net] !== DEAD ? 'backfeed' : 'stored';
      return { live: from.length > 0, reach: grade, elv: from.length > 0 && from.every(s => s.elv), from: from.map(s => s.name) };
    });
  }
}

/** Numbers of the atoms that converters' conditions name. */
function converterAtoms(panel, atoms) {
  const found = new Set();
  const walk = json => {
    if (json?.quiet !== undefined) throw new Error('"quiet" cannot be the condition of a converter');
    if (json === null || typeof json !== 'object' || 'var' in json) return;
    if ('not' in json) walk(json.not);
    else if ('all' in json || 'any' in json) (json.all ?? json.any).forEach(walk);
    else found.add(atoms.index.get(JSON.stringify(json)));
  };
  panel.converters.forEach(c => walk(c.when));
  return [...found];
}
