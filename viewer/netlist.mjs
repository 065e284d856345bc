// Reading a netlist: names become indices, guards become functions, everything a later step needs is looked up once.

import { compileGuard, compileExpression, variablesOf, ALWAYS, NEVER } from './guard.mjs';

export const CONDUCTOR = 0, CONTACT = 1, SEMICONDUCTOR = 2, THERMAL = 3, SERIES = 4, LOAD = 5, DIODE = 6, FAULT = 7;
const TYPES = ['conductor', 'contact', 'semiconductor', 'thermal', 'series', 'load', 'diode', 'fault'];

const kindsOf = (...types) => { const set = new Uint8Array(TYPES.length); for (const t of types) set[t] = 1; return set; };
/** Element types that join solidly. */
export const SOLID = kindsOf(CONDUCTOR, CONTACT, SEMICONDUCTOR, THERMAL, FAULT);
/** Solid, and series elements: what carries load on to something else. */
export const CARRYING = kindsOf(CONDUCTOR, CONTACT, SEMICONDUCTOR, THERMAL, FAULT, SERIES);
/** What bonds a net to earth: a fault does not. */
export const BONDING = kindsOf(CONDUCTOR, CONTACT, SEMICONDUCTOR, THERMAL);
/** What ties hard. */
export const HARD = kindsOf(CONDUCTOR);

export const AC = 0, PLUS = 1, MINUS = 2;
const POLARITIES = { ac: AC, plus: PLUS, minus: MINUS };

/** Two voltages closer than this part of the larger are equal. */
export const CLOSE = 1e-9;

/**
 * @typedef {{id:string,index:number,a:number,b:number,type:number,device:string,power:boolean,
 *   closed:import('./guard.mjs').Guard,leaks:import('./guard.mjs').Guard}} Element
 * @typedef {{name:string,net:number,re:number,im:number,polarity:number,present:import('./guard.mjs').Guard}} Conductor
 * @typedef {{name:string,index:number,group:string,elv:boolean,limited:boolean,store:any,converter:number,
 *   present:import('./guard.mjs').Guard,conductors:Conductor[],volts:Float64Array,
 *   triangles:{p:number,q:number,r:number,forward:boolean}[],anode:number,cathode:number}} Supply
 * @typedef {{name:string,index:number,device:string,kind:string,class:string|null,values:string[],rest:number,
 *   momentary:boolean,standby:boolean,stride:number,moves:any[]}} Variable
 * @typedef {{name:string,elements:number[],terminals:number[],modes:any[]}} Load
 */

/** One panel, indexed. */
export class Panel {
  /**
   * @param {any} json
   * @param {{looseFromEarthTied?: boolean}} readings other readings of the page than the ones taken here
   */
  constructor(json, readings = {}) {
    this.readings = readings;
    if (json.schema !== undefined && json.schema !== 1) throw new Error(`schema ${json.schema} is not known`);
    this.json = json;
    this.nets = json.nets ?? [];
    this.netIndex = new Map(this.nets.map((name, i) => [name, i]));
    this.earth = this.net(json.earth);
    this.readVariables(json.variables ?? []);
    this.lookup = (name, value) => this.valueOf(name, value);
    this.readElements(json.elements ?? []);
    this.readSupplies(json);
    this.readCouplings(json);
    this.loads = (json.loads ?? []).map(load => this.readLoad(load));
    this.loadIndex = new Map(this.loads.map((load, i) => [load.name, i]));
    this.devices = json.devices ?? [];
    this.deviceIndex = new Map(this.devices.map(device => [device.tag, device]));
    this.constraints = (json.constraints ?? []).map(c => ({ name: c.name, holds: this.guard(c.holds) }));
    this.entries = this.devices.flatMap(device => (device.opensOnShort ?? []).map(entry => this.readEntry(device, entry)));
    this.powered = json.powered ?? [];
    this.intents = json.intents ?? [];
    this.networkVariables = this.findNetworkVariables(json);
  }

