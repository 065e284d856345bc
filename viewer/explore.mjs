// The space of states: moves on demand, settling, what is reachable from rest, and the shortest story to a state.

import { State, Records, OPTIONAL, NONE } from './moves.mjs';
import { Components, Slots } from './settle.mjs';

export class Space {
  /** @param {import('./moves.mjs').Rules} rules @param {boolean} full whether records carry what tables show */
  constructor(rules, full = false) {
    this.rules = rules;
    this.panel = rules.panel;
    this.size = this.panel.assignments;
    if (!(this.size <= Number.MAX_SAFE_INTEGER)) throw new Error('the panel has too many states to number');
    this.records = new Records(rules, full);
    this.state = new State(this.records);
    this.steps = this.size <= 1 << 22 ? new Array(this.size) : null;
    this.stepMap = this.steps ? null : new Map();
    /** Bottoms of the certain urgent moves. */
    this.urgent = new Components(this.size, i => this.of(i).urgent);
    /** Bottoms with `short` moves left out. */
    this.unprotected = new Components(this.size, i => this.of(i).settle);
  }

  /**
   * The moves of a state: certain urgent targets, those of them by settling, and all others as code and target.
   * @param {number} i
   */
  of(i) {
    let steps = this.steps ? this.steps[i] : this.stepMap.get(i);
    if (steps === undefined) {
      this.state.go(i);
      steps = this.collect();
      if (this.steps) this.steps[i] = steps; else this.stepMap.set(i, steps);
    }
    return steps;
  }

  /** Moves of the state that `this.state` stands in. */
  collect() {
    const { state, rules } = this, urgent = [], urgentCodes = [], settle = [], optional = [], inputs = [];
    for (let code = 0; code < state.enabled.length; code++) {
      const able = state.enabled[code];
      if (able === NONE) continue;
      const to = state.target(code), by = rules.by(code);
      if (able === OPTIONAL) optional.push(code, to);
      else if (by === 'settle' || by === 'short') {
        urgent.push(to); urgentCodes.push(code);
        if (by === 'settle') settle.push(to);
      } else inputs.push(code, to);
    }
    return { urgent, urgentCodes, settle: settle.length === urgent.length ? urgent : settle, optional, inputs };
  }

  settled(i) { return this.urgent.isBottom(i); }
  steady(i) { return this.settled(i) && this.urgent.sizeOf(i) === 1; }
  chatters(i) { return this.settled(i) && this.urgent.sizeOf(i) > 1; }

  /** Settled with no delay move enabled. Reading: an optional delay move does not disturb quiet. */
  quiet(i) {
    if (!this.settled(i)) return false;
    const { inputs } = this.of(i);
    for (let k = 0; k < inputs.length; k += 2) if (this.rules.by(inputs[k]) === 'delay') return false;
    return true;
  }

  /** How many failure variables stand away from rest. */
  failuresAt(i) {
    let count = 0;
    for (const v of this.panel.variables) {
      if (v.kind === 'failure' && Math.floor(i / v.stride) % v.values.length !== v.rest) count++;
    }
    return count;
  }

  /**
   * Calls with each move that may be taken from a state: certain urgent ones and optional ones at once, welding in
   * any state, all others from settled states.
   * @param {number} i @param {number} budget @param {(code: number, to: number, urgent: boolean) => void} take
   */
  moves(i, budget, take) {
    const { urgent, urgentCodes, optional, inputs } = this.of(i), { rules } = this;
    for (let k = 0; k < urgent.length; k++) take(urgentCodes[k], urgent[k], true);
    const settled = this.settled(i);
    const failing = budget > 0 && this.failuresAt(i) < budget;
    for (const [list, anywhere] of [[optional, true], [inputs, settled]]) {
      for (let k = 0; k < list.length; k += 2) {
        const code = list[k], move = code < rules.firstEntry ? rules.moves[code] : null;
        if (move?.failure && !failing) continue;
        if (anywhere || move?.welding) take(code, list[k + 1], move === null || move.urgent);
      }
    }
  }

  /** Everything that settling from a state passes, that state first. @returns {number[]} */
  settling(i) {
    const found = [i], seen = new Set(found);
    for (const state of found) for (const to of this.of(state).urgent) if (!seen.has(to)) { seen.add(to); found.push(to); }
    return found;
  }

  /** Rest: the settled states that the resting values settle to, in rising order. @returns {number[]} */
  rest() {
    return this.settling(this.panel.encode(this.panel.restValues())).filter(i => this.settled(i)).sort((a, b) => a - b);
  }

  satisfiesConstraints(i) {
    const values = new Int32Array(this.panel.variables.length);
    this.panel.decode(i, values);
    return this.panel.constraints.every(c => c.holds(values));
  }

  /** Settles taking the first declared move each time; a move back to a state already passed is left for last. */
  settleInOrder(i) {
    const seen = new Set([i]), path = [i];
    while (!this.settled(path[path.length - 1])) {
      const { urgent, urgentCodes } = this.of(path[path.length - 1]);
      let best = -1;
      for (let k = 0; k < urgent.length; k++) if (!seen.has(urgent[k]) && (best < 0 || this.before(urgentCodes[k], urgentCodes[best]))) best = k;
      if (best < 0) path.pop(); else { seen.add(urgent[best]); path.push(urgent[best]); }
    }
    return path[path.length - 1];
  }

  /** Declared order of two moves: by variable, then as listed. */
  before(a, b) {
    const { rules } = this, variable = code => code < rules.firstEntry ? rules.moves[code].variable : rules.entries[code - rules.firstEntry].variable;
    return variable(a) - variable(b) < 0 || (variable(a) === variable(b) && a < b);
  }

