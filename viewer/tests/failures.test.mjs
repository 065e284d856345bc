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

test('the same weld is seen when the device that follows has an indicator', () => {
  const netlist = panel();
  // K9 is in while the contact of S1 feeds it, and its own contact carries no load of the power circuit.
  netlist.variables[2] = {
    ...control('K9'), kind: 'cell',
    moves: [
      { from: 'open', to: 'shut', by: 'settle', when: { live: 'm' } },
      { from: 'shut', to: 'open', by: 'settle', when: { not: { live: 'm' } } },
    ],
  };
  netlist.variables.pop();
  netlist.elements[1] = { ...contact('S2', 'm', 'o'), closed: false };
  assert.deepEqual(answer({ op: 'revealed', netlist }), { 'S1.weld': 'revealed' });
  netlist.elements[1].closed = { all: [{ var: 'K9', is: 'shut' }, false] };
  assert.deepEqual(answer({ op: 'revealed', netlist }), { 'S1.weld': 'hidden' });
});

test('a failure whose occasion never comes is impossible', () => {
  const netlist = panel();
  netlist.variables[1].moves[0].when = false;
  assert.equal(answer({ op: 'revealed', netlist })['S1.weld'], 'impossible');
});

// The pressure tank of NUREG-0492, Fault Tree Handbook (US NRC, 1981), its electrical part: K1 seals in behind the
// timer's contact, K2 feeds the pump and the timer R counts while the pressure switch S is shut. Published cut sets from memory.

const relay = (name, a, kind = 'armature') => [
  { name, device: name, kind, values: ['out', 'in'], rest: 'out', moves: [
    { from: 'out', to: 'in', by: kind === 'timer' ? 'delay' : 'settle', when: { energised: [a, 'n'] } },
    { from: 'in', to: 'out', by: 'settle', when: { not: { energised: [a, 'n'] } } },
  ] },
];
const two = (name, kind, by, values) => ({
  name, device: name, kind, values, rest: values[0],
  moves: [{ from: values[0], to: values[1], by, when: true }, { from: values[1], to: values[0], by, when: true }],
});
const shutBy = (id, name, a, b, value) => ({
  id, device: name, pole: 1, power: id === 'K2.p', a, b, type: 'contact',
  closed: { any: [{ var: name, is: value }, { var: `${name}.shut`, is: 'yes' }] },
});
const coil = (id, a) => ({ id, device: id, pole: 0, power: false, a, b: 'n', type: 'load', closed: true });

function tank() {
  const failing = [['S1', 'S1.s'], ['K1', 'K1.h'], ['K2', 'K2.p'], ['S', 'S.b'], ['R', 'R.b']];
  return {
    ...panel(), nets: ['e', 'l', 'n', 'c1', 'c2', 'c3', 'm'],
    variables: [
      two('S1', 'position', 'operator', ['released', 'pressed']), two('S', 'process', 'process', ['low', 'full']),
      ...relay('K1', 'c2'), ...relay('K2', 'c3'), ...relay('R', 'c3', 'timer'),
      ...failing.map(([name, id]) => ({ ...failure(`${name}.shut`, { closed: id }), device: name })),
    ],
    elements: [
      shutBy('S1.s', 'S1', 'l', 'c1', 'pressed'), shutBy('K1.h', 'K1', 'l', 'c1', 'in'), shutBy('R.b', 'R', 'c1', 'c2', 'out'),
      shutBy('S.b', 'S', 'c1', 'c3', 'low'), shutBy('K2.p', 'K2', 'l', 'm', 'in'),
      coil('K1.c', 'c2'), coil('K2.c', 'c3'), coil('R.c', 'c3'),
      { id: 'P1.1-2', device: 'P1', pole: 0, power: true, a: 'm', b: 'n', type: 'load', closed: true },
    ],
    loads: [{ name: 'P1', elements: ['P1.1-2'], modes: [{ name: 'on', feed: ['m', 'n'], joined: [], apart: [] }] }],
  };
}

const full = [lit, { var: 'S', is: 'full' }, { quiet: true }];
const ask = condition => answer({ op: 'failures', netlist: tank(), condition: { all: condition }, failures: 5 });
const named = told => told.sets.map(s => [...s].sort().join(' ')).sort();

test('the pressure tank has its published cut sets and no other', () => assert.deepEqual(
  named(ask([...full, { var: 'S1', is: 'released' }])),
  ['K1.shut S.shut', 'K2.shut', 'R.shut S.shut', 'S.shut S1.shut'],
));
test('with the button held the pressure switch alone would do', () =>
  assert.deepEqual(named(ask(full)), ['K2.shut', 'S.shut']));

test('a shortest story: push, K1 and K2 pull in, K2 fails shut, the tank fills, K2 drops, the button is let go', () => {
  const told = ask([...full, { var: 'S1', is: 'released' }]), story = told.stories[told.sets.findIndex(s => s.join() === 'K2.shut')];
  const made = story.filter(m => m.by !== 'settle').map(m => m.by).sort();
  assert.deepEqual(made, ['failure', 'operator', 'operator', 'process']);
  assert.equal(story.filter(m => m.variable === 'K2.shut').length, 1);
});
