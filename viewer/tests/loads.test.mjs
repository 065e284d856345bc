import { test } from 'node:test';
import assert from 'node:assert/strict';
import { netlist, supply, mains, element, hand, is, truth, tableOf, inColumn } from './build.mjs';

const runs = (turns = 'any', load = 'M1') => ({ runs: load, turns });
const modeNamed = (name, feed, more = {}) => ({ name, speed: 1, feed, joined: [], apart: [], turns: 'forward', ...more });
const windings = ['u', 'v', 'w'].map((x, i) => element(`M1.${x} ${'UVW'[i]} STAR load`));
const motor = { name: 'M1', elements: ['M1.u', 'M1.v', 'M1.w'], modes: [modeNamed('run', ['U', 'V', 'W'])] };

test('direction is the orientation of the voltage triangle', () => {
  const closed = name => is(name, 'closed');
  const json = netlist({
    supplies: [mains()], variables: [hand('KF'), hand('KR')], loads: [motor],
    elements: [
      ...windings, element('KF.1 L1 U', closed('KF')), element('KF.2 L2 V', closed('KF')), element('KF.3 L3 W', closed('KF')),
      element('KR.1 L3 U', closed('KR')), element('KR.2 L2 V', closed('KR')), element('KR.3 L1 W', closed('KR')),
    ],
  });
  assert.equal(truth(json, runs()), false);
  assert.equal(truth(json, runs('forward'), { KF: 'closed' }), true);
  assert.equal(truth(json, runs('reverse'), { KF: 'closed' }), false);
  assert.equal(truth(json, runs('reverse'), { KR: 'closed' }), true);
  // Both: outer phases are joined, a short, and the motor is not fed three ways.
  assert.equal(truth(json, { short: 'MAINS' }, { KF: 'closed', KR: 'closed' }), true);
  assert.equal(truth(json, runs(), { KF: 'closed', KR: 'closed' }), false);
});

test('single-phasing and standing live', () => {
  const json = netlist({
    supplies: [mains()], variables: [hand('A'), hand('B'), hand('C')], loads: [motor],
    elements: [...windings, element('bond N PE conductor'), ...['A', 'B', 'C'].map((n, i) => element(`${n} L${i + 1} ${'UVW'[i]}`, is(n, 'closed')))],
  });
  const t = tableOf(json), { any, forward, singlePhasing, standsLive } = t.runs.M1;
  const on = (...names) => Object.fromEntries(names.map(n => [n, 'closed']));
  const read = state => [any, forward, singlePhasing, standsLive].map(column => inColumn(json, column, state));
  assert.deepEqual(read({}), [false, false, false, false]);
  assert.deepEqual(read(on('A')), [false, false, false, true]);
  assert.deepEqual(read(on('A', 'C')), [false, false, true, false]);
  assert.deepEqual(read(on('A', 'B', 'C')), [true, true, false, false]);
});

test('star and delta', () => {
  const ends = [['U1', 'U2'], ['V1', 'V2'], ['W1', 'W2']], closed = name => is(name, 'closed');
  const json = netlist({
    supplies: [mains()], variables: [hand('KM'), hand('KS'), hand('KD')],
    elements: [
      ...ends.map(([a, b], i) => element(`M1.${i} ${a} ${b} load`)), ...ends.map(([a], i) => element(`KM.${i} L${i + 1} ${a}`, closed('KM'))),
      element('KS.1 U2 V2', closed('KS')), element('KS.2 V2 W2', closed('KS')),
      element('KD.1 U1 W2', closed('KD')), element('KD.2 V1 U2', closed('KD')), element('KD.3 W1 V2', closed('KD')),
    ],
    loads: [{
      name: 'M1', elements: ['M1.0', 'M1.1', 'M1.2'], modes: [
        modeNamed('star', ['U1', 'V1', 'W1'], { joined: [['U2', 'V2', 'W2']], apart: [['U1', 'U2'], ['V1', 'V2'], ['W1', 'W2']] }),
        modeNamed('delta', ['U1', 'V1', 'W1'], { joined: [['U1', 'W2'], ['V1', 'U2'], ['W1', 'V2']], apart: [['U1', 'V1', 'W1']] }),
      ],
    }],
  });
  const on = (...names) => Object.fromEntries(names.map(n => [n, 'closed']));
  assert.equal(truth(json, runs('forward'), on('KM', 'KS')), true);
  assert.equal(truth(json, runs('forward'), on('KM', 'KD')), true);
  assert.equal(truth(json, runs(), on('KM')), false);
  assert.equal(truth(json, runs(), on('KS', 'KD')), false);
  // Star and delta together join the three phases.
  assert.equal(truth(json, runs(), on('KM', 'KS', 'KD')), false);
  assert.equal(truth(json, { short: 'MAINS' }, on('KM', 'KS', 'KD')), true);
});

