import { test } from 'node:test';
import assert from 'node:assert/strict';
import { netlist, supply, mains, element, hand, is, energised, truth, tableOf, inColumn } from './build.mjs';

const single = (more = {}) => supply('MAINS', ['L 230 0', 'N 0 0'], more);
const short = name => ({ short: name });

test('two conductors of different voltage in one component are a short', () => {
  const json = netlist({ supplies: [single()], variables: [hand('S')], elements: [element('S L N contact', is('S', 'closed'))] });
  assert.equal(truth(json, short('MAINS')), false);
  assert.equal(truth(json, short('MAINS'), { S: 'closed' }), true);
});

test('a load or a series element between them is no short, an earth fault on a bonded system is', () => {
  const calm = netlist({ supplies: [single()], elements: [element('H L N load'), element('R L N series')] });
  assert.equal(truth(calm, short('MAINS')), false);
  const fault = netlist({ supplies: [single()], elements: [element('bond N PE conductor'), element('E L PE fault')] });
  assert.equal(truth(fault, short('MAINS')), true);
  const unearthed = netlist({ supplies: [single()], elements: [element('E L PE fault')] });
  assert.equal(truth(unearthed, short('MAINS')), false);
});

test('one common point between two supplies is no short, two between unsynchronised ones are', () => {
  const parts = { supplies: [supply('A', ['A1 120 0', 'A2 0 0']), supply('B', ['B1 120 0', 'B2 0 0'])], variables: [hand('J1'), hand('J2')] };
  const json = netlist({ ...parts, elements: [element('J1 A1 B1 contact', is('J1', 'closed')), element('J2 A2 B2 contact', is('J2', 'closed'))] });
  assert.equal(truth(json, short('A'), { J1: 'closed' }), false);
  assert.equal(truth(json, short('A'), { J1: 'closed', J2: 'closed' }), true);
  assert.equal(truth(json, short('B'), { J1: 'closed', J2: 'closed' }), true);
});

test('synchronised supplies joined twice are a short only when their voltages differ', () => {
  const pair = volts => netlist({
    supplies: [supply('A', ['A1 120 0', 'A2 0 0'], { group: 'g' }), supply('B', [`B1 ${volts} 0`, 'B2 0 0'], { group: 'g' })],
    elements: [element('J1 A1 B1 contact'), element('J2 A2 B2 contact')],
  });
  assert.equal(truth(pair(120), short('A')), false);
  assert.equal(truth(pair(115), short('A')), true);
  assert.equal(truth(pair(115), short('B')), true);
});

test('a cycle of three supplies', () => {
  const ring = (volts, group) => netlist({
    supplies: [supply('A', ['A1 0 0', 'A2 100 0'], { group: 'g' }), supply('B', ['B1 0 0', 'B2 100 0'], { group: 'g' }), supply('C', [`C1 ${volts} 0`, 'C2 0 0'], { group })],
    elements: [element('J1 A2 B1 contact'), element('J2 B2 C1 contact'), element('J3 C2 A1 contact')],
  });
  assert.equal(truth(ring(150, 'g'), short('A')), true);
  assert.equal(truth(ring(200, 'g'), short('A')), false);
  for (const name of ['A', 'B', 'C']) assert.equal(truth(ring(200, 'h'), short(name)), true);
});

test('a short of one supply says nothing of another joined at one point', () => {
  const json = netlist({
    supplies: [supply('A', ['A1 120 0', 'A2 0 0']), supply('B', ['B1 24 plus', 'B2 0 minus'])],
    elements: [element('S A1 A2 contact'), element('J A2 B2 contact')],
  });
  assert.equal(truth(json, short('A')), true);
  assert.equal(truth(json, short('B')), false);
});

test('each supply\'s voltage between two conductors is an edge, so a parallel supply shares a short', () => {
  // B is joined to A at two phases with equal voltages; A has its third phase shorted to its neutral.
  const json = netlist({
    supplies: [mains(), supply('B', ['M2 277 -120', 'M3 277 120'], { group: 'g1' })], variables: [hand('S')],
    elements: [element('J2 L2 M2 contact'), element('J3 L3 M3 contact'), element('S L1 N contact', is('S', 'closed'))],
  });
  assert.equal(truth(json, short('B')), false);
  assert.equal(truth(json, short('MAINS'), { S: 'closed' }), true);
  assert.equal(truth(json, short('B'), { S: 'closed' }), true);
});

