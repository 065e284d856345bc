// What the conductors reach: by conductor at each grade (for energised, fed, single, runs), and as a whole (live).

import { PLUS, MINUS } from './netlist.mjs';

const AC_BIT = 1, PLUS_BIT = 2, MINUS_BIT = 4;
const FORWARD = AC_BIT | PLUS_BIT, BACKWARD = AC_BIT | MINUS_BIT;
const bitOf = polarity => polarity === PLUS ? PLUS_BIT : polarity === MINUS ? MINUS_BIT : AC_BIT;

/** How a net is live. */
export const DEAD = 0, BY_LOAD_REACH = 1, LOOSELY = 2;

export class Reach {
  /** @param {import('./graph.mjs').Graph} graph @param {import('./sources.mjs').Sources} sources */
  constructor(graph, sources) {
    this.graph = graph;
    this.sources = sources;
    const panel = this.panel = graph.panel;
    const nets = panel.nets.length, cells = nets * panel.supplies.length;
    this.solidMask = new Int32Array(cells);
    this.directedMask = panel.diodes.length === 0 ? this.solidMask : new Int32Array(cells);
    this.carryingMask = new Int32Array(cells);
    this.looseMask = new Int32Array(cells);
    this.looseLabel = new Int32Array(nets);
    this.earthTied = new Uint8Array(nets);
    this.marks = new Uint8Array(nets);
    this.queue = new Int32Array(nets);
    this.buildNeighbours();
    this.forget();
  }

  buildNeighbours() {
    const { panel } = this, around = panel.nets.map(() => []);
    panel.elements.forEach(e => { around[e.a].push(e.index, e.b); around[e.b].push(e.index, e.a); });
    this.neighbours = around.map(list => Int32Array.from(list));
    /** For each net, the couplings it drives. */
    this.drives = panel.nets.map(() => []);
    panel.couplings.forEach((c, i) => {
      for (const net of new Set(c.first ? c.windings[0] : c.windings.flat())) this.drives[net].push(i);
    });
    /** For each coupling, the nets its virtual net reaches. With `first` those are the other windings only. */
    this.driven = panel.couplings.map(c => Int32Array.from(new Set((c.first ? c.windings.slice(1) : c.windings).flat())));
    this.coupled = new Uint8Array(panel.couplings.length);
  }

  /** The sources have changed. */
  forget() { this.hasSolid = this.hasDirected = this.hasCarrying = this.hasLoose = this.hasEarthTied = false; }

  /** Conductors per solid component and supply, diodes not passed. */
  solid() {
    if (!this.hasSolid) { this.fill(this.solidMask, this.graph.solid, this.graph.solidCount); this.hasSolid = true; }
    return this.solidMask;
  }

  /** The same, each conductor then spread through diodes in its own direction. Used by energised at grade solid. */
  directed() {
    if (!this.hasDirected) {
      const solid = this.solid();
      if (this.directedMask !== solid) { this.directedMask.set(solid); this.spreadThroughDiodes(this.directedMask); }
      this.hasDirected = true;
    }
    return this.directedMask;
  }

  /** Conductors per load-reach component and supply. Reading: fed and single do not pass diodes below grade loose. */
  carrying() {
    if (!this.hasCarrying) { this.fill(this.carryingMask, this.graph.carrying, this.graph.carryingCount); this.hasCarrying = true; }
    return this.carryingMask;
  }

  fill(mask, label, count) {
    const { supplies } = this.panel, width = supplies.length;
    mask.fill(0, 0, count * width);
    for (const { index, conductors } of supplies) {
      const present = this.sources.mask[index];
      if (present !== 0) for (let p = 0; p < conductors.length; p++) if (present >> p & 1) mask[label[conductors[p].net] * width + index] |= 1 << p;
    }
  }

  spreadThroughDiodes(mask) {
    const { panel, graph } = this, width = panel.supplies.length;
    for (let again = true; again;) {
      again = false;
      for (const e of panel.diodes) {
        if (graph.closed[e] === 0) continue;
        const a = graph.solid[panel.ends[2 * e]] * width, b = graph.solid[panel.ends[2 * e + 1]] * width;
        for (let s = 0; s < width; s++) {
          const toB = mask[b + s] | mask[a + s] & panel.supplies[s].anode;
          const toA = mask[a + s] | toB & panel.supplies[s].cathode;
          if (toB !== mask[b + s] || toA !== mask[a + s]) { mask[b + s] = toB; mask[a + s] = toA; again = true; }
        }
      }
    }
  }

  /** Conductors per net and supply through everything loose, couplings as links between like-numbered terminals. */
  loose() {
    if (this.hasLoose) return this.looseMask;
    const { panel, looseMask, looseLabel } = this, width = panel.supplies.length;
    this.labelLoose();
    looseMask.fill(0);
    for (const { index, conductors } of panel.supplies) {
      conductors.forEach((c, p) => { if (this.sources.mask[index] >> p & 1) looseMask[looseLabel[c.net] * width + index] |= 1 << p; });
    }
    for (let again = true; again;) {
      again = false;
      for (const { a, b, directed } of panel.links) {
        if (!directed) continue;
        for (let s = 0; s < width; s++) {
          const from = looseMask[looseLabel[a] * width + s], at = looseLabel[b] * width + s;
          if ((from & ~looseMask[at]) !== 0) { looseMask[at] |= from; again = true; }
        }
      }
    }
    this.hasLoose = true;
    return looseMask;
  }

