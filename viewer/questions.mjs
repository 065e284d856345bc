// The questions, by brute force: live, isolating sets, and the intents never, dead, stops and can.

import { Atoms, Network } from './network.mjs';
import { Rules, Records } from './moves.mjs';
import { Space, splitOperation } from './explore.mjs';
import { Components } from './settle.mjs';
import { DEAD } from './reach.mjs';
import { variablesOf } from './guard.mjs';

const REACH_LIMIT = 3_000_000, FREE_LIMIT = 1 << 24;

/** What each net is in one state; variables that are not given stand at rest. */
export function liveAt(panel, state) {
  const values = panel.restValues();
  for (const [name, value] of Object.entries(state)) {
    const [variable, index] = panel.valueOf(name, value);
    values[variable] = index;
  }
  const network = new Network(panel, new Atoms(panel));
  network.set(values);
  network.solve();
  return { nets: Object.fromEntries(network.explain().map((told, i) => [panel.nets[i], told])) };
}

// ---- freedoms of "isolated" and "dead" ----

/** Failures of class coil, wiring and control do not occur there. */
const fixed = v => v.kind === 'failure' && ['coil', 'wiring', 'control'].includes(v.class);

/** Calls with every assignment of these variables, all others at rest; stops when told true. */
function everyAssignment(panel, variables, named, visit) {
  const values = panel.restValues(), free = variables.filter(i => named.includes(i) || !fixed(panel.variables[i]));
  const count = free.reduce((product, i) => product * panel.variables[i].values.length, 1);
  if (count > FREE_LIMIT) throw new Error(`${count} assignments are too many to try`);
  for (const i of free) values[i] = 0;
  for (let n = 0; n < count; n++) {
    if (visit(values)) return true;
    for (let k = free.length - 1; k >= 0; k--) {
      if (++values[free[k]] < panel.variables[free[k]].values.length) break;
      values[free[k]] = 0;
    }
  }
  return false;
}

/** Assignments that make all the networks there can be, one each. */
function distinctNetworks(panel) {
  const network = new Network(panel, new Atoms(panel)), found = new Map();
  everyAssignment(panel, panel.networkVariables, [], values => {
    const key = network.set(values);
    if (!found.has(key)) found.set(key, values.slice());
    return false;
  });
  return [...found.values()];
}

/**
 * Decides whether targets can be live with some pole elements taken out and some stores discharged. Reading: the
 * isolators' own variables are as free as every other, so an auxiliary contact of an open isolator may stand either way.
 */
class Isolation {
  constructor(panel, targets) {
    this.panel = panel;
    this.targets = targets;
    this.assignments = distinctNetworks(panel);
    this.witnesses = [];
  }

  /** @param {string[]} isolators @param {Set<number>} discharged @returns {boolean} */
  isolates(isolators, discharged) {
    const { panel } = this, removed = new Uint8Array(panel.elements.length), lost = new Uint8Array(panel.supplies.length);
    for (const tag of isolators) for (const id of panel.deviceIndex.get(tag).isolates.elements) removed[panel.element(id)] = 1;
    for (const s of discharged) lost[s] = 1;
    const network = new Network(panel, new Atoms(panel), removed), seen = new Set();
    const live = values => {
      const key = network.set(values);
      if (seen.has(key)) return false;
      seen.add(key);
      network.solve(lost);
      const marks = network.live();
      return this.targets.some(net => marks[net] !== DEAD);
    };
    // What made another set fail usually makes this one fail.
    if (this.witnesses.some(live)) return false;
    const witness = this.assignments.find(live);
    if (witness === undefined) return true;
    this.witnesses.push(witness);
    return false;
  }
}

/**
 * All minimal sets of isolators, with the stores that must be discharged or blocked besides.
 * @param {import('./netlist.mjs').Panel} panel
 * @param {{target: string[], isolators?: string[]}} request
 */
