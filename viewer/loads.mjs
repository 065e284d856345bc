// Load modes: does a load run, and which way round.

import { PLUS, MINUS } from './netlist.mjs';

export const RUNS_FORWARD = 1, RUNS_REVERSE = 2, RUNS = 4, SINGLE_PHASING = 8, STANDS_LIVE = 16;

export class Loads {
  /** @param {import('./graph.mjs').Graph} graph @param {import('./sources.mjs').Sources} sources */
  constructor(graph, sources) {
    this.graph = graph;
    this.sources = sources;
    this.panel = graph.panel;
    this.used = new Uint8Array(this.panel.nets.length);
  }

  /** @param {number} load @returns {number} RUNS_FORWARD, RUNS_REVERSE and RUNS as bits */
  runs(load) {
    let bits = 0;
    for (const mode of this.panel.loads[load].modes) if (this.connected(mode)) bits |= this.feeds(mode);
    return bits;
  }

  /** Terminals that must be joined are, and those that must be apart are. */
  connected(mode) {
    const { solid } = this.graph;
    const allJoined = mode.joined.every(group => group.every(net => solid[net] === solid[group[0]]));
    return allJoined && mode.apart.every(group => new Set(group.map(net => solid[net])).size === group.length);
  }

  feeds(mode) {
    let bits = 0;
    for (const s of this.panel.working) {
      if (this.sources.mask[s] !== 0) bits |= mode.feed.length === 3 ? this.feedsThree(mode, s) : this.feedsTwo(mode, s);
    }
    return bits;
  }

  feedsThree(mode, s) {
    const { conductors, triangles } = this.panel.supplies[s], mask = this.sources.mask[s];
    let bits = 0;
    for (const { p, q, r, forward } of triangles) {
      if ((mask >> p & mask >> q & mask >> r & 1) === 0) continue;
      if (this.haveRoutes([conductors[p].net, conductors[q].net, conductors[r].net], mode.feed)) bits |= turning(mode, forward);
    }
    return bits;
  }

  feedsTwo(mode, s) {
    const { conductors, volts } = this.panel.supplies[s], mask = this.sources.mask[s], n = conductors.length;
    let bits = 0;
    for (let p = 0; p < n; p++) if (mask >> p & 1) for (let q = 0; q < n; q++) {
      if ((mask >> q & 1) === 0 || volts[p * n + q] === 0) continue;
      if (this.haveRoutes([conductors[p].net, conductors[q].net], mode.feed)) bits |= turning(mode, positive(conductors[p], conductors[q]));
    }
    return bits;
  }

  /** Paths, one from each source to its terminal, through components and closed series elements, sharing no component. */
  haveRoutes(from, to) {
    const { solid, carrying } = this.graph, count = from.length;
    let direct = true;
    for (let i = 0; i < count; i++) {
      if (carrying[from[i]] !== carrying[to[i]]) return false;
      for (let j = 0; j < i; j++) if (solid[from[i]] === solid[from[j]] || solid[to[i]] === solid[to[j]]) return false;
      direct = direct && solid[from[i]] === solid[to[i]];
    }
    return direct || this.search(from, to);
  }

  search(from, to) {
    const { panel, graph, used } = this, { solid, closed } = graph, { ends } = panel;
    const starts = from.map(net => solid[net]), goals = to.map(net => solid[net]);
    used.fill(0);
    // No path may touch where another begins or ends.
    for (const c of starts) used[c] = 1;
    for (let i = 0; i < goals.length; i++) {
      if (starts.some((c, j) => c === goals[i] && j !== i)) return false;
      used[goals[i]] = 1;
    }
    const step = (path, at) => {
      if (at === goals[path]) return path + 1 === goals.length || step(path + 1, starts[path + 1]);
      for (const e of panel.series) {
        if (closed[e] === 0) continue;
        const a = solid[ends[2 * e]], b = solid[ends[2 * e + 1]];
        const next = a === at ? b : b === at ? a : -1;
        if (next < 0 || next === at || (used[next] === 1 && next !== goals[path])) continue;
        used[next] = 1;
        if (step(path, next)) return true;
        if (next !== goals[path]) used[next] = 0;
      }
      return false;
    };
    return step(0, starts[0]);
  }
}

/** For direct current polarity gives the direction; two alternating conductors have none. */
function positive(p, q) {
  if (p.polarity === PLUS && q.polarity === MINUS) return true;
  if (p.polarity === MINUS && q.polarity === PLUS) return false;
  return p.polarity === q.polarity && p.polarity !== 0 ? p.re > q.re : null;
}

/**
 * Direction of a mode fed in this orientation: `turns` is the way it turns when fed forward. Reading: a mode without
 * `turns` turns as it is fed; between two alternating conductors the mode's own word decides.
 * @param {any} mode @param {boolean|null} forward
 */
function turning(mode, forward) {
  const turns = mode.turns ?? (forward === null ? null : 'forward');
  if (turns !== 'forward' && turns !== 'reverse') return RUNS;
  const ahead = (turns === 'forward') === (forward ?? true);
  return RUNS | (ahead ? RUNS_FORWARD : RUNS_REVERSE);
}