  /** @param {string} name @returns {number} */
  net(name) {
    const index = this.netIndex.get(name);
    if (index === undefined) throw new Error(`net ${name} is not known`);
    return index;
  }

  /** @param {string} id @returns {number} */
  element(id) {
    const index = this.elementIndex.get(id);
    if (index === undefined) throw new Error(`element ${id} is not known`);
    return index;
  }

  /** @param {string} name @returns {number} */
  supply(name) {
    const index = this.supplyIndex.get(name);
    if (index === undefined) throw new Error(`supply ${name} is not known`);
    return index;
  }

  /** @param {string} name @returns {number} */
  load(name) {
    const index = this.loadIndex.get(name);
    if (index === undefined) throw new Error(`load ${name} is not known`);
    return index;
  }

  /** @param {string} name @returns {Variable} */
  variable(name) {
    const index = this.variableIndex.get(name);
    if (index === undefined) throw new Error(`variable ${name} is not known`);
    return this.variables[index];
  }

  /** @param {string} name @param {string} value @returns {[number, number]} */
  valueOf(name, value) {
    const variable = this.variable(name);
    const index = variable.values.indexOf(value);
    if (index < 0) throw new Error(`variable ${name} has no value ${value}`);
    return [variable.index, index];
  }

  /** @param {any} json a missing guard is true @returns {import('./guard.mjs').Guard} */
  guard(json) { return compileGuard(json ?? true, this.lookup); }

  readVariables(list) {
    this.variables = list.map((v, index) => ({
      name: v.name, index, device: v.device, kind: v.kind, class: v.class ?? null, values: v.values,
      rest: v.values.indexOf(v.rest), momentary: v.momentary === true, standby: v.standby === true,
      stride: 1, moves: v.moves ?? [],
    }));
    this.variableIndex = new Map(this.variables.map(v => [v.name, v.index]));
    for (const v of this.variables) if (v.rest < 0) throw new Error(`variable ${v.name} has no value for rest`);
    // The index of an assignment: mixed radix in file order, the last variable fastest.
    let stride = 1;
    for (let i = this.variables.length - 1; i >= 0; i--) {
      this.variables[i].stride = stride;
      stride *= this.variables[i].values.length;
    }
    this.assignments = stride;
  }

  readElements(list) {
    this.elements = list.map((e, index) => {
      const type = TYPES.indexOf(e.type);
      if (type < 0) throw new Error(`element ${e.id} has the unknown type ${e.type}`);
      const closed = e.closed ?? true;
      // A semiconductor leaks whenever it does not conduct, unless said otherwise; nothing else leaks unless said.
      const leaks = e.leaks ?? (type === SEMICONDUCTOR ? { not: closed } : false);
      return {
        id: e.id, index, a: this.net(e.a), b: this.net(e.b), type, device: e.device, power: e.power === true,
        closed: this.guard(closed), leaks: this.guard(leaks), guards: [closed, leaks],
      };
    });
    this.elementIndex = new Map(this.elements.map(e => [e.id, e.index]));
    this.ends = Int32Array.from(this.elements.flatMap(e => [e.a, e.b]));
    this.types = Uint8Array.from(this.elements.map(e => e.type));
    this.diodes = this.elements.filter(e => e.type === DIODE).map(e => e.index);
    this.series = this.elements.filter(e => e.type === SERIES).map(e => e.index);
    // Only these need their guards asked in each state.
    const constant = guard => guard === ALWAYS || guard === NEVER;
    this.varyingClosed = this.elements.filter(e => !constant(e.closed)).map(e => e.index);
    this.varyingLeaks = this.elements.filter(e => !constant(e.leaks)).map(e => e.index);
  }

  readSupplies(json) {
    this.supplies = (json.supplies ?? []).map((s, i) => this.readSupply(s, i, -1));
    this.converters = (json.converters ?? []).map((c, index) => {
      const supply = this.readSupply(c.output, this.supplies.length, index);
      this.supplies.push(supply);
      return { name: c.name, index, supply: supply.index, when: c.when ?? true };
    });
    this.supplyIndex = new Map(this.supplies.map(s => [s.name, s.index]));
    // Stores count in live, isolated and energised at grade loose alone; everything else looks at the others.
    this.working = this.supplies.filter(s => s.store === null).map(s => s.index);
  }

