// Small netlists written by hand, and ways to ask them.

import { readNetlist } from '../netlist.mjs';
import { Rules, Records } from '../moves.mjs';
import { Space } from '../explore.mjs';
import { liveAt, judge, isolatingSets } from '../questions.mjs';
import { table } from '../table.mjs';
import { hasBit } from '../bits.mjs';

export const is = (name, value) => ({ var: name, is: value });
export const not = guard => ({ not: guard });
export const all = (...guards) => ({ all: guards });
export const any = (...guards) => ({ any: guards });
export const energised = (a, b, grade = 'solid', volts = [0, null]) => ({ energised: [a, b], grade, volts });

/** Conductors as "net volts degrees"; a dc one as "net volts plus". */
export function supply(name, conductors, more = {}) {
  return {
    name, kind: 'ac', present: true, group: `g.${name}`, elv: false, limited: false, store: null, ohms: [0, 0], ...more,
    conductors: conductors.map(text => {
      const [net, volts, angle] = text.split(' '), direct = angle === 'plus' || angle === 'minus';
      return { name: net, net, volts: Number(volts), degrees: direct ? 0 : Number(angle ?? 0), polarity: direct ? angle : 'ac', present: true };
    }),
  };
}

export const mains = (more = {}) => supply('MAINS', ['L1 277 0', 'L2 277 -120', 'L3 277 120', 'N 0 0'], { group: 'g1', ...more });

/** "id a b type", closed as the second item: always when missing. */
export function element(text, closed = true, more = {}) {
  const [id, a, b, type] = text.split(' ');
  return { id, device: id.split('.')[0], pole: 1, power: true, a, b, type: type ?? 'contact', closed, ...more };
}

/** A switch worked by the operator. */
export const hand = (name, more = {}) => ({
  name, device: name, kind: 'position', values: ['open', 'closed'], rest: 'open',
  moves: [{ from: 'open', to: 'closed', by: 'operator', when: true }, { from: 'closed', to: 'open', by: 'operator', when: true }], ...more,
});

/** A control that springs back. */
export const button = (name, more = {}) => ({
  name, device: name, kind: 'position', values: ['free', 'pressed'], rest: 'free', momentary: true,
  moves: [{ from: 'free', to: 'pressed', by: 'operator', when: true }, { from: 'pressed', to: 'free', by: 'operator', when: true }], ...more,
});

/** A contactor or relay: certain at its voltage on both sides solidly, certain to drop without any. */
export const relay = (name, a, b, more = {}) => ({
  name, device: name, kind: 'armature', values: ['out', 'in'], rest: 'out', coil: [a, b],
  moves: [
    { from: 'out', to: 'in', by: 'settle', when: energised(a, b), may: energised(a, b, 'loose') },
    { from: 'in', to: 'out', by: 'settle', when: not(energised(a, b, 'loose')), may: not(energised(a, b)) },
  ], ...more,
});

/** A variable that only failures move. */
export const failure = (name, cls, when = true) => ({
  name, device: name, kind: 'failure', class: cls, values: ['no', 'yes'], rest: 'no', moves: [{ from: 'no', to: 'yes', by: 'failure', when }],
});

/** @param {any} given nets are gathered from what is named; the parts are copied, so a test may change them */
export function netlist(given) {
  const parts = structuredClone(given);
  const nets = new Set(['PE']), supplies = [...(parts.supplies ?? []), ...(parts.converters ?? []).map(c => c.output)];
  for (const s of supplies) for (const c of s.conductors) nets.add(c.net);
  for (const e of parts.elements ?? []) nets.add(e.a).add(e.b);
  for (const c of [...(parts.converters ?? []), ...(parts.couplings ?? [])]) for (const w of c.windings) for (const n of w) nets.add(n);
  return {
    schema: 1, panel: 'P1', rules: 'NEC', frequency: 60, earth: 'PE', nets: [...nets], supplies: [], converters: [], couplings: [], variables: [],
    powered: [], elements: [], devices: [], loads: [], constraints: [], points: {}, intents: [], ...parts,
  };
}

/** Truth of an expression in a state. */
export function truth(json, expression, state = {}) {
  const panel = readNetlist(json), rules = new Rules(panel, [expression]), values = panel.restValues();
  for (const [name, value] of Object.entries(state)) { const [v, i] = panel.valueOf(name, value); values[v] = i; }
  return rules.questions[0](values, new Records(rules, false).of(values).truth);
}

export const reachOf = (json, net, state = {}, readings = {}) => liveAt(readNetlist(json, readings), state).nets[net].reach;
export const isLive = (json, net, state = {}) => liveAt(readNetlist(json), state).nets[net].live;
export const supplyOf = (json, net, state = {}) => liveAt(readNetlist(json), state).nets[net];
export const verdict = (json, intent) => judge(readNetlist(json), intent);
export const isolate = (json, target, isolators) => isolatingSets(readNetlist(json), { target, isolators });
export const tableOf = (json, options) => table(readNetlist(json), options);
export const spaceOf = json => new Space(new Rules(readNetlist(json)));

/** Index of a state; variables not named stand at rest. */
export function indexOf(json, state) {
  const panel = readNetlist(json), values = panel.restValues();
  for (const [name, value] of Object.entries(state)) { const [v, i] = panel.valueOf(name, value); values[v] = i; }
  return panel.encode(values);
}

/** Whether a state is in a hex column. */
export const inColumn = (json, column, state) => hasBit(Uint8Array.from(column.match(/../g) ?? [], h => parseInt(h, 16)), indexOf(json, state));
