// Questions put to every reachable state at once: in how many of them does something hold?

import { Rules, State, NONE, CERTAIN } from './moves.mjs';
import { Space } from './explore.mjs';
import { Atoms, Network } from './network.mjs';

/**
 * A part of a question, asked of one state:
 * `{holds, without, rest}` an expression, with elements taken out and some variables as at rest; `{not}`, `{all}`, `{any}` of
 * parts; `{is}` one of settled, quiet, chatter, shorted, unprotected (shorted, and no short-circuit device can open), calm
 * (certain urgent moves lead to no short); `{blocked}` the variable wants a move that a constraint forbids; `{race}`
 * settle moves of several devices lead to settled states where the expression holds, and to others.
 * @typedef {any} Part
 */

/**
 * @param {import('./netlist.mjs').Panel} panel
 * @param {{netlist: any, questions: {where: Part, avoid?: string[], then?: Part}[], limit: number}} request with `then` the states of
 *   `where` are followed by all moves but those of the variables to avoid ("NAME", or "NAME by")
 * @returns {{complete: boolean, states: number, answers: {count: number, then?: boolean}[]}}
 */
export function survey(panel, { netlist, questions, limit }) {
  const { space, states, complete } = explored(panel, JSON.stringify(netlist), limit), judge = new Judge(space);
  const asked = questions.map(q => ({ where: judge.part(q.where), then: q.then === undefined ? null : judge.part(q.then), avoid: new Set(q.avoid ?? []) }));
  const found = asked.map(() => []);
  for (const i of states) {
    judge.go(i);
    asked.forEach(({ where }, k) => { if (where(i)) found[k].push(i); });
  }
  const answers = asked.map(({ then, avoid }, k) => {
    const count = found[k].length;
    return then === null ? { count } : { count, then: follow(space, found[k], avoid).some(i => { judge.go(i); return then(i); }) };
  });
  return { complete, states: states.length, answers };
}

let last = { text: '', limit: 0 };

/** The states of the panel, kept for when it is asked about again. */
function explored(panel, text, limit) {
  if (last.text !== text || last.limit !== limit) {
    const space = new Space(new Rules(panel));
    last = { text, limit, space, ...reachable(space, limit) };
  }
  return last;
}

/** All of them, or past the limit those that a few long walks meet. */
function reachable(space, limit) {
  const rest = space.rest(), seen = new Set(rest), order = [...rest];
  for (let head = 0; head < order.length && order.length <= limit; head++) {
    space.moves(order[head], 0, (code, to) => { if (!seen.has(to)) { seen.add(to); order.push(to); } });
  }
  return order.length <= limit ? { states: order, complete: true } : { states: [...walks(space, rest, limit)], complete: false };
}

function walks(space, rest, limit) {
  const seen = new Set(), next = dice();
  for (let steps = 0; steps < limit; steps++) {
    if (steps % 400 === 0) var at = rest[next() % rest.length];
    seen.add(at);
    const targets = [];
    space.moves(at, 0, (code, to) => targets.push(to));
    if (targets.length > 0) at = targets[next() % targets.length];
  }
  return seen;
}

function dice(seed = 1) {
  return () => (seed = Math.imul(seed, 1664525) + 1013904223 >>> 0) >>> 8;
}

/** States that follow from some, those included. */
function follow(space, from, avoid) {
  const seen = new Set(from), order = [...from], { rules, panel } = space;
  for (let head = 0; head < order.length; head++) {
    space.moves(order[head], 0, (code, to) => {
      const own = code < rules.firstEntry ? rules.moves[code] : rules.entries[code - rules.firstEntry], { name } = panel.variables[own.variable];
      if (avoid.has(name) || avoid.has(`${name} ${rules.by(code)}`) || seen.has(to)) return;
      seen.add(to); order.push(to);
    });
  }
  return order;
}

