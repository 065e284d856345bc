import { test } from 'node:test';
import assert from 'node:assert/strict';
import { netlist, supply, mains, element, hand, is, not, any, energised, truth, reachOf, isLive, supplyOf } from './build.mjs';

const single = (more = {}) => supply('MAINS', ['L 230 0', 'N 0 0'], more);
const bond = element('bond N PE conductor');

test('a coil between a phase and a bonded neutral does not make the neutral live', () => {
  const json = netlist({
    supplies: [single()], variables: [hand('W', { rest: 'closed' })],
    elements: [bond, element('K1.coil L A1 load'), element('W A1 N conductor', is('W', 'closed'))],
  });
  assert.equal(reachOf(json, 'L'), 'solid');
  assert.equal(isLive(json, 'A1'), false);
  assert.equal(isLive(json, 'N'), false);
  // The return is broken: what hangs on the coil is live through it, the neutral itself stays dead.
  assert.equal(reachOf(json, 'A1', { W: 'open' }), 'load');
  assert.equal(isLive(json, 'N', { W: 'open' }), false);
});

test('a neutral whose bond is broken is live', () => {
  const json = netlist({ supplies: [single()], variables: [hand('B', { rest: 'closed' })], elements: [element('bond N PE conductor', is('B', 'closed')), element('H L N load')] });
  assert.equal(isLive(json, 'N'), false);
  assert.equal(reachOf(json, 'N', { B: 'open' }), 'solid');
});

test('loose reach passes no earth-tied net', () => {
  const json = netlist({ supplies: [single()], elements: [bond, element('H1 L N load'), element('H2 N Z load')] });
  assert.equal(isLive(json, 'Z'), false);
});

test('an earth fault makes neither its wire dead nor the whole earth live', () => {
  const json = netlist({
    supplies: [single()], variables: [hand('E')],
    elements: [bond, element('W L X conductor'), element('E X PE fault', is('E', 'closed')), element('PE2 PE FRAME conductor'), element('SCREEN PE S')],
  });
  for (const net of ['L', 'X']) assert.equal(reachOf(json, net, { E: 'closed' }), 'solid');
  for (const net of ['PE', 'N', 'FRAME', 'S']) assert.equal(isLive(json, net, { E: 'closed' }), false);
});

test('load reach goes along any path, through earth-tied nets too', () => {
  const json = netlist({ supplies: [single()], variables: [hand('E')], elements: [bond, element('E L PE fault', is('E', 'closed')), element('R PE FAR series')] });
  assert.equal(isLive(json, 'FAR'), false);
  assert.equal(reachOf(json, 'FAR', { E: 'closed' }), 'solid');
});

test('the loose part does not start from an earth-tied net that load reach arrived at', () => {
  const json = netlist({ supplies: [single()], variables: [hand('E')], elements: [bond, element('E L PE fault', is('E', 'closed')), element('H N Z load')] });
  assert.equal(isLive(json, 'Z', { E: 'closed' }), false);
  assert.equal(reachOf(json, 'Z', { E: 'closed' }, { looseFromEarthTied: true }), 'load');
});

test('a bonded control circuit of a resistance-earthed system can be dead', () => {
  const json = netlist({
    supplies: [mains()], elements: [element('ngr N PE series'), element('bond X2 PE conductor'), element('K1.coil A1 X2 load'), element('Q L1 A1 contact', false)],
  });
  assert.equal(isLive(json, 'A1'), false);
});

test('two grounds on an unearthed secondary do not hide each other', () => {
  const json = netlist({
    supplies: [supply('T', ['X1 120 0', 'X2 0 0'])], variables: [hand('G1'), hand('G2')],
    elements: [element('G1 X1 PE contact', is('G1', 'closed')), element('G2 X2 PE contact', is('G2', 'closed'))],
  });
  assert.equal(isLive(json, 'X1'), true);
  assert.equal(isLive(json, 'X2'), true);
  // One permanent contact earths that side.
  assert.equal(isLive(json, 'X1', { G1: 'closed' }), false);
  assert.equal(isLive(json, 'X2', { G1: 'closed' }), true);
  assert.equal(isLive(json, 'X1', { G1: 'closed', G2: 'closed' }), true);
  assert.equal(isLive(json, 'X2', { G1: 'closed', G2: 'closed' }), true);
  assert.equal(isLive(json, 'PE', { G1: 'closed', G2: 'closed' }), false);
});

