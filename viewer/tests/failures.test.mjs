// Failures by hand: two contacts in series to a load, each of which can fail shut.

import { test } from 'node:test';
import assert from 'node:assert/strict';
import { answer } from '../answer.mjs';

const failure = (name, when) => ({
  name, device: name, kind: 'failure', class: 'contact', values: ['no', 'yes'], rest: 'no',
  moves: [{ from: 'no', to: 'yes', by: 'failure', when }],
});
const control = name => ({
  name, device: name, kind: 'position', values: ['open', 'shut'], rest: 'open',
  moves: [{ from: 'open', to: 'shut', by: 'operator', when: true }, { from: 'shut', to: 'open', by: 'operator', when: true }],
});
const contact = (name, a, b) => ({
  id: `${name}.1-2`, device: name, pole: 1, power: true, a, b, type: 'contact',
  closed: { any: [{ var: name, is: 'shut' }, { var: `${name}.weld`, is: 'yes' }] },
});

/** Line, S1, S2, lamp, neutral; each contact can weld while it is shut. */
const panel = () => ({
  schema: 1, panel: 'P', rules: 'IEC', frequency: 50, earth: 'e', nets: ['e', 'l', 'm', 'n', 'o'],
  supplies: [{
    name: 'G', kind: 'ac', present: true, group: 'G', elv: false, limited: false, store: null,
    conductors: [
      { name: 'L', net: 'l', volts: 230, degrees: 0, polarity: 'ac', present: true },
      { name: 'N', net: 'n', volts: 0, degrees: 0, polarity: 'ac', present: true },
    ],
  }],
  converters: [], couplings: [],
  variables: [
    control('S1'), failure('S1.weld', { closed: 'S1.1-2' }), control('S2'), failure('S2.weld', { closed: 'S2.1-2' }),
  ],
  powered: [],
  elements: [
    contact('S1', 'l', 'm'), contact('S2', 'm', 'o'),
    { id: 'P1.1-2', device: 'P1', pole: 0, power: true, a: 'o', b: 'n', type: 'load', closed: true },
  ],
  devices: [], loads: [{ name: 'P1', elements: ['P1.1-2'], modes: [{ name: 'lit', feed: ['o', 'n'], joined: [], apart: [] }] }],
  constraints: [], points: {}, intents: [], assumed: [],
});

const lit = { runs: 'P1', turns: 'any' };
const at = (s1, s2) => ({ all: [lit, { var: 'S1', is: s1 }, { var: 'S2', is: s2 }] });
const sets = (condition, failures) => answer({ op: 'failures', netlist: panel(), condition, failures }).sets.map(s => [...s].sort());

test('nothing need fail for what happens anyway', () => assert.deepEqual(sets(at('shut', 'shut'), 2), [[]]));
test('one weld lights the lamp with one contact open', () => assert.deepEqual(sets(at('open', 'shut'), 2), [['S1.weld']]));
test('both must weld to light it with both open', () => assert.deepEqual(sets(at('open', 'open'), 2), [['S1.weld', 'S2.weld']]));
test('a budget of one finds no pair', () => assert.deepEqual(sets(at('open', 'open'), 1), []));

test('a weld is seen when the other contact is shut', () =>
  assert.deepEqual(answer({ op: 'revealed', netlist: panel() }), { 'S1.weld': 'revealed', 'S2.weld': 'revealed' }));

test('a weld next to a contact that is never opened alone stays hidden', () => {
  const netlist = panel();
  // S2 follows S1 at once, so that S1 is never open while S2 is shut.
  netlist.variables[2] = {
    ...control('S2'), kind: 'cell',
    moves: [
      { from: 'open', to: 'shut', by: 'settle', when: { var: 'S1', is: 'shut' } },
      { from: 'shut', to: 'open', by: 'settle', when: { var: 'S1', is: 'open' } },
    ],
  };
  assert.deepEqual(answer({ op: 'revealed', netlist }), { 'S1.weld': 'hidden', 'S2.weld': 'hidden' });
});

test('a failure whose occasion never comes is impossible', () => {
  const netlist = panel();
  netlist.variables[1].moves[0].when = false;
  assert.equal(answer({ op: 'revealed', netlist })['S1.weld'], 'impossible');
});