test('a motor runs through series elements, not through windings', () => {
  const through = type => netlist({ supplies: [mains()], loads: [motor], elements: [...windings, ...[1, 2, 3].map(i => element(`R.${i} L${i} ${'UVW'[i - 1]} ${type}`))] });
  assert.equal(truth(through('series'), runs('forward')), true);
  assert.equal(truth(through('load'), runs()), false);
  assert.equal(truth(through('diode'), runs()), false);
});

test('the paths share no component', () => {
  // Every terminal has series elements to one common point that only one phase can pass.
  const json = netlist({
    supplies: [mains()], loads: [motor],
    elements: [...windings, element('W1 L1 U'), element('R2 L2 X series'), element('R3 L3 X series'), element('R4 X V series'), element('R5 X W series')],
  });
  assert.equal(truth(json, runs()), false);
});

test('an autotransformer carries the load through its sections', () => {
  const json = netlist({
    supplies: [mains()], loads: [motor], variables: [hand('KS'), hand('KT'), hand('KL')],
    elements: [
      ...windings, ...[1, 2, 3].map(i => element(`KL.${i} L${i} ${'UVW'[i - 1]}`, is('KL', 'closed'))),
      ...[1, 2, 3].flatMap(i => [
        element(`T.${i}a L${i} A${i} series`), element(`T.${i}b A${i} B${i} series`), element(`KT.${i} A${i} ${'UVW'[i - 1]}`, is('KT', 'closed')),
      ]),
      element('KS.1 B1 B2', is('KS', 'closed')), element('KS.2 B2 B3', is('KS', 'closed')),
    ],
  });
  assert.equal(truth(json, runs('forward'), { KS: 'closed', KT: 'closed' }), true);
  assert.equal(truth(json, runs('reverse'), { KS: 'closed', KT: 'closed' }), false);
  assert.equal(truth(json, runs('forward'), { KT: 'closed' }), true);
  assert.equal(truth(json, runs(), { KS: 'closed' }), false);
  assert.equal(truth(json, runs('forward'), { KL: 'closed' }), true);
  assert.equal(truth(json, { short: 'MAINS' }, { KS: 'closed', KT: 'closed' }), false);
});

test('a two-terminal load needs two different conductors; polarity gives a direct-current motor its direction', () => {
  const direct = supply('DC', ['P 110 plus', 'M 0 minus'], { kind: 'dc' });
  const load = { name: 'M1', elements: ['M1.a'], modes: [modeNamed('run', ['A1', 'A2'])] };
  const json = netlist({
    supplies: [direct], loads: [load], variables: [hand('F'), hand('R')],
    elements: [
      element('M1.a A1 A2 load'), element('F.1 P A1', is('F', 'closed')), element('F.2 M A2', is('F', 'closed')),
      element('R.1 P A2', is('R', 'closed')), element('R.2 M A1', is('R', 'closed')),
    ],
  });
  assert.equal(truth(json, runs('forward'), { F: 'closed' }), true);
  assert.equal(truth(json, runs('reverse'), { R: 'closed' }), true);
  assert.equal(truth(json, runs('forward'), { R: 'closed' }), false);
  assert.equal(truth(json, runs(), { F: 'closed', R: 'closed' }), false);
  const same = netlist({ supplies: [supply('A', ['L 230 0', 'K 230 0'])], loads: [{ ...load, modes: [modeNamed('on', ['L', 'K'])] }], elements: [element('M1.a L K load')] });
  assert.equal(truth(same, runs()), false);
});

test('unequal voltages do not run a three-phase load', () => {
  // A high-leg delta between its phases is fed evenly, with the neutral in place of a phase it is not.
  const high = supply('HL', ['A 120 0', 'B 207.846 90', 'C 120 180', 'N 0 0']);
  const load = feed => netlist({ supplies: [high], loads: [{ name: 'M1', elements: [], modes: [modeNamed('run', feed)] }] });
  assert.equal(truth(load(['A', 'B', 'C']), runs()), true);
  assert.equal(truth(load(['A', 'N', 'B']), runs()), false);
});

test('conductors of two supplies do not feed one load between them', () => {
  const json = netlist({
    supplies: [mains(), supply('G', ['G1 277 0', 'G2 277 -120', 'G3 277 120'], { group: 'g1' })], loads: [motor],
    elements: [...windings, element('a L1 U'), element('b L2 V'), element('c G3 W')],
  });
  assert.equal(truth(json, runs()), false);
});
