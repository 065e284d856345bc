// The moves of a state: which are certain, which optional, which a constraint forbids.

import { Atoms, Network } from './network.mjs';
import { compileExpression } from './guard.mjs';

export const URGENT = ['settle', 'short'];
export const NONE = 0, CERTAIN = 1, OPTIONAL = 2;

/** Moves of a panel with their conditions compiled; short-circuit entries come after the listed moves. */
export class Rules {
  /** @param {import('./netlist.mjs').Panel} panel @param {any[]} questions expressions to be asked besides the moves */
  constructor(panel, questions = []) {
    this.panel = panel;
    this.atoms = new Atoms(panel);
    this.moves = panel.variables.flatMap(v => v.moves.map(m => this.readMove(v, m)));
    this.firstEntry = this.moves.length;
    this.entries = panel.entries;
    this.questions = questions.map(json => this.atoms.expression(json));
  }

  readMove(variable, json) {
    const [, from] = this.panel.valueOf(variable.name, json.from), [, to] = this.panel.valueOf(variable.name, json.to);
    const dropping = to === variable.rest && variable.kind !== 'position';
    return {
      variable: variable.index, from, to, by: json.by, urgent: URGENT.includes(json.by),
      when: this.condition(json.when ?? true), may: this.condition(json.may ?? false),
      // Reading: pulls are the settle moves of armatures away from rest, drops every settle move to rest but positions'.
      pull: json.by === 'settle' && variable.kind === 'armature' && to !== variable.rest,
      drop: json.by === 'settle' && dropping,
      failure: json.by === 'failure', welding: json.by === 'failure' && variable.class === 'contact',
      armature: variable.kind === 'armature' && json.by === 'settle',
      step: (to - from) * variable.stride,
    };
  }

  condition(json) {
    return compileExpression(json, this.panel.lookup, (key, node) => {
      if (key === 'quiet') throw new Error('"quiet" cannot be the condition of a move');
      return this.atoms.intern(key, node);
    });
  }

  /** @param {number} code @returns {string} */
  by(code) { return code < this.firstEntry ? this.moves[code].by : 'short'; }
}

/** What a network says that moves and tables need. */
export class Records {
  /** @param {Rules} rules @param {boolean} full whether tables need live and loads too @param {Uint8Array|null} removed */
  constructor(rules, full, removed = null) {
    this.rules = rules;
    this.full = full;
    this.network = new Network(rules.panel, rules.atoms, removed);
    this.known = new Map();
    this.limited = Uint8Array.from(rules.panel.supplies, s => s.limited ? 1 : 0);
  }

  /** @param {Int32Array} values */
  of(values) {
    const key = this.network.set(values);
    let record = this.known.get(key);
    if (record === undefined) { record = this.make(); this.known.set(key, record); }
    return record;
  }

  make() {
    const { network, rules } = this, { shorts } = network;
    network.solve();
    const shorted = shorts.find();
    const record = {
      survey: this.full ? network.survey() : null, truth: network.askAll(), shorted,
      supplies: shorted ? shorts.supplies.slice() : null, entries: null, lost: null,
    };
    if (shorted) {
      record.entries = this.strengths();
      network.solve(record.supplies, false);
      record.lost = network.askAll();
    }
    return record;
  }

  /** For each short-circuit entry: 0 carries no short current, 1 only with supplies that cannot deliver it, 2 without. */
  strengths() {
    const { network, rules, limited } = this, { shorts } = network;
    const carriers = () => { const carried = shorts.elements(); return rules.entries.map(entry => entry.elements.some(e => carried[e])); };
    const carrying = carriers();
    if (limited.includes(1) && carrying.includes(true)) network.solve(limited, false);
    const sure = carriers();
    return carrying.map((carries, k) => carries ? sure[k] ? 2 : 1 : 0);
  }
}

/** The moves of one state, found into arrays that the next state overwrites. */
export class State {
  /** @param {Records} records */
  constructor(records) {
    this.records = records;
    this.rules = records.rules;
    this.panel = this.rules.panel;
    const { moves, entries } = this.rules;
    this.values = new Int32Array(this.panel.variables.length);
    /** Plain truth of `when` and `may`. */
    this.when = new Uint8Array(moves.length);
    this.may = new Uint8Array(moves.length);
    /** NONE, CERTAIN or OPTIONAL for each move, then each short-circuit entry. */
    this.enabled = new Uint8Array(moves.length + entries.length);
    /** Variables whose armature wants a move that a constraint forbids. */
    this.blocked = [];
  }

  /** @param {number} index */
  go(index) {
    this.index = index;
    this.panel.decode(index, this.values);
    this.find();
  }

  /** Finds the moves of `values`. */
  find() {
    const { rules, values, enabled } = this, record = this.record = this.records.of(values);
    this.blocked.length = 0;
    this.findEntries();
    for (let m = 0; m < rules.moves.length; m++) {
      const move = rules.moves[m];
      const when = this.when[m] = move.when(values, record.truth) ? 1 : 0;
      const may = this.may[m] = move.may(values, record.truth) ? 1 : 0;
      let able = NONE;
      if (values[move.variable] === move.from) able = record.shorted ? this.inShort(move, when, may) : when ? CERTAIN : may ? OPTIONAL : NONE;
      if (able !== NONE && !this.allowed(move.variable, move.to)) {
        if (able === CERTAIN && move.armature) this.blocked.push(move.variable);
        able = NONE;
      }
      enabled[m] = able;
    }
  }

  /** A device that carries short current opens for certain, unless no supply there can deliver the short. */
  findEntries() {
    const { rules, record, values, enabled } = this;
    this.cleared = false;
    for (let k = 0; k < rules.entries.length; k++) {
      const { variable, to } = rules.entries[k], strength = record.shorted ? record.entries[k] : 0;
      let able = strength === 0 || values[variable] === to || !this.allowed(variable, to) ? NONE : strength === 2 ? CERTAIN : OPTIONAL;
      enabled[rules.firstEntry + k] = able;
      if (able === CERTAIN) this.cleared = true;
    }
  }

  /**
   * In a shorted state. A drop that losing the shorted supplies would cause, or leave open, is optional. An armature fed from them
   * does not pull; with no device that opens for certain it may or may not. Others move as ever.
   */
  inShort(move, when, may) {
    const { values, record } = this;
    if (move.drop && !when) return may || move.when(values, record.lost) || move.may(values, record.lost) ? OPTIONAL : NONE;
    if (!move.pull) return when ? CERTAIN : may ? OPTIONAL : NONE;
    if (!when && !may) return NONE;
    const whenLost = move.when(values, record.lost);
    if (when && whenLost) return CERTAIN;
    return !this.cleared || whenLost || move.may(values, record.lost) ? OPTIONAL : NONE;
  }

  /** Whether the result of setting a variable satisfies every constraint. */
  allowed(variable, to) {
    const { values, panel } = this;
    if (panel.constraints.length === 0) return true;
    const before = values[variable];
    values[variable] = to;
    let holds = true;
    for (const c of panel.constraints) if (!c.holds(values)) { holds = false; break; }
    values[variable] = before;
    return holds;
  }

  /** The index a move or entry leads to. @param {number} code */
  target(code) {
    const { rules } = this;
    if (code < rules.firstEntry) return this.index + rules.moves[code].step;
    const { variable, to } = rules.entries[code - rules.firstEntry];
    return this.index + (to - this.values[variable]) * this.panel.variables[variable].stride;
  }
}
