import { test } from 'node:test';
import assert from 'node:assert/strict';
import {
  netlist, supply, mains, element, hand, button, relay, failure, is, not, all, any, energised, tableOf, spaceOf, indexOf, inColumn, verdict,
} from './build.mjs';

const single = (more = {}) => supply('MAINS', ['L 230 0', 'N 0 0'], more);
const bond = element('bond N PE conductor');
const position = (name, values, rest, moves, more = {}) => ({ name, device: name, kind: 'position', values, rest, moves, ...more });
const by = (from, to, who, more = {}) => ({ from, to, by: who, when: true, ...more });

test('an armature pulls, holds and drops; passing states are reachable and not settled', () => {
  const json = netlist({ supplies: [single()], variables: [hand('S'), relay('K', 'X', 'N')], elements: [bond, element('S L X', is('S', 'closed')), element('K.coil X N load')] });
  const t = tableOf(json);
  assert.equal(t.counts.reachable, 4);
  assert.equal(t.counts.settled, 2);
  assert.equal(inColumn(json, t.settled, { S: 'closed', K: 'in' }), true);
  assert.equal(inColumn(json, t.settled, { S: 'closed' }), false);
  assert.deepEqual(t.rest, [0]);
});

test('inputs do not change while armatures move', () => {
  // Two relays in a chain: between S and K2 there is a passing state from which S cannot be opened.
  const json = netlist({
    supplies: [single()], variables: [hand('S'), relay('K1', 'X', 'N'), relay('K2', 'Y', 'N')],
    elements: [bond, element('S L X', is('S', 'closed')), element('K1.coil X N load'), element('K1.1 L Y', is('K1', 'in')), element('K2.coil Y N load')],
  });
  const t = tableOf(json);
  assert.equal(inColumn(json, t.reachable, { S: 'open', K1: 'out', K2: 'in' }), true);
  assert.equal(inColumn(json, t.reachable, { S: 'open', K1: 'in' }), false);
});

test('a coil in series with a load is uncertain: its moves are optional', () => {
  const json = netlist({
    supplies: [single()], variables: [hand('S'), relay('K', 'A', 'N')], elements: [bond, element('S L X', is('S', 'closed')), element('H X A load'), element('K.coil A N load')],
  });
  const t = tableOf(json), [pull, drop] = t.moves[1];
  assert.equal(inColumn(json, pull.certain, { S: 'closed' }), false);
  assert.equal(inColumn(json, pull.optional, { S: 'closed' }), true);
  assert.equal(inColumn(json, drop.optional, { S: 'closed', K: 'in' }), true);
  assert.equal(inColumn(json, drop.certain, { K: 'in' }), true);
  // Settled is judged on certain moves alone, yet both are reachable.
  assert.equal(inColumn(json, t.settled, { S: 'closed' }), true);
  assert.equal(inColumn(json, t.reachable, { S: 'closed', K: 'in' }), true);
  assert.equal(t.counts.race, 0);
});

test('two relays that exclude each other race', () => {
  const json = netlist({
    supplies: [single()], variables: [hand('S'), relay('K1', 'A', 'N'), relay('K2', 'B', 'N')],
    elements: [
      bond, element('S L X', is('S', 'closed')), element('K2.n X A', is('K2', 'out')), element('K1.n X B', is('K1', 'out')),
      element('K1.coil A N load'), element('K2.coil B N load'),
    ],
  });
  const t = tableOf(json);
  assert.equal(inColumn(json, t.race, { S: 'closed' }), true);
  assert.equal(inColumn(json, t.race, { S: 'closed', K1: 'in' }), false);
  assert.equal(inColumn(json, t.race, {}), false);
  for (const state of [{ S: 'closed', K1: 'in' }, { S: 'closed', K2: 'in' }]) assert.equal(inColumn(json, t.steady, state), true);
  // Both in: each has lost its voltage; both may drop one after the other, back into the race.
  assert.equal(inColumn(json, t.race, { S: 'closed', K1: 'in', K2: 'in' }), true);
  // Powered goes to the first declared.
  assert.equal(tableOf({ ...json, powered: ['S=closed'] }).powered, indexOf(json, { S: 'closed', K1: 'in' }));
});