  /** Powered: from rest, the listed operations with settling after each; what cannot be done is left. @returns {number} */
  powered() {
    let state = this.settleInOrder(this.panel.encode(this.panel.restValues()));
    for (const operation of this.panel.powered) {
      const [name, value] = splitOperation(operation), [index, wanted] = this.panel.valueOf(name, value);
      if (this.panel.variables[index].standby) continue;
      state = this.operate(state, index, wanted) ?? state;
    }
    return state;
  }

  /**
   * Works one control to a value by the fewest operator moves of its own, settling in declared order after each.
   * @returns {number|null} null when it cannot be done
   */
  operate(state, variable, wanted) {
    const valueAt = i => this.valueAt(i, variable), seen = new Set([state]);
    let layer = [state];
    while (layer.length > 0) {
      const next = [];
      for (const i of layer) {
        if (valueAt(i) === wanted) return i;
        const { inputs } = this.of(i);
        for (let k = 0; k < inputs.length; k += 2) {
          const move = this.rules.moves[inputs[k]];
          if (move.variable !== variable || move.by !== 'operator') continue;
          const to = this.settleInOrder(inputs[k + 1]);
          if (!seen.has(to)) { seen.add(to); next.push(to); }
        }
      }
      layer = next;
    }
    return null;
  }

  valueAt(i, variable) {
    const v = this.panel.variables[variable];
    return Math.floor(i / v.stride) % v.values.length;
  }

  /**
   * All states reachable from rest, passing ones included, in the order found.
   * @param {number} budget failures allowed since rest
   * @param {number} limit @returns {{order:number[], seen:Slots}}
   */
  reachable(budget = 0, limit = Infinity) {
    const order = [], seen = new Slots(this.size);
    const enter = i => { if (seen.get(i) === 0) { seen.set(i, 1); order.push(i); } };
    this.rest().forEach(enter);
    for (let head = 0; head < order.length; head++) {
      if (order.length > limit) throw new Error(`more than ${limit} reachable states`);
      this.moves(order[head], budget, (code, to) => enter(to));
    }
    return { order, seen };
  }

  /**
   * Shortest stories from rest: fewest operator, process, trip, delay, condition and failure moves, then fewest
   * armature moves, then declared order.
   * @param {number} budget
   * @param {(state: number) => boolean} stop ends the search at the first state, in order of cost, that it accepts
   */
  stories(budget, stop) {
    const from = new Map(), done = new Set(), queue = new Queue();
    for (const i of this.rest()) { from.set(i, { cost: 0, state: -1, code: -1 }); queue.push(0, i); }
    while (!queue.empty()) {
      const [cost, i] = queue.pop();
      if (done.has(i)) continue;
      done.add(i);
      if (stop(i)) return { found: i, from, done };
      this.moves(i, budget, (code, to, urgent) => {
        const total = cost + (urgent ? 1 : WHOLE), known = from.get(to);
        if (known === undefined || total < known.cost) { from.set(to, { cost: total, state: i, code }); queue.push(total, to); }
      });
    }
    return { found: -1, from, done };
  }

  /** @returns {{rest: Record<string,string>, moves: {variable:string,from:string,to:string,by:string,optional:boolean}[], at: Record<string,string>}} */
  story(from, state) {
    const moves = [], at = this.panel.describe(state);
    for (let link = from.get(state); link.state >= 0; state = link.state, link = from.get(state)) moves.unshift(this.tell(link, state));
    return { rest: this.panel.describe(state), moves, at };
  }

  /** @param {{state:number,code:number}} link @param {number} to */
  tell({ state, code }, to) {
    const variable = code < this.rules.firstEntry ? this.rules.moves[code].variable : this.rules.entries[code - this.rules.firstEntry].variable;
    const v = this.panel.variables[variable], value = i => v.values[this.valueAt(i, variable)];
    const optional = this.of(state).optional.some((c, k) => k % 2 === 0 && c === code);
    return { variable: v.name, from: value(state), to: value(to), by: this.rules.by(code), optional };
  }
}

/** One non-armature move costs more than any number of armature moves. */
const WHOLE = 2 ** 26;

/** A priority queue; equal costs leave in the order they came. */
class Queue {
  constructor() { this.heap = []; this.count = 0; }
  empty() { return this.heap.length === 0; }
  push(cost, state) {
    const { heap } = this, item = { cost, order: this.count++, state };
    let i = heap.push(item) - 1;
    for (let up = i - 1 >> 1; i > 0 && less(item, heap[up]); i = up, up = i - 1 >> 1) heap[i] = heap[up];
    heap[i] = item;
  }
  pop() {
    const { heap } = this, top = heap[0], last = heap.pop();
    if (heap.length > 0) {
      let i = 0;
      for (let down = 1; down < heap.length; down = 2 * i + 1) {
        if (down + 1 < heap.length && less(heap[down + 1], heap[down])) down++;
        if (!less(heap[down], last)) break;
        heap[i] = heap[down]; i = down;
      }
      heap[i] = last;
    }
    return [top.cost, top.state];
  }
}
const less = (a, b) => a.cost < b.cost || (a.cost === b.cost && a.order < b.order);

/** "Q1=closed" as name and value. @param {string} text @returns {[string, string]} */
export function splitOperation(text) {
  const at = text.lastIndexOf('=');
  if (at < 0) throw new Error(`${text} is not an operation`);
  return [text.slice(0, at), text.slice(at + 1)];
}
