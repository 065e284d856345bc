// Settling: strongly connected components of the certain urgent moves, and which of them are bottoms.

/** A table from state to integer, 0 where nothing was set: an array when the panel is small, else a map. */
export class Slots {
  /** @param {number} size */
  constructor(size) {
    if (size <= 1 << 24) this.array = new Int32Array(size);
    else this.map = new Map();
  }
  get(i) { return this.array ? this.array[i] : this.map.get(i) ?? 0; }
  set(i, value) { if (this.array) this.array[i] = value; else this.map.set(i, value); }
}

export class Components {
  /**
   * @param {number} size
   * @param {(state: number) => ArrayLike<number>} next targets of a state
   */
  constructor(size, next) {
    this.next = next;
    this.seen = new Slots(size);
    this.low = new Slots(size);
    /** Component of a state, plus one. */
    this.label = new Slots(size);
    this.bottom = [];
    this.size = [];
    this.time = 0;
    this.stack = [];
  }

  /** Components are numbered as they complete, so a component's successors have smaller numbers. @returns {number} */
  of(state) {
    if (this.label.get(state) === 0) this.walk(state);
    return this.label.get(state) - 1;
  }

  isBottom(state) { return this.bottom[this.of(state)]; }
  sizeOf(state) { return this.size[this.of(state)]; }

  walk(root) {
    const { seen, low, label, stack } = this, path = [root], cursors = [0], targets = [this.enter(root)];
    while (path.length > 0) {
      const top = path.length - 1, state = path[top];
      if (cursors[top] < targets[top].length) {
        const to = targets[top][cursors[top]++];
        if (seen.get(to) === 0) { path.push(to); cursors.push(0); targets.push(this.enter(to)); }
        else if (label.get(to) === 0) low.set(state, Math.min(low.get(state), seen.get(to)));
      } else {
        path.pop(); cursors.pop(); targets.pop();
        if (low.get(state) === seen.get(state)) this.complete(state);
        if (top > 0) low.set(path[top - 1], Math.min(low.get(path[top - 1]), low.get(state)));
      }
    }
  }

  enter(state) {
    this.seen.set(state, ++this.time);
    this.low.set(state, this.time);
    this.stack.push(state);
    return this.next(state);
  }

  complete(root) {
    const component = this.bottom.length, members = [];
    let state;
    do { state = this.stack.pop(); members.push(state); this.label.set(state, component + 1); } while (state !== root);
    const leaves = members.some(member => Array.prototype.some.call(this.next(member), to => this.label.get(to) !== component + 1));
    this.bottom.push(!leaves);
    this.size.push(members.length);
  }
}
