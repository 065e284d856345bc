import { test } from 'node:test';
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { netlist, supply, element, hand, relay, is } from './build.mjs';

const json = netlist({
  supplies: [supply('MAINS', ['L 230 0', 'N 0 0'])], variables: [hand('Q'), relay('K', 'X', 'N')],
  elements: [element('bond N PE conductor'), element('Q L X', is('Q', 'closed')), element('K.coil X N load')],
  devices: [{ tag: 'Q', isolates: { variable: 'Q', elements: ['Q'] } }], intents: [{ form: 'never', when: { live: 'X' } }],
});

function ask(...lines) {
  const batch = fileURLToPath(new URL('../batch.mjs', import.meta.url));
  const { stdout } = spawnSync(process.execPath, [batch], { input: lines.map(l => typeof l === 'string' ? l : JSON.stringify(l)).join('\n') });
  return String(stdout).trim().split('\n').map(line => JSON.parse(line));
}

test('one answer a line, errors among them', () => {
  const [table, error, nonsense, sets, live, intent, unknown] = ask(
    { op: 'table', netlist: json }, { op: 'fly', netlist: json }, 'nonsense', { op: 'isolate', netlist: json, target: ['X'] },
    { op: 'live', netlist: json, state: { Q: 'closed' } }, { op: 'intent', netlist: json, index: 0 }, { op: 'live', netlist: json, state: { Q: 'ajar' } },
  );
  // Assignments in order: Q open K out, Q open K in, Q closed K out, Q closed K in.
  assert.equal(table.assignments, 4);
  assert.deepEqual(table.live, { PE: '00', L: '0f', N: '00', X: '0c' });
  assert.equal(table.earthTied.N, '0f');
  assert.deepEqual(table.moves[1], [{ certain: '04', optional: '00' }, { certain: '02', optional: '00' }]);
  assert.deepEqual(table.raw[1].map(r => r.when), ['0c', '03']);
  assert.equal(table.settled, '09');
  assert.equal(table.reachable, '0f');
  assert.equal(error.error, 'operation fly is not known');
  assert.equal(typeof nonsense.error, 'string');
  assert.deepEqual(sets.sets, [['Q']]);
  assert.deepEqual(live.nets.X, { live: true, reach: 'solid', elv: false, from: ['MAINS'] });
  assert.equal(intent.verdict, 'refuted');
  assert.equal(unknown.error, 'variable Q has no value ajar');
});