export function isolatingSets(panel, { target, isolators }) {
  const tags = isolators ?? panel.devices.filter(d => d.isolates).map(d => d.tag);
  for (const tag of tags) if (!panel.deviceIndex.get(tag)?.isolates) throw new Error(`${tag} is no isolator`);
  const stores = panel.supplies.filter(s => s.store !== null).map(s => s.index);
  const items = [...tags, ...stores];
  if (items.length > 24) throw new Error(`${items.length} isolators and stores are too many to try`);
  const isolation = new Isolation(panel, target.flatMap(name => panel.netIndex.has(name) ? [panel.net(name)] : panel.terminalsOf(name)));
  const minimal = [];
  for (const subset of subsetsBySize(items.length)) {
    if (minimal.some(m => (m & subset) === m)) continue;
    const chosen = items.filter((_, i) => subset >> i & 1);
    if (isolation.isolates(chosen.filter(x => typeof x === 'string'), new Set(chosen.filter(x => typeof x === 'number')))) minimal.push(subset);
  }
  const answers = minimal.map(m => ({
    isolators: tags.filter((_, i) => m >> i & 1).sort(),
    discharge: stores.filter((_, i) => m >> (i + tags.length) & 1).map(s => panel.supplies[s].name).sort(),
  }));
  answers.sort((a, b) => order(JSON.stringify(a), JSON.stringify(b)));
  return { sets: answers.map(a => a.isolators), discharge: answers.map(a => a.discharge) };
}

const order = (a, b) => a < b ? -1 : a > b ? 1 : 0;

function subsetsBySize(n) {
  const size = m => { let count = 0; for (; m; m &= m - 1) count++; return count; };
  return Array.from({ length: 2 ** n }, (_, m) => m).sort((a, b) => size(a) - size(b) || a - b);
}

// ---- intents ----

const missing = json => json === undefined || json === null;

/** @param {import('./netlist.mjs').Panel} panel @param {any} intent */
export function judge(panel, intent) {
  if (!intent) throw new Error('there is no such intent');
  const form = { never: judgeNever, dead: judgeDead, stops: judgeStops, can: judgeCan }[intent.form];
  if (form === undefined) throw new Error(`intent form ${intent.form} is not known`);
  return form(panel, intent);
}

/** A space whose records also answer the questions given. */
export class Inquiry {
  constructor(panel, expressions) {
    this.panel = panel;
    this.rules = new Rules(panel, expressions);
    this.quietAtom = this.rules.atoms.index.get(JSON.stringify({ quiet: true })) ?? -1;
    this.space = new Space(this.rules);
    this.values = new Int32Array(panel.variables.length);
  }

  /** @param {number} question @param {number} i */
  holds(question, i) {
    this.panel.decode(i, this.values);
    const { truth } = this.space.records.of(this.values);
    if (this.quietAtom >= 0) truth[this.quietAtom] = this.space.quiet(i) ? 1 : 0;
    return this.rules.questions[question](this.values, truth);
  }
}

const runs = load => ({ runs: load, turns: 'any' });

/** No reachable state, passing ones included unless only settled ones are meant. */
function judgeNever(panel, intent) {
  const condition = intent.when ?? true, hasLoad = !missing(intent.of);
  const inquiry = new Inquiry(panel, [condition, hasLoad ? { all: [runs(intent.of), condition] } : condition]), { space } = inquiry;
  let met = !hasLoad;
  const told = space.stories(intent.failures ?? 0, i => {
    limit(space);
    if (intent.settled && !space.settled(i)) return false;
    met ||= inquiry.holds(0, i);
    return inquiry.holds(1, i);
  });
  if (told.found >= 0) return { verdict: 'refuted', story: space.story(told.from, told.found) };
  return { verdict: met ? 'proved' : 'vacuous', reachable: told.done.size };
}

function limit(space) {
  if (space.urgent.time > REACH_LIMIT) throw new Error(`more than ${REACH_LIMIT} states`);
}

/**
 * In every assignment that satisfies the condition, reachable or not, all terminals are dead. Reading: vacuous when no
 * assignment with these freedoms satisfies it.
 */
