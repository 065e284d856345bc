// Which failures suffice for a condition, by looking at every state that a budget of failures reaches.

import { CONTACT } from './netlist.mjs';
import { Inquiry } from './questions.mjs';

/**
 * The minimal sets of failure variables that suffice, of no more members than the budget: a failure never heals, so the
 * failures of a reached state are those that could not be spared on the way taken, and a smaller set shows in another
 * state. With each set a shortest story to a state in which just its members have failed.
 * @param {import('./netlist.mjs').Panel} panel
 * @param {{condition: any, settled?: boolean, failures?: number, limit?: number}} request
 * @returns {{sets: string[][], stories: {variable: string, from: string, to: string, by: string, optional: boolean}[][], reachable: number}}
 */
export function sufficient(panel, { condition, settled = true, failures = 1, limit = 200_000 }) {
  const inquiry = new Inquiry(panel, [condition]), { space } = inquiry;
  const found = new Map();
  let count = 0;
  // Visits the nearest states first, and all of them.
  const { from } = space.stories(failures, i => {
    if (++count > limit) throw new Error(`more than ${limit} reachable states`);
    if ((settled && !space.settled(i)) || !inquiry.holds(0, i)) return false;
    const members = failed(panel, space, i), key = members.join(' ');
    if (!found.has(key)) found.set(key, { members, at: i });
    return false;
  });
  const all = [...found.values()];
  const minimal = all.filter(s => !all.some(t => t !== s && t.members.every(name => s.members.includes(name))));
  return { sets: minimal.map(s => s.members), stories: minimal.map(s => space.story(from, s.at).moves), reachable: count };
}

/** The failure variables that stand away from rest. */
const failed = (panel, space, i) =>
  panel.variables.filter((v, index) => v.kind === 'failure' && space.valueAt(i, index) !== v.rest).map(v => v.name);

/**
 * For each failure whether it shows itself. What shows is the value of every position, process, supply and trip
 * variable and of a device's own cell (its indicator) unless a main contact follows it, and which loads run; one that carries
 * current and does not run may be seen either way. A response is what shows in a quiet state, and what shows when after one move at most
 * that is not urgent, and what follows by urgent and delay moves, it is quiet again. Revealed: some response in which
 * nothing is left open ends with this failure alone and is none that the sound panel may give.
 * @param {import('./netlist.mjs').Panel} panel @param {{limit?: number}} request
 * @returns {Record<string, 'impossible'|'hidden'|'revealed'>}
 */
export function revealed(panel, { limit = 200_000 } = {}) {
  const loads = panel.loads.filter(l => l.modes.length > 0), count = loads.length;
  const inquiry = new Inquiry(panel, [
    ...loads.map(l => ({ runs: l.name, turns: 'any' })),
    ...loads.map(l => ({
      all: [
        { any: l.elements.map(e => ({ carries: panel.elements[e].id })) },
        { any: l.terminals.map(net => ({ live: panel.nets[net] })) },
      ],
    })),
  ]), { space } = inquiry;
  const { order } = space.reachable(1, limit);
  const visible = panel.variables.map(v => SEEN.includes(v.kind) || hasIndicator(panel, v));
  const parts = i => panel.variables.map((_, index) => visible[index] ? space.valueAt(i, index) : '').join();
  // Of each load: it runs, it does not, or it may be seen either way.
  const looks = i => loads.map((_, l) => inquiry.holds(l, i) ? '1' : inquiry.holds(count + l, i) ? '01' : '0');
  const seen = i => looks(i).reduce((all, one) => all.flatMap(s => [...one].map(c => s + c)), [parts(i) + '|']);
  const cache = new Map(), shows = i => cache.get(i) ?? (cache.set(i, seen(i)), cache.get(i));
  const doubtful = i => shows(i).length > 1;
  const quiet = order.filter(i => space.quiet(i));
  const sound = new Set(), told = new Map(panel.variables.filter(v => v.kind === 'failure').map(v => [v.name, 'impossible']));
  for (const i of order) for (const name of failed(panel, space, i)) if (told.get(name) === 'impossible') told.set(name, 'hidden');
  for (const i of quiet) {
    if (space.failuresAt(i) > 0) continue;
    for (const to of responses(space, i, 0, true)) for (const a of shows(i)) for (const b of shows(to)) sound.add(`${a}>${b}`);
  }
  for (const i of quiet.filter(i => !open(space, i) && !doubtful(i))) {
    for (const to of responses(space, i, 1, false)) {
      const names = failed(panel, space, to);
      if (names.length === 1 && !open(space, to) && !doubtful(to) && !sound.has(`${shows(i)[0]}>${shows(to)[0]}`)) told.set(names[0], 'revealed');
    }
  }
  return Object.fromEntries(told);
}

const SEEN = ['position', 'process', 'supply', 'trip'];

/** The own state of a safety relay, a soft starter or a drive; a contactor that latches has no indicator. */
const hasIndicator = (panel, v) => v.kind === 'cell' && v.name === v.device
  && !panel.elements.some(e => e.type === CONTACT && e.power && mentions(e.guards[0], v.name));

/** A guard over variables names this one. */
const mentions = (guard, name) => guard?.var === name
  || [guard?.not, ...(guard?.all ?? []), ...(guard?.any ?? [])].some(part => part && mentions(part, name));

/** An optional move is there. */
const open = (space, i) => space.of(i).optional.length > 0;

/** The quiet states that responses from a quiet state end in. */
function responses(space, from, budget, optionalToo) {
  const starts = new Set([from]), ends = new Set();
  step(space, from, budget, optionalToo, () => true, to => starts.add(to));
  const order = [...starts], seen = new Set(order);
  for (const i of order) {
    if (space.quiet(i)) ends.add(i);
    step(space, i, 0, optionalToo, by => by === 'settle' || by === 'short' || by === 'delay', to => {
      if (!seen.has(to)) { seen.add(to); order.push(to); }
    });
  }
  return ends;
}

/** Calls with the states that one move leads to. */
function step(space, i, budget, optionalToo, among, take) {
  const { optional } = space.of(i), may = new Set(optional.filter((_, k) => k % 2 === 0));
  space.moves(i, budget, (code, to) => {
    if ((optionalToo || !may.has(code)) && among(space.rules.by(code))) take(to);
  });
}