  /** @returns {Supply} */
  readSupply(json, index, converter) {
    const conductors = json.conductors.map(c => ({
      name: c.name, net: this.net(c.net), ...phasor(c), polarity: POLARITIES[c.polarity ?? (json.kind === 'dc' ? 'plus' : 'ac')],
      present: this.guard(c.present),
    }));
    if (conductors.length > 30) throw new Error(`supply ${json.name} has more than 30 conductors`);
    const supply = {
      name: json.name, index, group: json.group ?? `alone: ${json.name}`, elv: json.elv === true, limited: json.limited === true,
      store: json.store ?? null, converter, present: this.guard(json.present), conductors,
      volts: differences(conductors), triangles: [],
      anode: maskOf(conductors, c => c.polarity !== MINUS), cathode: maskOf(conductors, c => c.polarity !== PLUS),
    };
    supply.triangles = triangles(supply);
    return supply;
  }

  readCouplings(json) {
    // A converter's windings are its coupling, driven from any of them.
    const converters = (json.converters ?? []).map(c => ({ windings: c.windings ?? [], first: false }));
    const others = (json.couplings ?? []).map(c => ({ windings: c.windings ?? [], first: c.from === 'first' }));
    this.couplings = [...converters, ...others].filter(c => c.windings.length > 0)
      .map(c => ({ first: c.first, windings: c.windings.map(w => w.map(name => this.net(name))) }));
    /** Links between like-numbered terminals of each two windings; with `first` only from the first winding. */
    this.links = [];
    for (const { windings, first } of this.couplings) {
      for (let i = 0; i < (first ? 1 : windings.length); i++) {
        for (let j = i + 1; j < windings.length; j++) {
          const like = Math.min(windings[i].length, windings[j].length);
          for (let k = 0; k < like; k++) this.links.push({ a: windings[i][k], b: windings[j][k], directed: first });
        }
      }
    }
  }

  /** @returns {Load} */
  readLoad(json) {
    const elements = (json.elements ?? []).map(id => this.element(id));
    const modes = (json.modes ?? []).map(mode => ({
      name: mode.name, turns: mode.turns ?? null, feed: (mode.feed ?? []).map(n => this.net(n)),
      joined: (mode.joined ?? []).map(g => g.map(n => this.net(n))), apart: (mode.apart ?? []).map(g => g.map(n => this.net(n))),
    }));
    for (const mode of modes) {
      if (mode.feed.length !== 2 && mode.feed.length !== 3) throw new Error(`load ${json.name}: a mode is fed at two or three terminals`);
    }
    // Reading: the terminals are the ends of its elements and every net its modes name.
    const terminals = new Set(elements.flatMap(e => [this.elements[e].a, this.elements[e].b]));
    for (const mode of modes) for (const net of [mode.feed, ...mode.joined, ...mode.apart].flat()) terminals.add(net);
    return { name: json.name, elements, terminals: [...terminals], modes };
  }

  readEntry(device, entry) {
    const [variable, to] = this.valueOf(entry.variable, entry.to);
    return { device: device.tag, variable, to, elements: (entry.elements ?? []).map(id => this.element(id)) };
  }

  /** Variables that the conducting set, the sources or a converter depend on. */
  findNetworkVariables(json) {
    const names = new Set();
    for (const e of this.elements) for (const g of e.guards) variablesOf(g, names);
    const supplies = [...(json.supplies ?? []), ...(json.converters ?? []).map(c => c.output)];
    for (const s of supplies) for (const g of [s.present, ...s.conductors.map(c => c.present)]) variablesOf(g, names);
    for (const c of this.converters) variablesOf(c.when, names);
    return [...names].map(name => this.variable(name).index);
  }