test('a forward diode across a supply is a short, a blocking one is not; two in a row are', () => {
  const direct = supply('DC', ['P 24 plus', 'M 0 minus'], { kind: 'dc' });
  assert.equal(truth(netlist({ supplies: [direct], elements: [element('D P M diode')] }), short('DC')), true);
  assert.equal(truth(netlist({ supplies: [direct], elements: [element('D M P diode')] }), short('DC')), false);
  assert.equal(truth(netlist({ supplies: [direct], elements: [element('D1 P X diode'), element('D2 X M diode')] }), short('DC')), true);
});

test('a store is never shorted', () => {
  const json = netlist({ supplies: [single({ store: { variable: 'V', discharge: null } })], elements: [element('S L N contact')] });
  assert.equal(truth(json, short('MAINS')), false);
});

test('only devices with an element on the short\'s own cycle are candidates', () => {
  const fuse = (name, a, b) => ({ name, device: name, kind: 'position', values: ['whole', 'blown'], rest: 'whole', moves: [{ from: 'blown', to: 'whole', by: 'operator' }] });
  const device = (tag, element_) => ({ tag, opensOnShort: [{ variable: tag, to: 'blown', elements: [element_] }] });
  const json = netlist({
    supplies: [single()], variables: [fuse('F1'), fuse('F2'), fuse('F3'), hand('S')],
    elements: [
      element('F1 L A thermal', is('F1', 'whole')), element('F2 A B thermal', is('F2', 'whole')), element('S B N contact', is('S', 'closed')),
      element('F3 A C thermal', is('F3', 'whole')), element('H C N load'),
    ],
    devices: [device('F1', 'F1'), device('F2', 'F2'), device('F3', 'F3')],
  });
  const t = tableOf(json), certain = state => t.shortMoves.map(m => inColumn(json, m.certain, state));
  assert.deepEqual(certain({}), [false, false, false]);
  assert.deepEqual(certain({ S: 'closed' }), [true, true, false]);
  assert.deepEqual(certain({ S: 'closed', F2: 'blown' }), [false, false, false]);
  assert.equal(inColumn(json, t.shortLasts, { S: 'closed' }), true);
  assert.equal(inColumn(json, t.settled, { S: 'closed' }), false);
});

test('a supply that cannot deliver its short need not operate the device', () => {
  const json = netlist({
    supplies: [single({ limited: true })], variables: [{ name: 'F1', device: 'F1', kind: 'position', values: ['whole', 'blown'], rest: 'whole', moves: [] }],
    elements: [element('F1 L A thermal', is('F1', 'whole')), element('S A N contact')],
    devices: [{ tag: 'F1', opensOnShort: [{ variable: 'F1', to: 'blown', elements: ['F1'] }] }],
  });
  const t = tableOf(json);
  assert.equal(inColumn(json, t.shortMoves[0].certain, {}), false);
  assert.equal(inColumn(json, t.shortMoves[0].optional, {}), true);
  assert.equal(inColumn(json, t.settled, {}), true);
});

// ---- carries ----

const carries = id => ({ carries: id });

test('what lies in a loop through a supply carries; a dead end does not', () => {
  const json = netlist({
    supplies: [single()], elements: [element('W L A'), element('H A N load'), element('STUB A B'), element('TIE A C'), element('TIE2 C A')],
  });
  assert.equal(truth(json, carries('W')), true);
  assert.equal(truth(json, carries('H')), true);
  assert.equal(truth(json, carries('STUB')), false);
  // A ring that hangs on one point is a loop, but not through the supply.
  assert.equal(truth(json, carries('TIE')), false);
});

test('both ends reached is not the same as carrying', () => {
  // A1 and A2 are both reached by L through loads, the lamp between them has no way back.
  const json = netlist({ supplies: [single()], elements: [element('R1 L A1 load'), element('H A1 A2 load'), element('R2 L A2 load')] });
  for (const id of ['R1', 'R2', 'H']) assert.equal(truth(json, carries(id)), false);
});

test('a balanced bridge counts as carrying', () => {
  const json = netlist({
    supplies: [single()], elements: [element('R1 L A load'), element('R2 A N load'), element('R3 L B load'), element('R4 B N load'), element('G A B load')],
  });
  assert.equal(truth(json, carries('G')), true);
});

test('a load whose ends are joined does not carry, nor do leakage and couplings', () => {
  const shorted = netlist({ supplies: [single()], elements: [element('R L A load'), element('H A N load'), element('J A N')] });
  assert.equal(truth(shorted, carries('H')), false);
  assert.equal(truth(shorted, carries('R')), true);
  const leaking = netlist({ supplies: [single()], elements: [element('V L A semiconductor', false), element('H A N load')] });
  assert.equal(truth(leaking, carries('H')), false);
  assert.equal(truth(leaking, energised('A', 'N', 'loose')), true);
  assert.equal(truth(leaking, energised('A', 'N')), false);
});