test('a coil through its own resting contact chatters', () => {
  const json = netlist({
    supplies: [single()], variables: [hand('S'), relay('K', 'A', 'N')],
    elements: [bond, element('S L X', is('S', 'closed')), element('K.n X A', is('K', 'out')), element('K.coil A N load')],
  });
  const t = tableOf(json);
  for (const K of ['out', 'in']) assert.equal(inColumn(json, t.chatter, { S: 'closed', K }), true);
  assert.equal(t.counts.race, 0);
  // Inputs may change in any state of the cycle.
  assert.equal(inColumn(json, t.reachable, { S: 'open', K: 'in' }), true);
});

test('an armature that wants what a constraint forbids is blocked, and that is not wanting', () => {
  const json = netlist({
    supplies: [single()], variables: [hand('S1'), hand('S2'), relay('K1', 'A', 'N'), relay('K2', 'B', 'N')],
    elements: [bond, element('S1 L A', is('S1', 'closed')), element('S2 L B', is('S2', 'closed')), element('K1.coil A N load'), element('K2.coil B N load')],
    constraints: [{ name: 'lock', kind: 'mechanical', holds: not(all(is('K1', 'in'), is('K2', 'in'))) }],
  });
  const t = tableOf(json), state = { S1: 'closed', S2: 'closed', K1: 'in' };
  assert.equal(inColumn(json, t.blocked, state), true);
  assert.equal(inColumn(json, t.steady, state), true);
  assert.equal(inColumn(json, t.blocked, { S1: 'closed', K1: 'in' }), false);
  assert.equal(inColumn(json, t.reachable, { ...state, K2: 'in' }), false);
  assert.equal(inColumn(json, t.race, { S1: 'closed', S2: 'closed' }), true);
});

const reversing = (interlocked, mechanical = false) => netlist({
  supplies: [mains()], variables: [position('S', ['F', 'R'], 'F', [by('F', 'R', 'operator'), by('R', 'F', 'operator')]), relay('KF', 'A', 'N'), relay('KR', 'B', 'N')],
  elements: [
    bond, element('S.1 L1 P', is('S', 'F')), element('S.2 L1 Q', is('S', 'R')),
    element('KR.n P A', interlocked ? is('KR', 'out') : true), element('KF.n Q B', interlocked ? is('KF', 'out') : true),
    element('KF.coil A N load'), element('KR.coil B N load'),
    ...[1, 2, 3].map(i => element(`KF.${i} L${i} T${i}`, is('KF', 'in'))), ...[1, 2, 3].map(i => element(`KR.${i} L${i} T${4 - i}`, is('KR', 'in'))),
  ],
  constraints: mechanical ? [{ name: 'lock', kind: 'mechanical', holds: not(all(is('KF', 'in'), is('KR', 'in'))) }] : [],
});

test('reversing contactors overlap in passing without an interlock, not with one', () => {
  const shorted = { form: 'never', when: { short: 'MAINS' } };
  const bare = verdict(reversing(false), shorted);
  assert.equal(bare.verdict, 'refuted');
  assert.deepEqual(bare.story.moves.map(m => `${m.variable} ${m.to} ${m.by}`), ['S R operator', 'KR in settle']);
  assert.equal(verdict(reversing(false), { ...shorted, settled: true }).verdict, 'proved');
  assert.equal(verdict(reversing(true), shorted).verdict, 'proved');
  assert.equal(verdict(reversing(false, true), shorted).verdict, 'proved');
});

