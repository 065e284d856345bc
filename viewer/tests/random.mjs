// Random small panels: a supply, a secondary, armatures, contacts, loads. Repeatable from a seed.

/** A small linear congruential generator. @param {number} seed */
export function dice(seed) {
  let state = (seed * 2654435761 + 12345) >>> 0;
  const roll = () => { state = (Math.imul(state, 1664525) + 1013904223) >>> 0; return state / 2 ** 32; };
  return { roll, below: n => Math.floor(roll() * n), pick: list => list[Math.floor(roll() * list.length)], chance: p => roll() < p };
}

const threePhase = (name, nets, group, volts = 277) => ({
  name, kind: 'ac', present: true, group, elv: false, limited: false, store: null,
  conductors: ['L1', 'L2', 'L3', 'N'].map((phase, i) => ({
    name: phase, net: nets[i], volts: i === 3 ? 0 : volts, degrees: [0, -120, 120, 0][i], polarity: 'ac', present: true,
  })),
});

/** @param {number} seed @param {{nets?:number,elements?:number,armatures?:number,switches?:number}} size */
export function randomPanel(seed, { nets = 25, elements = 35, armatures = 5, switches = 5 } = {}) {
  const d = dice(seed), names = Array.from({ length: nets }, (_, i) => `n${i}`);
  const json = {
    schema: 1, panel: `R${seed}`, rules: 'NEC', frequency: 60, earth: 'n0', nets: names, supplies: [], converters: [], couplings: [],
    variables: [], powered: [], elements: [], devices: [], loads: [], constraints: [], points: {}, intents: [],
  };
  const net = () => d.pick(names), var_ = (v, is) => ({ var: v, is });
  json.supplies.push(threePhase('MAINS', ['n1', 'n2', 'n3', 'n4'], 'g1'));
  if (d.chance(0.5)) json.supplies.push({ ...threePhase('STANDBY', [net(), net(), net(), 'n4'], d.pick(['g1', 'g2'])), present: var_('SUP', 'yes'), limited: d.chance(0.5) });
  if (d.chance(0.4)) {
    json.supplies.push({
      name: 'DC', kind: 'dc', present: true, group: 'gd', elv: true, limited: false, store: d.chance(0.3) ? { variable: 'SUP', discharge: null } : null,
      conductors: [{ name: '+', net: net(), volts: 24, degrees: 0, polarity: 'plus', present: true }, { name: '-', net: net(), volts: 0, degrees: 0, polarity: 'minus', present: true }],
    });
  }
  json.converters.push({
    name: 'T1', type: 'transformer', inputs: ['n1', 'n2'], windings: [['n1', 'n2'], ['n5', 'n6']], when: { energised: ['n1', 'n2'], grade: 'solid', volts: [400, 500] }, ratio: 4,
    output: {
      name: 'T1', kind: 'ac', present: true, group: 'gt', elv: false, limited: false, store: null,
      conductors: [{ name: 'X1', net: 'n5', volts: 120, degrees: 0, polarity: 'ac', present: true }, { name: 'X2', net: 'n6', volts: 0, degrees: 0, polarity: 'ac', present: true }],
    },
  });
  json.couplings.push({ name: 'M1', windings: [[net(), net(), net()], [net(), net(), net()]], from: d.pick(['any', 'first']) });
  json.variables.push({ name: 'SUP', device: 'SUP', kind: 'process', values: ['yes', 'no'], rest: 'yes', moves: [{ from: 'yes', to: 'no', by: 'process', when: true }, { from: 'no', to: 'yes', by: 'process', when: true }] });
  for (let i = 0; i < switches; i++) {
    const name = `S${i}`, values = ['open', 'closed'];
    json.variables.push({ name, device: name, kind: 'position', values, rest: 'open', moves: [{ from: 'open', to: 'closed', by: 'operator' }, { from: 'closed', to: 'open', by: 'operator' }] });
  }
  json.variables.push({ name: 'F1', device: 'F1', kind: 'position', values: ['whole', 'blown'], rest: 'whole', moves: [{ from: 'blown', to: 'whole', by: 'operator' }] });
  const closers = [...Array(switches).keys()].map(i => var_(`S${i}`, 'closed'));
  for (let i = 0; i < armatures; i++) {
    const name = `K${i}`, coil = [net(), net()], volts = d.pick([[100, 140], [400, 500], [200, 300], [20, 30]]);
    json.variables.push({
      name, device: name, kind: 'armature', values: ['out', 'in'], rest: 'out', coil, moves: [
        { from: 'out', to: 'in', by: 'settle', when: { energised: coil, grade: 'solid', volts }, may: { energised: coil, grade: 'loose', volts } },
        { from: 'in', to: 'out', by: 'settle', when: { not: { energised: coil, grade: 'loose', volts } }, may: { not: { energised: coil, grade: 'solid', volts } } },
      ],
    });
    json.elements.push({ id: `${name}.coil`, device: name, a: coil[0], b: coil[1], type: 'load', closed: true });
    closers.push(var_(name, 'in'), { not: var_(name, 'in') });
  }
  json.elements.push({ id: 'bond', device: 'B', a: 'n4', b: 'n0', type: 'conductor', closed: d.chance(0.5) ? true : var_('S0', 'closed') });
  json.elements.push({ id: 'F1', device: 'F1', a: 'n1', b: net(), type: 'thermal', closed: var_('F1', 'whole') });
  json.devices.push({ tag: 'F1', opensOnShort: [{ variable: 'F1', to: 'blown', elements: ['F1'] }] });
  const types = ['conductor', 'contact', 'contact', 'contact', 'contact', 'semiconductor', 'thermal', 'series', 'load', 'load', 'diode', 'fault'];
  while (json.elements.length < elements) {
    const type = d.pick(types);
    json.elements.push({ id: `e${json.elements.length}`, device: 'X', power: true, a: net(), b: net(), type, closed: type === 'load' ? true : d.chance(0.15) ? true : d.pick(closers) });
  }
  const feed = [net(), net(), net()];
  json.loads.push({ name: 'M1', elements: json.elements.filter(e => e.type === 'load').slice(0, 2).map(e => e.id), modes: [{ name: 'run', speed: 1, feed, joined: [], apart: [], turns: 'forward' }] });
  json.constraints.push({ name: 'lock', kind: 'mechanical', holds: { not: { all: [var_('K0', 'in'), var_('K1', 'in')] } } });
  for (let i = 0; i < switches; i++) {
    json.devices.push({ tag: `S${i}`, isolates: { variable: `S${i}`, elements: json.elements.filter(e => e.closed?.var === `S${i}`).map(e => e.id) } });
    json.powered.push(`S${i}=closed`);
  }
  return json;
}
