import { test } from 'node:test';
import assert from 'node:assert/strict';
import { netlist, supply, mains, element, hand, button, relay, failure, is, not, all, any, energised, verdict, isolate } from './build.mjs';

const single = (more = {}) => supply('MAINS', ['L 230 0', 'N 0 0'], more);
const bond = element('bond N PE conductor');
const isolator = (tag, elements) => ({ tag, kind: 'disconnect', isolates: { variable: tag, elements, lockable: true, visible: true, rank: 1 } });
const lamp = (feed = ['X', 'N'], name = 'H') => ({ name, elements: ['H'], modes: [{ name: 'on', speed: 0, feed, joined: [], apart: [], turns: null }] });

/** Start and stop buttons with a seal-in contact; the lamp burns while K is in. */
const starter = (more = {}) => netlist({
  supplies: [single()], variables: [button('S1'), button('S0'), relay('K', 'B', 'N'), failure('W', 'contact', { closed: 'K.2' })],
  elements: [
    bond, element('S0 L A', is('S0', 'free')), element('S1 A B', is('S1', 'pressed')), element('K.1 A B', is('K', 'in'), { power: false }), element('K.coil B N load', true, { power: false }),
    element('K.2 L X', any(is('K', 'in'), is('W', 'yes'))), element('H X N load'),
  ],
  loads: [lamp()], devices: [{ tag: 'S0', use: 'stop' }, { tag: 'S1', use: 'start' }, { tag: 'K' }], ...more,
});

test('stops: the button stops it, held or released', () => {
  assert.equal(verdict(starter(), { form: 'stops', of: 'H', by: 'S0=pressed' }).verdict, 'proved');
  assert.equal(verdict(starter(), { form: 'stops', of: 'H', by: 'S0=pressed', atOnce: true }).verdict, 'proved');
});

test('stops: a stop that does not break the seal runs again once released', () => {
  // S0 breaks the lamp's own line only.
  const json = starter();
  json.elements.find(e => e.id === 'S0').closed = true;
  json.elements.find(e => e.id === 'K.2').closed = all(is('K', 'in'), is('S0', 'free'));
  const told = verdict(json, { form: 'stops', of: 'H', by: 'S0=pressed' });
  assert.equal(told.verdict, 'refuted');
  assert.equal(told.part, 'released');
});

test('stops: another contact beside the stop', () => {
  const json = starter();
  json.variables.push(hand('S2'));
  json.elements.push(element('S2 L B', is('S2', 'closed')));
  const told = verdict(json, { form: 'stops', of: 'H', by: 'S0=pressed' });
  assert.equal(told.verdict, 'refuted');
});

test('stops: a welded contact when a failure is allowed', () => {
  const told = verdict(starter(), { form: 'stops', of: 'H', by: 'S0=pressed', failures: 1 });
  assert.equal(told.verdict, 'refuted');
  assert.equal(told.story.moves.some(m => m.by === 'failure'), true);
});

test('stops: a delay is allowed unless at once is asked for', () => {
  const delayed = {
    name: 'T', device: 'T', kind: 'timer', values: ['on', 'off'], rest: 'off',
    moves: [{ from: 'off', to: 'on', by: 'settle', when: energised('A', 'N') }, { from: 'on', to: 'off', by: 'delay', when: not(energised('A', 'N')) }],
  };
  const json = netlist({
    supplies: [single()], variables: [hand('S', { rest: 'closed' }), delayed], loads: [lamp()], devices: [{ tag: 'S' }],
    elements: [bond, element('S L A', is('S', 'closed')), element('C A N load'), element('T L X', is('T', 'on')), element('H X N load')],
  });
  assert.equal(verdict(json, { form: 'stops', of: 'H', by: 'S=open' }).verdict, 'proved');
  assert.equal(verdict(json, { form: 'stops', of: 'H', by: 'S=open', atOnce: true }).verdict, 'refuted');
});

test('stops: an optional drop is no stop', () => {
  const json = netlist({
    supplies: [single()], variables: [button('S0'), { ...relay('K', 'B', 'N'), rest: 'out' }], loads: [lamp()], devices: [{ tag: 'S0', use: 'stop' }],
    elements: [
      bond, element('S0 L B', is('S0', 'free')), element('R L B load'), element('K.coil B N load'), element('K.1 L X', is('K', 'in')), element('H X N load'),
    ],
  });
  const told = verdict(json, { form: 'stops', of: 'H', by: 'S0=pressed' });
  assert.deepEqual([told.verdict, told.part], ['refuted', 'operated']);
});

test('stops is vacuous where it never runs', () => {
  const json = starter();
  json.elements.find(e => e.id === 'S1').closed = false;
  assert.equal(verdict(json, { form: 'stops', of: 'H', by: 'S0=pressed' }).verdict, 'vacuous');
});

test('never: with its shortest story', () => {
  const told = verdict(starter(), { form: 'never', when: all({ runs: 'H', turns: 'any' }, is('S1', 'free')) });
  assert.equal(told.verdict, 'refuted');
  assert.deepEqual(told.story.moves.map(m => `${m.variable} ${m.from} ${m.to} ${m.by}`), ['S1 free pressed operator', 'K out in settle', 'S1 pressed free operator']);
  assert.equal(verdict(starter(), { form: 'never', of: 'H', when: is('S0', 'pressed'), settled: true }).verdict, 'proved');
  assert.equal(verdict(starter(), { form: 'never', of: 'H', when: is('S0', 'pressed') }).verdict, 'refuted');
  assert.equal(verdict(starter(), { form: 'never', of: 'H', when: all(is('S0', 'pressed'), is('K', 'in')), settled: true }).verdict, 'vacuous');
});