test('when two are bonded only the one tied hard stays earthed', () => {
  const json = netlist({
    supplies: [supply('T', ['X1 120 0', 'X2 0 0'])], variables: [hand('G1')],
    elements: [element('G1 X1 PE contact', is('G1', 'closed')), element('bond X2 PE conductor')],
  });
  assert.equal(isLive(json, 'X1', { G1: 'closed' }), true);
  assert.equal(isLive(json, 'X2', { G1: 'closed' }), false);
});

test('a net bonded through a contact is tied only while no unearthed conductor reaches it solidly', () => {
  const json = netlist({
    supplies: [single()], variables: [hand('S'), hand('G')],
    elements: [bond, element('S L X contact', is('S', 'closed')), element('G X PE contact', is('G', 'closed'))],
  });
  assert.equal(isLive(json, 'X', { G: 'closed' }), false);
  // Both: the phase is bonded as well as the neutral, the neutral is tied hard, so the phase stays unearthed.
  assert.equal(reachOf(json, 'X', { G: 'closed', S: 'closed' }), 'solid');
});

test('an unearthed conductor cannot un-tie a net through one that is tied hard', () => {
  const json = netlist({
    supplies: [single()], variables: [hand('S')],
    elements: [bond, element('S L FRAME contact', is('S', 'closed')), element('strap FRAME PE conductor'), element('G FRAME Y contact')],
  });
  assert.equal(isLive(json, 'FRAME', { S: 'closed' }), false);
  assert.equal(isLive(json, 'Y', { S: 'closed' }), false);
});

test('a local electrode never ties', () => {
  const json = netlist({ supplies: [single()], variables: [hand('S')], elements: [bond, element('S L CASE contact', is('S', 'closed')), element('rod CASE PE series')] });
  assert.equal(isLive(json, 'CASE'), false);
  assert.equal(reachOf(json, 'CASE', { S: 'closed' }), 'solid');
});

test('a resistance-earthed system ties no source conductor', () => {
  const json = netlist({ supplies: [mains()], elements: [element('ngr N PE series')] });
  for (const net of ['L1', 'L2', 'L3', 'N']) assert.equal(reachOf(json, net), 'solid');
  assert.equal(isLive(json, 'PE'), false);
});

test('a semiconductor leaks whenever it does not conduct, unless said otherwise', () => {
  const variables = [hand('V')];
  const leaky = netlist({ supplies: [single()], variables, elements: [bond, element('V L T semiconductor', is('V', 'closed'))] });
  assert.equal(reachOf(leaky, 'T'), 'load');
  assert.equal(reachOf(leaky, 'T', { V: 'closed' }), 'solid');
  const tight = netlist({ supplies: [single()], variables, elements: [bond, element('V L T semiconductor', is('V', 'closed'), { leaks: false })] });
  assert.equal(isLive(tight, 'T'), false);
  const contact = netlist({ supplies: [single()], variables, elements: [bond, element('V L T contact', is('V', 'closed'))] });
  assert.equal(isLive(contact, 'T'), false);
});

const transformer = (more = {}) => ({
  name: 'T1', type: 'transformer', inputs: ['H1', 'H2'], windings: [['H1', 'H2'], ['X1', 'X2']], when: energised('H1', 'H2'), ratio: 4,
  output: supply('T1', ['X1 120 0', 'X2 0 0']), ...more,
});

test('a transformer fed on its secondary backfeeds its primary', () => {
  const parts = {
    supplies: [supply('MAINS', ['L1 240 0', 'L2 240 180']), supply('GEN', ['G1 120 0', 'G2 0 0'])], variables: [hand('Q'), hand('S')],
    elements: [
      element('Q.1 L1 H1 contact', is('Q', 'closed')), element('Q.2 L2 H2 contact', is('Q', 'closed')),
      element('S.1 G1 X1 contact', is('S', 'closed')), element('bond X2 PE conductor'), element('S.2 G2 X2 contact', is('S', 'closed')),
    ],
  };
  const json = netlist({ ...parts, converters: [transformer()] });
  assert.equal(isLive(json, 'H1'), false);
  assert.deepEqual(supplyOf(json, 'H1', { S: 'closed' }), { live: true, reach: 'backfeed', elv: false, from: ['GEN'] });
  assert.equal(reachOf(json, 'X1', { Q: 'closed' }), 'solid');
  const oneWay = netlist({ ...parts, converters: [transformer({ type: 'rectifier', windings: [] })] });
  assert.equal(isLive(oneWay, 'H1', { S: 'closed' }), false);
  assert.equal(reachOf(oneWay, 'X1', { Q: 'closed' }), 'solid');
});