  /** Nets joined by whatever conducts or leaks in both directions. */
  labelLoose() {
    const { panel, graph, looseLabel } = this, parent = Int32Array.from(panel.nets, (_, i) => i);
    const root = i => { while (parent[i] !== i) i = parent[i]; return i; };
    const join = (a, b) => { a = root(a); b = root(b); if (a < b) parent[b] = a; else parent[a] = b; };
    for (const e of panel.elements) if (graph.closed[e.index] || graph.leaking[e.index]) join(e.a, e.b);
    for (const link of panel.links) if (!link.directed) join(link.a, link.b);
    for (let i = 0; i < parent.length; i++) looseLabel[i] = root(i);
  }

  /**
   * Earth-tied: tied hard; or bonded, and no unearthed conductor reaches the net solidly, faults left out, without
   * passing a net that is tied hard. Reading: such a conductor spreads through diodes in its own direction here too,
   * as live uses directed reach; that leaves fewer nets tied, so it errs on the live side.
   */
  findEarthTied() {
    if (this.hasEarthTied) return this.earthTied;
    const { graph, panel, earthTied, sources } = this, { avoiding } = graph;
    const reached = new Uint8Array(graph.avoidingCount);
    sources.findEarthed(graph);
    for (const { index, conductors } of panel.supplies) {
      const loose = sources.mask[index] & ~sources.earthed[index];
      if (loose !== 0) for (let p = 0; p < conductors.length; p++) if (loose >> p & 1) reached[avoiding[conductors[p].net]] |= bitOf(conductors[p].polarity);
    }
    this.spreadFlags(reached, avoiding, graph.hard);
    for (let i = 0; i < earthTied.length; i++) {
      earthTied[i] = graph.hard[i] === 1 || (graph.bonded[i] === 1 && reached[avoiding[i]] === 0) ? 1 : 0;
    }
    this.hasEarthTied = true;
    return earthTied;
  }

  /** Spreads kinds of conductor through closed diodes, each in its own direction. */
  spreadFlags(flags, label, avoid) {
    const { panel, graph } = this;
    if (panel.diodes.length === 0) return;
    for (let again = true; again;) {
      again = false;
      for (const e of panel.diodes) {
        const a = panel.ends[2 * e], b = panel.ends[2 * e + 1];
        if (graph.closed[e] === 0 || (avoid !== null && (avoid[a] || avoid[b]))) continue;
        const from = label[a], to = label[b];
        const toB = flags[to] | flags[from] & FORWARD, toA = flags[from] | toB & BACKWARD;
        if (toB !== flags[to] || toA !== flags[from]) { flags[to] = toB; flags[from] = toA; again = true; }
      }
    }
  }

  /**
   * Marks every net as DEAD, live BY_LOAD_REACH or LOOSELY live, counting the unearthed conductors of these supplies.
   *
   * The first part goes along any path, through earth-tied nets too. The second passes no earth-tied net. Reading: nor
   * does it start from one, as section 6 has it ("each link guarded by neither end earth-tied"); else all that hangs
   * on the earth of a resistance-earthed system would be live for ever. The words "after that net" alone would let
   * it start there: the reading `looseFromEarthTied` does that.
   * @param {number[]} supplies
   * @param {boolean} couplings
   * @param {Uint8Array} marks
   */
  flood(supplies, couplings, marks) {
    const { graph, panel, queue } = this, earthTied = this.findEarthTied(), { carrying } = graph;
    const reached = new Uint8Array(graph.carryingCount);
    for (const s of supplies) {
      const { conductors } = panel.supplies[s], loose = this.sources.mask[s] & ~this.sources.earthed[s];
      if (loose !== 0) for (let p = 0; p < conductors.length; p++) if (loose >> p & 1) reached[carrying[conductors[p].net]] |= bitOf(conductors[p].polarity);
    }
    this.spreadFlags(reached, carrying, null);
    let waiting = 0;
    for (let i = 0; i < marks.length; i++) {
      marks[i] = DEAD;
      if (reached[carrying[i]] === 0) continue;
      marks[i] = BY_LOAD_REACH;
      if (earthTied[i] === 0 || panel.readings.looseFromEarthTied) queue[waiting++] = i;
    }
    if (waiting > 0) this.floodLoosely(waiting, couplings, marks, earthTied);
    for (let i = 0; i < marks.length; i++) if (earthTied[i]) marks[i] = DEAD;
    return marks;
  }

  floodLoosely(waiting, couplings, marks, earthTied) {
    const { graph, neighbours, drives, driven, coupled, queue } = this;
    const enter = net => { if (marks[net] === DEAD && earthTied[net] === 0) { marks[net] = LOOSELY; queue[waiting++] = net; } };
    coupled.fill(0);
    for (let head = 0; head < waiting; head++) {
      const net = queue[head], around = neighbours[net];
      for (let k = 0; k < around.length; k += 2) {
        const e = around[k];
        if (graph.closed[e] === 1 || graph.leaking[e] === 1) enter(around[k + 1]);
      }
      if (!couplings) continue;
      for (const c of drives[net]) {
        if (coupled[c] === 1) continue;
        coupled[c] = 1;
        for (const other of driven[c]) enter(other);
      }
    }
  }

  /** Whether a net is in one solid component with another. */
  joined(a, b) { return this.graph.solid[a] === this.graph.solid[b]; }

  /** Conductors of a supply that reach a net at a grade. @param {'solid'|'load'|'loose'} grade */
  reaching(net, supply, grade) {
    const width = this.panel.supplies.length;
    if (grade === 'loose') { const mask = this.loose(); return mask[this.looseLabel[net] * width + supply]; }
    if (grade === 'load') return this.carrying()[this.graph.carrying[net] * width + supply];
    return this.solid()[this.graph.solid[net] * width + supply];
  }
}