/** Compiles parts to functions of the state that it stands in. */
class Judge {
  /** @param {Space} space */
  constructor(space) {
    this.space = space;
    this.panel = space.panel;
    // Its own: the space's moves about while it settles.
    this.state = new State(space.records);
    this.probes = new Map();
  }

  /** @param {number} i */
  go(i) {
    this.state.go(i);
    for (const probe of this.probes.values()) probe.known = null;
  }

  /** @param {Part} json @returns {(i: number) => boolean} */
  part(json) {
    if ('not' in json) { const inner = this.part(json.not); return i => !inner(i); }
    if ('all' in json) { const inner = json.all.map(p => this.part(p)); return i => inner.every(p => p(i)); }
    if ('any' in json) { const inner = json.any.map(p => this.part(p)); return i => inner.some(p => p(i)); }
    if ('blocked' in json) { const { index } = this.panel.variable(json.blocked); return () => this.state.blocked.includes(index); }
    if ('race' in json) return this.race(json.race);
    if ('holds' in json) return this.holds(json);
    return this.is(json.is);
  }

  is(word) {
    const { space, state } = this, { rules } = space, shorted = i => this.at(i, () => state.record.shorted);
    switch (word) {
      case 'settled': return i => space.settled(i);
      case 'quiet': return i => space.quiet(i);
      case 'chatter': return i => space.chatters(i);
      case 'shorted': return () => state.record.shorted;
      case 'unprotected': return () => state.record.shorted && rules.entries.every((_, k) => state.enabled[rules.firstEntry + k] === NONE);
      case 'calm': return i => !space.settling(i).some(shorted);
      default: throw new Error(`${word} is not known of a state`);
    }
  }

  /** Asks of another state, and comes back. */
  at(i, ask) {
    const here = this.state.index;
    if (i !== here) this.go(i);
    const answer = ask();
    if (i !== here) this.go(here);
    return answer;
  }

  race(outcome) {
    const { space } = this, holds = this.part({ holds: outcome });
    return i => {
      if (this.movers(i) < 2) return false;
      const seen = new Set([i]);
      let yes = false, no = false;
      for (const s of seen) {
        space.of(s).settle.forEach(to => seen.add(to));
        if (!space.settled(s)) continue;
        if (this.at(s, () => holds(s))) yes = true; else no = true;
      }
      return yes && no;
    };
  }

  /** How many devices have a certain settle move to make. */
  movers(i) {
    return this.at(i, () => {
      const { state, panel } = this, { rules } = this.space;
      return new Set(rules.moves.filter((m, k) => m.by === 'settle' && state.enabled[k] === CERTAIN).map(m => panel.variables[m.variable].device)).size;
    });
  }

  holds({ holds, without = [], rest = [] }) {
    const key = JSON.stringify([without, rest]);
    if (!this.probes.has(key)) this.probes.set(key, new Probe(this.panel, without, rest));
    const probe = this.probes.get(key), expression = probe.atoms.expression(holds);
    return () => probe.holds(expression, this.state.values);
  }
}

/** A network of its own, with elements taken out and some variables as at rest whatever the state. */
class Probe {
  constructor(panel, without, rest) {
    this.panel = panel;
    this.atoms = new Atoms(panel);
    this.removed = new Uint8Array(panel.elements.length);
    for (const id of without) this.removed[panel.element(id)] = 1;
    this.rest = rest.map(name => panel.variable(name));
    this.values = new Int32Array(panel.variables.length);
    this.truths = new Map();
    this.known = null;
  }

  holds(expression, values) {
    if (this.known === null) this.known = this.look(values);
    return expression(this.values, this.known);
  }

  look(values) {
    this.network ??= new Network(this.panel, this.atoms, this.removed);
    this.values.set(values);
    for (const v of this.rest) this.values[v.index] = v.rest;
    const key = this.network.set(this.values);
    if (!this.truths.has(key)) { this.network.solve(); this.truths.set(key, this.network.askAll()); }
    return this.truths.get(key);
  }
}