test('converters are active by least fixpoint, through one another', () => {
  const second = { name: 'T2', type: 'rectifier', inputs: ['X1', 'X2'], windings: [], when: energised('X1', 'X2'), output: supply('T2', ['P 24 plus', 'M 0 minus'], { kind: 'dc', elv: true }) };
  const json = netlist({
    supplies: [supply('MAINS', ['L1 240 0', 'L2 240 180'])], variables: [hand('Q')], converters: [second, transformer({ windings: [] })],
    elements: [element('Q.1 L1 H1 contact', is('Q', 'closed')), element('Q.2 L2 H2 contact', is('Q', 'closed')), element('bond M PE conductor')],
  });
  assert.equal(isLive(json, 'P'), false);
  assert.deepEqual(supplyOf(json, 'P', { Q: 'closed' }), { live: true, reach: 'solid', elv: true, from: ['T2'] });
  // Two converters that only feed each other stay dead.
  const ring = netlist({
    converters: [
      { name: 'A', type: 'rectifier', inputs: [], windings: [], when: energised('B1', 'B2'), output: supply('A', ['A1 24 plus', 'A2 0 minus']) },
      { name: 'B', type: 'rectifier', inputs: [], windings: [], when: energised('A1', 'A2'), output: supply('B', ['B1 24 plus', 'B2 0 minus']) },
    ],
  });
  assert.equal(isLive(ring, 'A1'), false);
});

test('one live primary terminal reaches every terminal of the transformer', () => {
  const json = netlist({
    supplies: [supply('MAINS', ['L1 240 0', 'L2 240 180'])], converters: [transformer()], variables: [hand('Q')], elements: [element('Q L1 H1 contact', is('Q', 'closed'))],
  });
  for (const net of ['H2', 'X1', 'X2']) assert.equal(reachOf(json, net, { Q: 'closed' }), 'backfeed');
});

test('a coupling from the first winding only is not driven by the others', () => {
  const parts = {
    supplies: [single()], variables: [hand('A'), hand('B')],
    elements: [bond, element('A L U1 contact', is('A', 'closed')), element('B L W1 contact', is('B', 'closed'))],
  };
  const windings = [['U1', 'U2'], ['W1', 'W2']];
  const first = netlist({ ...parts, couplings: [{ name: 'D', windings, from: 'first' }] });
  assert.equal(reachOf(first, 'W2', { A: 'closed' }), 'backfeed');
  assert.equal(isLive(first, 'U2', { A: 'closed' }), false);
  assert.equal(isLive(first, 'U1', { B: 'closed' }), false);
  assert.equal(isLive(first, 'W2', { B: 'closed' }), false);
  const both = netlist({ ...parts, couplings: [{ name: 'D', windings, from: 'any' }] });
  assert.equal(reachOf(both, 'U1', { B: 'closed' }), 'backfeed');
  assert.equal(reachOf(both, 'W2', { B: 'closed' }), 'backfeed');
});

test('diodes pass plus from anode to cathode and minus back; loose reach goes both ways', () => {
  const direct = supply('DC', ['P 24 plus', 'M 0 minus'], { kind: 'dc' });
  const along = netlist({ supplies: [direct], elements: [element('D P X diode'), element('bond M PE conductor')] });
  assert.equal(reachOf(along, 'X'), 'solid');
  assert.equal(truth(along, energised('X', 'M')), true);
  const against = netlist({ supplies: [direct], elements: [element('D X P diode'), element('bond M PE conductor')] });
  assert.equal(reachOf(against, 'X'), 'load');
  assert.equal(truth(against, energised('X', 'M')), false);
  const minus = netlist({ supplies: [direct], elements: [element('D X M diode')] });
  assert.equal(reachOf(minus, 'X'), 'solid');
  assert.equal(truth(minus, energised('P', 'X')), true);
  const alternating = netlist({ supplies: [single()], elements: [bond, element('D X L diode')] });
  assert.equal(reachOf(alternating, 'X'), 'solid');
});