function judgeDead(panel, intent) {
  const atoms = new Atoms(panel), condition = atoms.expression(intent.when ?? true);
  if (atoms.index.has(JSON.stringify({ quiet: true }))) throw new Error('"quiet" has no meaning outside the reachable states');
  const network = new Network(panel, atoms), targets = panel.terminalsOf(intent.of);
  const names = variablesOf(intent.when ?? true), asked = [...names].map(name => panel.variable(name).index);
  const variables = [...new Set([...panel.networkVariables, ...asked])];
  // Reading: a failure that the condition itself names is free, whatever its class.
  const known = new Map();
  let met = false, witness = null;
  everyAssignment(panel, variables, asked, values => {
    const key = network.set(values);
    let record = known.get(key);
    if (record === undefined) {
      network.solve();
      record = { truth: network.askAll(), live: targets.filter(net => network.live()[net] !== DEAD) };
      known.set(key, record);
    }
    if (!condition(values, record.truth)) return false;
    met = true;
    if (record.live.length === 0) return false;
    witness = { state: panel.describe(panel.encode(values)), live: record.live.map(net => panel.nets[net]) };
    return true;
  });
  if (witness) return { verdict: 'refuted', ...witness };
  return { verdict: met ? 'proved' : 'vacuous' };
}

/** A reachable settled state has the load running, and without the power elements of each device it would not. */
function judgeCan(panel, intent) {
  const condition = intent.when ?? true, inquiry = new Inquiry(panel, [condition, { all: [runs(intent.of), condition] }]), { space } = inquiry;
  const without = (intent.via ?? []).map(tag => withoutPower(panel, tag, intent.of));
  let met = false;
  const told = space.stories(intent.failures ?? 0, i => {
    limit(space);
    if (!space.settled(i)) return false;
    met ||= inquiry.holds(0, i);
    return inquiry.holds(1, i) && without.every(stillRuns => !stillRuns(i));
  });
  if (told.found >= 0) return { verdict: 'proved', story: space.story(told.from, told.found) };
  return { verdict: met ? 'refuted' : 'vacuous', reachable: told.done.size };
}

/** @returns {(state: number) => boolean} whether the load runs with the device's power elements taken out */
function withoutPower(panel, tag, load) {
  const removed = Uint8Array.from(panel.elements, e => e.device === tag && e.power ? 1 : 0);
  const rules = new Rules(panel, [runs(load)]), records = new Records(rules, false, removed), values = new Int32Array(panel.variables.length);
  return i => { panel.decode(i, values); return rules.questions[0](values, records.of(values).truth); };
}

/**
 * Operating S stops X. Three parts: after S is operated; after the momentary controls are released and S has returned
 * to rest; and no quiet state with S operated has X running. "Bottom" is judged on the certain urgent and delay
 * moves, but a bottom is also reached through optional ones.
 */
function judgeStops(panel, intent) {
  const inquiry = new Inquiry(panel, [intent.when ?? true, runs(intent.of)]), { space } = inquiry;
  const [name, value] = splitOperation(intent.by), [variable, wanted] = panel.valueOf(name, value);
  const stop = new Stop(inquiry, intent, variable, wanted);
  let met = false, failure = null;
  const told = space.stories(intent.failures ?? 0, i => {
    limit(space);
    if (!space.settled(i) || !inquiry.holds(0, i) || !inquiry.holds(1, i)) return false;
    if (space.valueAt(i, variable) === wanted) {
      met = true;
      if (space.quiet(i)) failure = { part: 'held', then: [] };
      return failure !== null;
    }
    const after = stop.operated(i);
    if (after.length === 0) return false;
    met = true;
    failure = stop.fails(after);
    return failure !== null;
  });
  if (failure) return { verdict: 'refuted', ...failure, story: space.story(told.from, told.found) };
  return { verdict: met ? 'proved' : 'vacuous', reachable: told.done.size };
}