test('can: by the device named, and only where it is needed', () => {
  assert.equal(verdict(starter(), { form: 'can', of: 'H', via: ['K'] }).verdict, 'proved');
  const bypassed = starter();
  bypassed.elements.push(element('J L X conductor'));
  assert.equal(verdict(bypassed, { form: 'can', of: 'H', via: [] }).verdict, 'proved');
  assert.equal(verdict(bypassed, { form: 'can', of: 'H', via: ['K'] }).verdict, 'refuted');
  assert.equal(verdict(bypassed, { form: 'can', of: 'H', via: ['K'], when: all(is('K', 'in'), is('K', 'out')) }).verdict, 'vacuous');
});

test('quiet in a question', () => {
  assert.equal(verdict(starter(), { form: 'never', when: all({ quiet: true }, { runs: 'H', turns: 'any' }, is('S0', 'pressed')) }).verdict, 'proved');
  assert.equal(verdict(starter(), { form: 'never', when: all({ quiet: true }, { runs: 'H', turns: 'any' }) }).verdict, 'refuted');
});

test('dead: in every assignment, reachable or not, with contacts welded but wires whole', () => {
  const json = starter();
  assert.equal(verdict(json, { form: 'dead', of: 'H', when: all(is('K', 'out'), is('W', 'no')) }).verdict, 'proved');
  const welded = verdict(json, { form: 'dead', of: 'H', when: is('K', 'out') });
  assert.equal(welded.verdict, 'refuted');
  assert.deepEqual(welded.live, ['X']);
  assert.equal(verdict(json, { form: 'dead', of: 'H', when: all(is('K', 'out'), is('K', 'in')) }).verdict, 'vacuous');
  // A broken return would make the lamp live, but wires are kept whole unless the condition names them.
  json.variables.push(failure('C', 'wiring'));
  json.elements.find(e => e.id === 'bond').closed = is('C', 'no');
  assert.equal(verdict(json, { form: 'dead', of: 'H', when: all(is('K', 'out'), is('W', 'no')) }).verdict, 'proved');
  assert.equal(verdict(json, { form: 'dead', of: 'H', when: all(is('K', 'out'), is('W', 'no'), is('C', 'yes')) }).verdict, 'refuted');
});

test('isolating sets: in series either, in parallel both', () => {
  const json = netlist({
    supplies: [single()], variables: [hand('Q1'), hand('Q2'), hand('Q3')],
    elements: [bond, element('Q1 L A', is('Q1', 'closed')), element('Q2 A X', is('Q2', 'closed')), element('Q3 A X', is('Q3', 'closed')), element('H X N load')],
    devices: ['Q1', 'Q2', 'Q3'].map(tag => isolator(tag, [tag])),
  });
  assert.deepEqual(isolate(json, ['X']).sets, [['Q1'], ['Q2', 'Q3']]);
  assert.deepEqual(isolate(json, ['A']).sets, [['Q1']]);
  assert.deepEqual(isolate(json, ['L']).sets, []);
  assert.deepEqual(isolate(json, ['N']).sets, [[]]);
  assert.deepEqual(isolate(json, ['X'], ['Q2', 'Q3']).sets, [['Q2', 'Q3']]);
});

test('isolating sets: constraints do not help, welds and leakage do not spare, a second supply counts', () => {
  const json = netlist({
    supplies: [single(), supply('G', ['GL 230 0', 'N 0 0'], { present: is('P', 'closed') })], variables: [hand('Q1'), hand('Q2'), hand('P'), relay('K', 'A', 'N')],
    elements: [
      bond, element('Q1 L A', is('Q1', 'closed')), element('Q2 GL A', is('Q2', 'closed')), element('K A X', is('K', 'in')), element('V A Y semiconductor', is('K', 'in')),
    ],
    devices: ['Q1', 'Q2'].map(tag => isolator(tag, [tag])), constraints: [{ name: 'key', kind: 'key', holds: not(all(is('Q1', 'closed'), is('Q2', 'closed'))) }],
  });
  assert.deepEqual(isolate(json, ['X']).sets, [['Q1', 'Q2']]);
  assert.deepEqual(isolate(json, ['Y']).sets, [['Q1', 'Q2']]);
});

test('isolating sets: a store has to be discharged besides', () => {
  const json = netlist({
    supplies: [single(), supply('CAP', ['X 400 plus', 'N 0 minus'], { kind: 'dc', store: { variable: 'C', discharge: '60 s' }, present: is('C', 'closed') })],
    variables: [hand('Q1'), hand('C')], elements: [bond, element('Q1 L X', is('Q1', 'closed'))], devices: [isolator('Q1', ['Q1'])],
  });
  assert.deepEqual(isolate(json, ['X']), { sets: [['Q1']], discharge: [['CAP']] });
});

test('isolating sets: backfeed through a transformer needs both sides', () => {
  const json = netlist({
    supplies: [supply('MAINS', ['L1 240 0', 'L2 240 180']), supply('GEN', ['G1 120 0', 'X2 0 0'])],
    converters: [{
      name: 'T1', type: 'transformer', inputs: ['H1', 'H2'], windings: [['H1', 'H2'], ['X1', 'X2']], when: energised('H1', 'H2'), ratio: 2,
      output: supply('T1', ['X1 120 0', 'X2 0 0']),
    }],
    variables: [hand('Q1'), hand('Q2')],
    elements: [element('bond X2 PE conductor'), element('Q1.1 L1 H1', is('Q1', 'closed')), element('Q1.2 L2 H2', is('Q1', 'closed')), element('Q2 G1 X1', is('Q2', 'closed'))],
    devices: [isolator('Q1', ['Q1.1', 'Q1.2']), isolator('Q2', ['Q2'])],
  });
  assert.deepEqual(isolate(json, ['H1']).sets, [['Q1', 'Q2']]);
});