test('a store is live and loose, never solid', () => {
  const json = netlist({
    supplies: [supply('CAP', ['C1 400 plus', 'C2 0 minus'], { kind: 'dc', store: { variable: 'V', discharge: null }, present: is('V', 'closed') })],
    variables: [hand('V')], elements: [element('bond C2 PE conductor'), element('R C1 D load'), element('S C1 C2 contact', false)],
  });
  assert.equal(isLive(json, 'C1'), false);
  assert.deepEqual(supplyOf(json, 'C1', { V: 'closed' }), { live: true, reach: 'stored', elv: false, from: ['CAP'] });
  assert.equal(reachOf(json, 'D', { V: 'closed' }), 'stored');
  assert.equal(truth(json, energised('C1', 'C2', 'loose'), { V: 'closed' }), true);
  assert.equal(truth(json, energised('C1', 'C2'), { V: 'closed' }), false);
});

test('extra-low voltage only when nothing but marked supplies reaches', () => {
  const json = netlist({
    supplies: [supply('PELV', ['P 24 plus', 'M 0 minus'], { kind: 'dc', elv: true }), single()], variables: [hand('S')],
    elements: [bond, element('bond2 M PE conductor'), element('S L P contact', is('S', 'closed'))],
  });
  assert.equal(supplyOf(json, 'P').elv, true);
  const mixed = supplyOf(json, 'P', { S: 'closed' });
  assert.equal(mixed.elv, false);
  assert.deepEqual(mixed.from, ['PELV', 'MAINS']);
});

test('a drive is a supply of its own while line or link may be live, loosely joined to both', () => {
  const drive = {
    name: 'U1', type: 'drive', inputs: ['R', 'S', 'T'], windings: [['R', 'S', 'T'], ['DCP', 'DCM'], ['U', 'V', 'W']], when: any({ live: 'R' }, { live: 'DCP' }),
    output: supply('U1', ['U 230 0', 'V 230 -120', 'W 230 120'], { limited: true }),
  };
  const link = supply('LINK', ['DCP 560 plus', 'DCM 0 minus'], { kind: 'dc', store: { variable: 'C', discharge: '300 s' }, present: is('C', 'closed') });
  const json = netlist({
    supplies: [mains(), link], converters: [drive], variables: [hand('Q'), hand('C')],
    elements: [bond, ...['R', 'S', 'T'].map((n, i) => element(`Q.${i} L${i + 1} ${n} contact`, is('Q', 'closed')))],
  });
  assert.equal(isLive(json, 'U'), false);
  assert.equal(reachOf(json, 'U', { Q: 'closed' }), 'solid');
  assert.equal(reachOf(json, 'DCP', { Q: 'closed' }), 'backfeed');
  // Off at the switch but charged: the output may still be driven, and the line terminals are loosely live.
  assert.equal(reachOf(json, 'U', { C: 'closed' }), 'solid');
  assert.equal(isLive(json, 'R', { C: 'closed' }), true);
  assert.equal(isLive(json, 'L1', { C: 'closed' }), true);
});

test('volts of a pair, with bounds included', () => {
  const json = netlist({ supplies: [supply('G', ['L1 277 0', 'L2 277 -120', 'L3 277 120', 'N 0 0'])] });
  const exact = 277 * Math.sqrt(3);
  assert.equal(truth(json, energised('L1', 'L2', 'solid', [exact, exact])), true);
  assert.equal(truth(json, energised('L1', 'N', 'solid', [277, 277])), true);
  assert.equal(truth(json, energised('L1', 'N', 'solid', [278, null])), false);
  assert.equal(truth(json, energised('L1', 'L1')), false);
  assert.equal(truth(json, not(energised('L1', 'N', 'solid', [0, 276]))), true);
});

test('energised across two supplies is nothing', () => {
  const json = netlist({ supplies: [supply('A', ['A1 24 plus', 'A2 0 minus']), supply('B', ['B1 24 plus', 'B2 0 minus'])] });
  assert.equal(truth(json, energised('A1', 'B2')), false);
});

test('a phase that is absent reaches nothing and is not counted as bonded', () => {
  const source = mains();
  source.conductors[1].present = is('P2', 'closed');
  const json = netlist({ supplies: [source], variables: [hand('P2', { rest: 'closed' })], elements: [bond] });
  assert.equal(isLive(json, 'L2'), true);
  assert.equal(isLive(json, 'L2', { P2: 'open' }), false);
});