test('a selector breaks before it makes: a value between, left by settling', () => {
  const values = ['MAN', 'MAN>AUTO', 'AUTO', 'AUTO>MAN'];
  const json = netlist({
    supplies: [single()], elements: [element('S.1 L X', is('S', 'MAN')), element('S.2 L Y', is('S', 'AUTO'))],
    variables: [position('S', values, 'MAN', [by('MAN', 'MAN>AUTO', 'operator'), by('MAN>AUTO', 'AUTO', 'settle'), by('AUTO', 'AUTO>MAN', 'operator'), by('AUTO>MAN', 'MAN', 'settle')])],
    powered: ['S=AUTO'],
  });
  const t = tableOf(json);
  assert.equal(t.counts.reachable, 4);
  assert.equal(t.counts.settled, 2);
  assert.equal(t.powered, indexOf(json, { S: 'AUTO' }));
  assert.equal(verdict(json, { form: 'never', when: all({ live: 'X' }, { live: 'Y' }) }).verdict, 'proved');
});

// ---- short circuits ----

// The short is between two phases; the coil hangs on the third, so the short does not take its voltage away by itself.
const fused = (more = {}) => netlist({
  supplies: [mains()],
  variables: [
    hand('S'), hand('B'), position('F', ['whole', 'blown'], 'whole', [by('blown', 'whole', 'operator')]), relay('K', 'C', 'N'),
  ],
  elements: [bond, element('F L1 A thermal', is('F', 'whole')), element('S A L2', is('S', 'closed')), element('B L3 C', is('B', 'closed')), element('K.coil C N load')],
  devices: [{ tag: 'F', opensOnShort: [{ variable: 'F', to: 'blown', elements: ['F'] }] }], ...more,
});

test('a fuse clears a short; the short lasts when that is left out', () => {
  const json = fused(), t = tableOf(json), shorted = { S: 'closed' };
  assert.equal(inColumn(json, t.shortAny, shorted), true);
  assert.equal(inColumn(json, t.shortMoves[0].certain, shorted), true);
  assert.equal(inColumn(json, t.shortLasts, shorted), true);
  assert.equal(inColumn(json, t.settled, { S: 'closed', F: 'blown' }), true);
  assert.equal(inColumn(json, t.shortAny, { S: 'closed', F: 'blown' }), false);
  assert.equal(verdict(json, { form: 'never', when: { short: 'MAINS' }, settled: true }).verdict, 'proved');
  assert.equal(verdict(json, { form: 'never', when: { short: 'MAINS' } }).verdict, 'refuted');
});

test('while a device is about to open, armatures fed from the short do not pull and held ones may drop', () => {
  const json = fused(), t = tableOf(json), [pull, drop] = t.moves[3], shorted = { S: 'closed', B: 'closed' };
  assert.equal(inColumn(json, pull.certain, shorted), false);
  assert.equal(inColumn(json, pull.optional, shorted), false);
  assert.equal(inColumn(json, drop.certain, { ...shorted, K: 'in' }), false);
  assert.equal(inColumn(json, drop.optional, { ...shorted, K: 'in' }), true);
  assert.equal(inColumn(json, drop.optional, { B: 'closed', K: 'in' }), false);
  assert.equal(inColumn(json, pull.certain, { ...shorted, F: 'blown' }), true);
  // The plain conditions do not know of that.
  assert.equal(inColumn(json, t.raw[3][0].when, shorted), true);
});

test('with no device in the way pulls are optional', () => {
  const json = fused({ devices: [] }), t = tableOf(json), [pull] = t.moves[3], shorted = { S: 'closed', B: 'closed' };
  assert.equal(inColumn(json, pull.certain, shorted), false);
  assert.equal(inColumn(json, pull.optional, shorted), true);
  assert.equal(inColumn(json, t.settled, shorted), true);
  assert.equal(inColumn(json, t.shortLasts, shorted), true);
});

