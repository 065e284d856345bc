// The whole table: what holds in every assignment, reachable or not, as bitsets.

import { makeBits, setBit, hasBit, countBits, toHex } from './bits.mjs';
import { Rules, CERTAIN, OPTIONAL } from './moves.mjs';
import { Space } from './explore.mjs';
import { DEAD, BY_LOAD_REACH } from './reach.mjs';
import { RUNS_FORWARD, RUNS_REVERSE, RUNS, SINGLE_PHASING, STANDS_LIVE } from './loads.mjs';

const LIMIT = 1 << 22;

/** @param {import('./netlist.mjs').Panel} panel @param {{failures?: number}} options */
export function table(panel, options = {}) {
  if (panel.assignments > LIMIT) throw new Error(`${panel.assignments} assignments are too many for a table`);
  const space = new Space(new Rules(panel), true), columns = new Columns(space);
  for (let i = 0; i < space.size; i++) columns.add(i);
  const settling = settlingColumns(space, columns), reaching = reachingColumns(space, settling, options.failures ?? 0);
  const { rest, powered, ...sets } = { ...settling, ...reaching };
  return {
    assignments: space.size, ...columns.answer(), ...hexAll(sets), rest, powered,
    restSatisfies: rest.every(i => space.satisfiesConstraints(i)),
    counts: Object.fromEntries(Object.entries(sets).map(([name, bits]) => [name, countBits(bits)])),
    networks: space.records.known.size,
  };
}

const hexAll = sets => Object.fromEntries(Object.entries(sets).map(([name, bits]) => [name, toHex(bits)]));

/** Columns that need one assignment at a time. */
class Columns {
  /** @param {Space} space */
  constructor(space) {
    this.space = space;
    const { panel, rules } = space, make = () => makeBits(space.size), each = list => list.map(make);
    this.live = each(panel.nets);
    this.solidlyLive = each(panel.nets);
    this.earthTied = each(panel.nets);
    this.short = each(panel.supplies);
    this.shortAny = make();
    this.loads = panel.loads.map(() => ({ forward: make(), reverse: make(), any: make(), singlePhasing: make(), standsLive: make() }));
    this.certain = each(space.state.enabled.length ? [...space.state.enabled] : []);
    this.optional = this.certain.map(make);
    this.when = each(rules.moves);
    this.may = each(rules.moves);
    this.blocked = make();
    this.allowed = make();
  }

  add(i) {
    const { space } = this, { state } = space;
    state.go(i);
    space.steps[i] = space.collect();
    this.addNetwork(i, state.record);
    for (let m = 0; m < state.when.length; m++) {
      if (state.when[m]) setBit(this.when[m], i);
      if (state.may[m]) setBit(this.may[m], i);
    }
    for (let m = 0; m < state.enabled.length; m++) {
      if (state.enabled[m] === CERTAIN) setBit(this.certain[m], i);
      else if (state.enabled[m] === OPTIONAL) setBit(this.optional[m], i);
    }
    if (state.blocked.length > 0) setBit(this.blocked, i);
    if (space.panel.constraints.every(c => c.holds(state.values))) setBit(this.allowed, i);
  }

  addNetwork(i, { survey, shorted, supplies }) {
    const { live, solid, earthTied, loads } = survey;
    for (let n = 0; n < live.length; n++) {
      if (live[n] !== DEAD) setBit(this.live[n], i);
      if (solid[n] === BY_LOAD_REACH) setBit(this.solidlyLive[n], i);
      if (earthTied[n]) setBit(this.earthTied[n], i);
    }
    if (shorted) {
      setBit(this.shortAny, i);
      for (let s = 0; s < supplies.length; s++) if (supplies[s]) setBit(this.short[s], i);
    }
    for (let k = 0; k < loads.length; k++) this.addLoad(this.loads[k], loads[k], i);
  }

  addLoad(column, bits, i) {
    if (bits & RUNS_FORWARD) setBit(column.forward, i);
    if (bits & RUNS_REVERSE) setBit(column.reverse, i);
    if (bits & RUNS) setBit(column.any, i);
    if (bits & SINGLE_PHASING) setBit(column.singlePhasing, i);
    if (bits & STANDS_LIVE) setBit(column.standsLive, i);
  }

  answer() {
    const { panel, rules } = this.space, named = (list, columns) => Object.fromEntries(list.map((x, k) => [x.name ?? x, columns[k]]));
    const pairs = (a, b, names) => {
      let at = 0;
      return panel.variables.map(v => v.moves.map(() => { const k = at++; return { [names[0]]: toHex(a[k]), [names[1]]: toHex(b[k]) }; }));
    };
    return {
      live: named(panel.nets, this.live.map(toHex)), solidlyLive: named(panel.nets, this.solidlyLive.map(toHex)),
      earthTied: named(panel.nets, this.earthTied.map(toHex)), short: named(panel.supplies, this.short.map(toHex)),
      shortAny: toHex(this.shortAny), runs: named(panel.loads, this.loads.map(hexAll)),
      moves: pairs(this.certain, this.optional, ['certain', 'optional']), raw: pairs(this.when, this.may, ['when', 'may']),
      shortMoves: rules.entries.map((entry, k) => ({
        device: entry.device, variable: panel.variables[entry.variable].name, to: panel.variables[entry.variable].values[entry.to],
        certain: toHex(this.certain[rules.firstEntry + k]), optional: toHex(this.optional[rules.firstEntry + k]),
      })),
      blocked: toHex(this.blocked), allowed: toHex(this.allowed),
    };
  }
}

/** Settled, steady, chatter, race, and shorts that last, over all assignments. */
function settlingColumns(space, { shortAny }) {
  const make = () => makeBits(space.size), settled = make(), steady = make(), chatter = make(), shortLasts = make();
  for (let i = 0; i < space.size; i++) {
    if (space.settled(i)) { setBit(settled, i); setBit(space.chatters(i) ? chatter : steady, i); }
    if (hasBit(shortAny, i) && space.unprotected.isBottom(i)) setBit(shortLasts, i);
  }
  return { settled, steady, chatter, race: findRaces(space), shortLasts };
}

/** States from which two bottoms are reachable by `settle` moves. */
export function findRaces(space) {
  const race = makeBits(space.size), { urgent, unprotected } = space, MANY = -2;
  for (let i = 0; i < space.size; i++) unprotected.of(i);
  // One bottom for each settle-component: its own, or what its successors agree on. Successors have smaller numbers.
  const bottoms = new Int32Array(unprotected.bottom.length).fill(-1);
  const members = Array.from({ length: bottoms.length }, () => []);
  for (let i = 0; i < space.size; i++) members[unprotected.of(i)].push(i);
  const merge = (a, b) => a === -1 ? b : b === -1 || a === b ? a : MANY;
  members.forEach((states, c) => {
    for (const i of states) {
      if (space.settled(i)) bottoms[c] = merge(bottoms[c], urgent.of(i));
      for (const to of space.of(i).settle) if (unprotected.of(to) !== c) bottoms[c] = merge(bottoms[c], bottoms[unprotected.of(to)]);
    }
    if (bottoms[c] === MANY) for (const i of states) setBit(race, i);
  });
  return race;
}

function reachingColumns(space, { settled }, failures) {
  const reachable = makeBits(space.size), reachableSettled = makeBits(space.size), rest = space.rest();
  for (const i of space.reachable(failures).order) {
    setBit(reachable, i);
    if (hasBit(settled, i)) setBit(reachableSettled, i);
  }
  return { reachable, reachableSettled, rest, powered: space.powered() };
}