class Stop {
  constructor(inquiry, intent, variable, wanted) {
    Object.assign(this, { inquiry, space: inquiry.space, panel: inquiry.panel, intent, variable, wanted });
    const v = this.panel.variables[variable], device = this.panel.deviceIndex.get(v.device);
    this.controls = this.panel.variables.filter(c => c.momentary && c.index !== variable).map(c => c.index);
    // Reading: a stop or momentary control that was moved away from rest returns; a selector or switch stays operated.
    this.returns = wanted !== v.rest && (v.momentary || device?.use === 'stop');
    this.bottoms = new Components(this.space.size, i => this.followers(i, false));
    this.distances = new Map();
  }

  /** Urgent and delay targets of a state; optional ones as well when asked. Delays start from settled states. */
  followers(i, optional, delays = !this.intent.atOnce) {
    const { space } = this, steps = space.of(i), found = [...steps.urgent];
    const add = (list, wanted) => { for (let k = 0; k < list.length; k += 2) if (wanted.includes(space.rules.by(list[k]))) found.push(list[k + 1]); };
    if (delays && space.settled(i)) add(steps.inputs, ['delay']);
    if (optional) add(steps.optional, delays ? ['settle', 'short', 'delay'] : ['settle', 'short']);
    return found;
  }

  /** For each value of a control, how many of its own moves lead to the goal. */
  distance(variable, goal) {
    const key = `${variable} ${goal}`;
    if (!this.distances.has(key)) this.distances.set(key, distancesTo(this.space.rules.moves.filter(m => m.variable === variable), goal));
    return this.distances.get(key);
  }

  /** Operator moves of one control that bring it nearer to the goal, from a settled state. */
  worked(i, variable, goal) {
    const { space } = this, found = [];
    if (!space.settled(i)) return found;
    const { inputs } = space.of(i), far = this.distance(variable, goal);
    for (let k = 0; k < inputs.length; k += 2) {
      const move = space.rules.moves[inputs[k]];
      if (move.by === 'operator' && move.variable === variable && far.get(move.to) < far.get(move.from)) found.push(inputs[k + 1]);
    }
    return found;
  }

  /** Everything that follows while these controls are brought to their goals. */
  closure(from, controls, delays) {
    const found = [...new Set(from)], seen = new Set(found);
    for (const s of found) {
      const next = this.followers(s, true, delays);
      for (const [variable, goal] of controls) next.push(...this.worked(s, variable, goal));
      for (const to of next) if (!seen.has(to)) { seen.add(to); found.push(to); }
    }
    return found;
  }

  at(states, controls) { return states.filter(s => controls.every(([variable, goal]) => this.space.valueAt(s, variable) === goal)); }

  /** States in which S has been brought to the wanted value. */
  operated(i) {
    const work = [[this.variable, this.wanted]];
    return this.at(this.closure([i], work, false), work);
  }

  /** @returns {{part:string,then:any}|null} what still runs */
  fails(after) {
    const delays = !this.intent.atOnce, held = this.closure(after, [], delays);
    const running = this.firstRunning(held);
    if (running >= 0) return { part: 'operated', then: this.panel.describe(running) };
    const again = this.firstRunning(this.released(held, delays));
    return again >= 0 ? { part: 'released', then: this.panel.describe(again) } : null;
  }

  firstRunning(states) { return states.find(s => this.bottoms.isBottom(s) && this.inquiry.holds(1, s)) ?? -1; }

  /**
   * Every momentary control released, in any order, then S itself. Reading: that may begin in any settled state after
   * S was operated, not only when all has come to an end.
   */
  released(held, delays) {
    const rest = this.controls.map(v => [v, this.panel.variables[v].rest]);
    const states = this.at(this.closure(held, rest, delays), rest);
    if (!this.returns) return states;
    const home = [[this.variable, this.panel.variables[this.variable].rest]];
    return this.at(this.closure(states, home, delays), home);
  }
}

function distancesTo(moves, goal) {
  const far = new Map([[goal, 0]]);
  for (const [value, steps] of far) {
    for (const m of moves) if (m.to === value && (m.by === 'operator' || m.by === 'settle') && !far.has(m.from)) far.set(m.from, steps + 1);
  }
  return far;
}