test('an armature that another supply holds moves as ever in a short', () => {
  const json = netlist({
    supplies: [single(), supply('DC', ['P 24 plus', 'M 0 minus'])], variables: [hand('S'), hand('B'), position('F', ['whole', 'blown'], 'whole', []), relay('K', 'C', 'M')],
    elements: [element('F L A thermal', is('F', 'whole')), element('S A N', is('S', 'closed')), element('B P C', is('B', 'closed')), element('K.coil C M load')],
    devices: [{ tag: 'F', opensOnShort: [{ variable: 'F', to: 'blown', elements: ['F'] }] }],
  });
  const t = tableOf(json), shorted = { S: 'closed', B: 'closed' };
  assert.equal(inColumn(json, t.moves[3][0].certain, shorted), true);
  assert.equal(inColumn(json, t.moves[3][1].optional, { ...shorted, K: 'in' }), false);
  assert.equal(inColumn(json, t.shortMoves[0].certain, shorted), true);
});

test('losing a shorted supply takes its converters along', () => {
  const converter = { name: 'PS', type: 'rectifier', inputs: ['L', 'N'], windings: [], when: energised('L3', 'N'), output: supply('PS', ['P 24 plus', 'M 0 minus'], { kind: 'dc' }) };
  const json = netlist({
    supplies: [mains()], converters: [converter], variables: [hand('S'), position('F', ['whole', 'blown'], 'whole', []), relay('K', 'P', 'M')],
    elements: [element('F L1 A thermal', is('F', 'whole')), element('S A L2', is('S', 'closed')), element('K.coil P M load')],
    devices: [{ tag: 'F', opensOnShort: [{ variable: 'F', to: 'blown', elements: ['F'] }] }],
  });
  const t = tableOf(json);
  assert.equal(inColumn(json, t.moves[2][0].certain, {}), true);
  assert.equal(inColumn(json, t.moves[2][0].certain, { S: 'closed' }), false);
  assert.equal(inColumn(json, t.moves[2][1].optional, { S: 'closed', K: 'in' }), true);
});

test('any one of several devices may open first, which is no race of settle moves', () => {
  const fuse = name => position(name, ['whole', 'blown'], 'whole', []);
  const json = netlist({
    supplies: [single()], variables: [hand('S'), fuse('F1'), fuse('F2')],
    elements: [element('F1 L A thermal', is('F1', 'whole')), element('F2 A B thermal', is('F2', 'whole')), element('S B N', is('S', 'closed'))],
    devices: ['F1', 'F2'].map(tag => ({ tag, opensOnShort: [{ variable: tag, to: 'blown', elements: [tag] }] })),
  });
  const t = tableOf(json);
  for (const state of [{ F1: 'blown' }, { F2: 'blown' }]) assert.equal(inColumn(json, t.reachable, { S: 'closed', ...state }), true);
  assert.equal(inColumn(json, t.reachable, { S: 'closed', F1: 'blown', F2: 'blown' }), false);
  assert.equal(t.counts.race, 0);
});

// ---- delays, trips, conditions, failures ----

const timer = (name, a, b) => ({
  name, device: name, kind: 'timer', values: ['waiting', 'elapsed'], rest: 'waiting',
  moves: [by('waiting', 'elapsed', 'delay', { when: energised(a, b) }), by('elapsed', 'waiting', 'settle', { when: not(energised(a, b)) })],
});

test('a delay elapses from settled states and is undone at once; quiet waits for it', () => {
  const json = netlist({ supplies: [single()], variables: [hand('S'), timer('T', 'X', 'N')], elements: [element('S L X', is('S', 'closed')), element('H X N load')] });
  const space = spaceOf(json), state = s => indexOf(json, s);
  assert.equal(space.settled(state({ S: 'closed' })), true);
  assert.equal(space.quiet(state({ S: 'closed' })), false);
  assert.equal(space.quiet(state({ S: 'closed', T: 'elapsed' })), true);
  assert.equal(space.settled(state({ T: 'elapsed' })), false);
  assert.equal(tableOf(json).counts.reachable, 4);
});

