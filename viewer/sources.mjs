// Which conductors are there in a state, and which of them are earthed.

export class Sources {
  /** @param {import('./netlist.mjs').Panel} panel */
  constructor(panel) {
    this.panel = panel;
    const supplies = panel.supplies.length;
    /** Present conductors of each supply by its guards alone. */
    this.offered = new Int32Array(supplies);
    /** Present conductors of each supply that is there: not lost, and its converter active. */
    this.mask = new Int32Array(supplies);
    this.earthed = new Int32Array(supplies);
  }

  /** @param {Int32Array} values */
  set(values) {
    for (const { index, present, conductors } of this.panel.supplies) {
      let mask = 0;
      if (present(values)) for (let p = 0; p < conductors.length; p++) if (conductors[p].present(values)) mask |= 1 << p;
      this.offered[index] = mask;
    }
  }

  /** Primary supplies only; converters are added by `add`. @param {Uint8Array|null} lost */
  begin(lost) {
    for (const { index, converter } of this.panel.supplies) {
      this.mask[index] = converter >= 0 || (lost !== null && lost[index]) ? 0 : this.offered[index];
    }
  }

  add(supply) { this.mask[supply] = this.offered[supply]; }

  /**
   * A conductor whose source net is bonded is earthed; when two of different voltage of one supply are bonded, only
   * those tied hard stay earthed. Reading: an absent conductor is not counted among the two.
   * @param {import('./graph.mjs').Graph} graph
   */
  findEarthed(graph) {
    for (const { index, conductors, volts } of this.panel.supplies) {
      const mask = this.mask[index], n = conductors.length;
      let bonded = 0, hard = 0;
      for (let p = 0; p < n; p++) {
        if ((mask >> p & 1) === 0 || graph.bonded[conductors[p].net] === 0) continue;
        bonded |= 1 << p;
        if (graph.hard[conductors[p].net] === 1) hard |= 1 << p;
      }
      this.earthed[index] = differ(bonded, volts, n) ? hard : bonded;
    }
  }
}

/** Whether two conductors of the set have different voltages. */
export function differ(mask, volts, n) {
  for (let p = 0; p < n; p++) if (mask >> p & 1) for (let q = p + 1; q < n; q++) if (mask >> q & 1 && volts[p * n + q] !== 0) return true;
  return false;
}
