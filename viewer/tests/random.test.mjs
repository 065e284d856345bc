import { test } from 'node:test';
import assert from 'node:assert/strict';
import { readNetlist } from '../netlist.mjs';
import { Atoms, Network } from '../network.mjs';
import { Rules } from '../moves.mjs';
import { Space } from '../explore.mjs';
import { table } from '../table.mjs';
import { isolatingSets } from '../questions.mjs';
import { hasBit } from '../bits.mjs';
import { randomPanel, dice } from './random.mjs';
import { Literal } from './literal.mjs';

const small = { nets: 11, elements: 20, armatures: 2, switches: 4 };
const bits = hex => Uint8Array.from(hex.match(/../g) ?? [], h => parseInt(h, 16));
const members = (bitset, size) => Array.from({ length: size }, (_, i) => i).filter(i => hasBit(bitset, i));

test('the network agrees with the definitions read word for word', () => {
  for (let seed = 1; seed <= 60; seed++) {
    const panel = readNetlist(randomPanel(seed, small)), d = dice(seed + 1000), atoms = new Atoms(panel);
    const pairs = Array.from({ length: 4 }, () => [d.pick(panel.nets), d.pick(panel.nets)]);
    const numbers = pairs.map(pair => atoms.intern('energised', { energised: pair, grade: 'loose', volts: [100, 110] }));
    const network = new Network(panel, atoms), values = panel.restValues();
    for (let round = 0; round < 8; round++) {
      panel.variables.forEach((v, i) => { values[i] = d.below(v.values.length); });
      network.set(values);
      network.solve();
      const literal = new Literal(network), where = `seed ${seed}, state ${values}`;
      assert.deepEqual(marked(network.reach.findEarthTied()), [...literal.earthTied()].sort(rising), `earth-tied, ${where}`);
      assert.deepEqual(marked(network.live()), [...literal.live()].sort(rising), `live, ${where}`);
      network.shorts.find();
      assert.deepEqual(marked(network.shorts.supplies), [...literal.shorts()].sort(rising), `short, ${where}`);
      for (const e of panel.elements) assert.equal(network.carries.carries(e.index), literal.carries(e.index), `carries ${e.id}, ${where}`);
      pairs.forEach(([a, b], k) => {
        if (a !== b) assert.equal(network.ask(atoms.list[numbers[k]]), literal.energisedLoosely(panel.net(a), panel.net(b)), `energised ${a} ${b}, ${where}`);
      });
    }
  }
});

const rising = (a, b) => a - b;
const marked = marks => [...marks.keys()].filter(i => marks[i] !== 0);

test('settled states are those that every state they lead to leads back to; a race ends in two', () => {
  for (let seed = 1; seed <= 8; seed++) {
    const panel = readNetlist(randomPanel(seed, { ...small, switches: 2 })), space = new Space(new Rules(panel)), t = table(panel);
    for (let i = 0; i < space.size; i++) {
      const where = `seed ${seed}, state ${i}`, after = follow(i, s => space.of(s).urgent);
      assert.equal(space.settled(i), after.every(to => follow(to, s => space.of(s).urgent).includes(i)), where);
      // Bottoms reached by settle moves: told apart by their smallest state.
      const ends = new Set(follow(i, s => space.of(s).settle).filter(s => space.settled(s)).map(s => Math.min(...follow(s, x => space.of(x).urgent))));
      assert.equal(hasBit(bits(t.race), i), ends.size > 1, where);
    }
  }
});

function follow(start, next) {
  const seen = new Set([start]);
  for (const s of seen) next(s).forEach(to => seen.add(to));
  return [...seen];
}

test('what is reachable is what stories reach, and no more', () => {
  for (let seed = 1; seed <= 8; seed++) {
    const panel = readNetlist(randomPanel(seed, small)), t = table(panel), space = new Space(new Rules(panel));
    const told = space.stories(0, () => false);
    assert.deepEqual([...told.done].sort(rising), members(bits(t.reachable), t.assignments));
    // Every story replays: each of its moves is one the state offers.
    for (const state of [...told.done].slice(0, 40)) {
      for (let link = told.from.get(state), to = state; link.state >= 0; to = link.state, link = told.from.get(to)) {
        let offered = false;
        space.moves(link.state, 0, (code, target) => { offered ||= code === link.code && target === to; });
        assert.equal(offered, true);
      }
    }
  }
});

test('isolating sets are all the minimal ones, and isolating is upward closed', () => {
  const tags = ['S0', 'S1', 'S2'], subsets = Array.from({ length: 8 }, (_, m) => tags.filter((_, i) => m >> i & 1));
  for (let seed = 1; seed <= 10; seed++) {
    const json = randomPanel(seed, { ...small, switches: 3 });
    json.supplies = json.supplies.filter(s => s.store === null);
    for (const target of ['n7', 'n8']) {
      const dead = subsets.filter(set => deadWithout(json, set, target)), within = (a, b) => a.every(x => b.includes(x));
      const minimal = dead.filter(set => !dead.some(other => other.length < set.length && within(other, set)));
      assert.deepEqual(isolatingSets(readNetlist(json), { target: [target], isolators: tags }).sets, minimal.sort((a, b) => JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
      for (const a of dead) for (const b of subsets) if (within(a, b)) assert.equal(dead.includes(b), true);
    }
  }
});

/** Takes the pole elements out of the file itself and looks at every assignment. */
function deadWithout(json, set, target) {
  const removed = json.devices.filter(d => set.includes(d.tag)).flatMap(d => d.isolates.elements);
  const elements = json.elements.map(e => removed.includes(e.id) ? { ...e, closed: false, leaks: false } : e);
  const t = table(readNetlist({ ...json, elements }));
  return /^0*$/.test(t.live[target]);
}

test('a table is the same however often it is asked for', () => {
  const json = randomPanel(3, small);
  assert.deepEqual(table(readNetlist(json)), table(readNetlist(json)));
});