test('a trip latches on current and is reset by hand', () => {
  const json = netlist({
    supplies: [single()], elements: [element('F L X thermal'), element('S X Y', is('S', 'closed')), element('H Y N load')],
    variables: [hand('S'), { name: 'F', device: 'F', kind: 'trip', values: ['ready', 'tripped'], rest: 'ready', moves: [by('ready', 'tripped', 'trip', { when: { carries: 'F' } }), by('tripped', 'ready', 'operator')] }],
  });
  const t = tableOf(json);
  assert.equal(inColumn(json, t.moves[1][0].certain, { S: 'closed' }), true);
  assert.equal(inColumn(json, t.moves[1][0].certain, {}), false);
  assert.equal(inColumn(json, t.settled, { S: 'closed' }), true);
  assert.equal(inColumn(json, t.reachable, { F: 'tripped' }), true);
});

test('failures stay within the budget; a weld may come in passing, a broken wire from settled states only', () => {
  const json = netlist({
    supplies: [single()], variables: [hand('S'), relay('K', 'X', 'N'), failure('W', 'contact', { closed: 'K.1' }), failure('C', 'wiring')],
    elements: [
      bond, element('S L X', all(is('S', 'closed'), is('C', 'no'))), element('K.coil X N load'), element('K.1 L Y', any(is('K', 'in'), is('W', 'yes'))), element('H Y N load'),
    ],
  });
  assert.equal(tableOf(json).counts.reachable, 4);
  const one = tableOf(json, { failures: 1 }), two = tableOf(json, { failures: 2 });
  // Welded while K was still in, though S is already open.
  assert.equal(inColumn(json, one.reachable, { S: 'open', K: 'in', W: 'yes' }), true);
  assert.equal(inColumn(json, one.reachable, { S: 'closed', K: 'in', C: 'yes' }), true);
  assert.equal(inColumn(json, one.reachable, { W: 'yes', C: 'yes' }), false);
  assert.equal(inColumn(json, two.reachable, { W: 'yes', C: 'yes' }), true);
  const space = spaceOf(json), from = indexOf(json, { S: 'closed' }), taken = [];
  space.moves(from, 1, (code, to) => taken.push(to));
  assert.equal(taken.includes(indexOf(json, { S: 'closed', C: 'yes' })), false);
});

test('rest settles; powered follows the list, leaving what a constraint forbids and what stands by', () => {
  const json = netlist({
    supplies: [single()],
    variables: [hand('Q1'), hand('Q2'), hand('Q3', { standby: true }), { ...relay('K', 'L', 'N'), rest: 'out' }], elements: [bond, element('K.coil L N load')],
    constraints: [{ name: 'key', kind: 'key', holds: not(all(is('Q1', 'closed'), is('Q2', 'closed'))) }], powered: ['Q1=closed', 'Q2=closed', 'Q3=closed'],
  });
  const t = tableOf(json);
  assert.deepEqual(t.rest, [indexOf(json, { K: 'in' })]);
  assert.equal(t.powered, indexOf(json, { Q1: 'closed', K: 'in' }));
  assert.equal(inColumn(json, t.reachable, {}), false);
  assert.equal(t.restSatisfies, true);
});

test('a button that is held and one that springs back', () => {
  const json = netlist({
    supplies: [single()], variables: [button('S1'), button('S0'), relay('K', 'X', 'N')],
    elements: [bond, element('S0 L A', is('S0', 'free')), element('S1 A X', is('S1', 'pressed')), element('K.1 A X', is('K', 'in')), element('K.coil X N load')],
  });
  const t = tableOf(json);
  assert.equal(inColumn(json, t.steady, { K: 'in' }), true);
  assert.equal(inColumn(json, t.steady, {}), true);
  assert.equal(inColumn(json, t.reachable, { K: 'in' }), true);
});