  /** Variables whose own value a converter's condition asks for. */
  get converterVariables() {
    const names = new Set();
    for (const c of this.converters) variablesOf(c.when, names);
    return [...names].map(name => this.variable(name).index);
  }

  /** @param {number} index @param {Int32Array} values */
  decode(index, values) {
    for (let i = this.variables.length - 1; i >= 0; i--) {
      const size = this.variables[i].values.length;
      values[i] = index % size;
      index = Math.floor(index / size);
    }
  }

  /** @param {ArrayLike<number>} values @returns {number} */
  encode(values) {
    let index = 0;
    for (let i = 0; i < this.variables.length; i++) index += values[i] * this.variables[i].stride;
    return index;
  }

  /** @returns {Int32Array} */
  restValues() { return Int32Array.from(this.variables.map(v => v.rest)); }

  /** @param {number} index @returns {Record<string,string>} */
  describe(index) {
    const values = new Int32Array(this.variables.length);
    this.decode(index, values);
    return Object.fromEntries(this.variables.map((v, i) => [v.name, v.values[values[i]]]));
  }

  /** All nets of a load, device, point or net by name. @param {string} name @returns {number[]} */
  terminalsOf(name) {
    if (this.loadIndex.has(name)) return this.loads[this.load(name)].terminals;
    if (this.deviceIndex.has(name)) {
      const nets = new Set(this.elements.filter(e => e.device === name).flatMap(e => [e.a, e.b]));
      for (const point of Object.values(this.json.points ?? {})) if (point.device === name) nets.add(this.net(point.net));
      return [...nets];
    }
    const point = (this.json.points ?? {})[name];
    return [this.net(point ? point.net : name)];
  }
}

/**
 * Volts at an angle. Reading: a direct-current conductor has a polarity in place of an angle, so one marked minus
 * with positive volts and no angle stands below zero.
 */
function phasor(conductor) {
  const volts = conductor.volts ?? 0, degrees = conductor.degrees ?? 0;
  if (conductor.polarity === 'minus' && degrees === 0) return { re: -Math.abs(volts), im: 0 };
  return { re: volts * Math.cos(degrees * Math.PI / 180), im: volts * Math.sin(degrees * Math.PI / 180) };
}

const maskOf = (conductors, test) => conductors.reduce((mask, c, i) => test(c) ? mask | 1 << i : mask, 0);

/** The voltage between each two conductors; exactly 0 when equal. */
function differences(conductors) {
  const n = conductors.length, volts = new Float64Array(n * n);
  for (let p = 0; p < n; p++) {
    for (let q = 0; q < n; q++) {
      const a = conductors[p], b = conductors[q];
      const gap = Math.hypot(a.re - b.re, a.im - b.im);
      volts[p * n + q] = gap <= CLOSE * Math.max(Math.hypot(a.re, a.im), Math.hypot(b.re, b.im)) ? 0 : gap;
    }
  }
  return volts;
}

/**
 * Ordered triples of conductors whose mutual voltages agree within 10 %. Reading: the largest exceeds the smallest
 * by no more than a tenth of the largest. Forward is L1, L2, L3 with L2 lagging: the triangle turns clockwise.
 */
function triangles({ conductors, volts }) {
  const n = conductors.length, found = [];
  for (let p = 0; p < n; p++) for (let q = 0; q < n; q++) for (let r = 0; r < n; r++) {
    if (p === q || q === r || p === r) continue;
    const sides = [volts[p * n + q], volts[q * n + r], volts[r * n + p]];
    const most = Math.max(...sides), least = Math.min(...sides);
    if (least === 0 || most - least > 0.1 * most * (1 + CLOSE)) continue;
    const [a, b, c] = [conductors[p], conductors[q], conductors[r]];
    const turn = (b.re - a.re) * (c.im - a.im) - (b.im - a.im) * (c.re - a.re);
    found.push({ p, q, r, forward: turn < 0 });
  }
  return found;
}

/** @param {any} json @param {{looseFromEarthTied?: boolean}} [readings] @returns {Panel} */
export const readNetlist = (json, readings) => new Panel(json, readings);