test('current flows through earth as through any net', () => {
  const json = netlist({ supplies: [single()], elements: [element('bond N PE conductor'), element('E X PE fault'), element('H L X load')] });
  assert.equal(truth(json, carries('E')), true);
  assert.equal(truth(json, carries('bond')), true);
});

test('energised loosely: in series with another load, not from one side alone', () => {
  const json = netlist({ supplies: [single()], variables: [hand('S', { rest: 'closed' })], elements: [element('R L A load'), element('S B N contact', is('S', 'closed')), element('K A B load')] });
  assert.equal(truth(json, energised('A', 'B', 'loose')), true);
  assert.equal(truth(json, energised('A', 'B')), false);
  assert.equal(truth(json, energised('A', 'B', 'loose'), { S: 'open' }), false);
  // An element need not be there for the question.
  assert.equal(truth(json, energised('A', 'N', 'loose'), { S: 'open' }), true);
  // Whatever the band: the voltage through R is not known.
  assert.equal(truth(json, energised('A', 'N', 'loose', [300, 400]), { S: 'open' }), true);
});

test('energised loosely backwards through a coupling: links join like-numbered terminals', () => {
  const coupling = { name: 'T', windings: [['H1', 'H2'], ['X1', 'X2']], from: 'any' };
  const json = netlist({ supplies: [supply('G', ['X1 120 0', 'X2 0 0'])], couplings: [coupling] });
  assert.equal(truth(json, energised('H1', 'H2', 'loose')), true);
  assert.equal(truth(json, energised('H1', 'H2')), false);
  const oneSide = netlist({ supplies: [supply('G', ['X1 120 0', 'Y 0 0'])], couplings: [coupling] });
  assert.equal(truth(oneSide, energised('H1', 'H2', 'loose')), false);
});

// ---- fed and single ----

test('fed asks for order, agreement and three components', () => {
  const json = netlist({ supplies: [mains()], elements: [element('J L1 X'), element('R L3 Y series'), element('C N Z load')] });
  assert.equal(truth(json, { fed: ['L1', 'L2', 'L3'], order: 'forward', grade: 'solid' }), true);
  assert.equal(truth(json, { fed: ['L2', 'L1', 'L3'], order: 'forward', grade: 'solid' }), false);
  assert.equal(truth(json, { fed: ['L2', 'L1', 'L3'], order: 'reverse', grade: 'solid' }), true);
  assert.equal(truth(json, { fed: ['L2', 'L1', 'L3'], order: 'any', grade: 'solid' }), true);
  assert.equal(truth(json, { fed: ['L1', 'L2', 'N'], order: 'any', grade: 'solid' }), false);
  assert.equal(truth(json, { fed: ['L1', 'X', 'L3'], order: 'any', grade: 'solid' }), false);
  assert.equal(truth(json, { fed: ['L1', 'L2', 'Y'], order: 'any', grade: 'solid' }), false);
  assert.equal(truth(json, { fed: ['L1', 'L2', 'Y'], order: 'forward', grade: 'load' }), true);
});

test('fed loosely goes through loads and couplings', () => {
  const json = netlist({
    supplies: [mains()], elements: [element('H L3 Y load')],
    couplings: [{ name: 'M', windings: [['L1', 'L2', 'L3'], ['A', 'B', 'C']], from: 'first' }],
  });
  assert.equal(truth(json, { fed: ['L1', 'L2', 'Y'], order: 'forward', grade: 'loose' }), true);
  assert.equal(truth(json, { fed: ['A', 'B', 'C'], order: 'forward', grade: 'loose' }), true);
  const back = netlist({ supplies: [mains()], couplings: [{ name: 'M', windings: [['A', 'B', 'C'], ['L1', 'L2', 'L3']], from: 'first' }] });
  assert.equal(truth(back, { fed: ['A', 'B', 'C'], order: 'forward', grade: 'loose' }), false);
});

test('single: exactly two different voltages reach the three', () => {
  const json = netlist({
    supplies: [mains()], variables: [hand('Q', { rest: 'closed' })],
    elements: [element('W1 L1 U'), element('W2 L2 V'), element('W3 L3 W', is('Q', 'closed'))],
  });
  assert.equal(truth(json, { single: ['U', 'V', 'W'] }), false);
  assert.equal(truth(json, { single: ['U', 'V', 'W'] }, { Q: 'open' }), true);
  const one = netlist({ supplies: [mains()], elements: [element('W1 L1 U'), element('X V W')] });
  assert.equal(truth(one, { single: ['U', 'V', 'W'] }), false);
});
