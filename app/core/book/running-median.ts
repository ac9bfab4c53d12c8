/**
 * The median of a history that grows: every run is held against all runs of its source before it, so the median is asked once for each. The lower
 * half of the values lies in a heap with its largest on top, the upper half in one with its smallest on top; no value is ever dropped.
 */

/** A heap of numbers: no value comes `before` its top. */
class Heap {
  readonly values: number[] = [];
  readonly before: (a: number, b: number) => boolean;

  constructor(before: (a: number, b: number) => boolean) {
    this.before = before;
  }

  at(i: number): number {
    return this.values[i] ?? 0;
  }

  push(value: number): void {
    const { values } = this;
    let i = values.push(value) - 1;
    for (let up = (i - 1) >> 1; i > 0 && this.before(value, this.at(up)); up = (i - 1) >> 1) {
      values[i] = this.at(up);
      i = up;
    }
    values[i] = value;
  }

  /** Takes the top off. */
  pop(): number {
    const { values } = this;
    const top = this.at(0);
    const last = values.pop() ?? 0;
    const { length } = values;
    if (length === 0) return top;
    let i = 0;
    for (;;) {
      let down = 2 * i + 1;
      if (down + 1 < length && this.before(this.at(down + 1), this.at(down))) down += 1;
      if (down >= length || !this.before(this.at(down), last)) break;
      values[i] = this.at(down);
      i = down;
    }
    values[i] = last;
    return top;
  }
}

export class RunningMedian {
  readonly #lower = new Heap((a, b) => a > b);
  readonly #upper = new Heap((a, b) => a < b);

  /** How many values it was given. */
  get count(): number {
    return this.#lower.values.length + this.#upper.values.length;
  }

  add(value: number): void {
    this.#lower.push(value);
    this.#upper.push(this.#lower.pop());
    if (this.#upper.values.length > this.#lower.values.length) this.#lower.push(this.#upper.pop());
  }

  /** The middle value, or the mean of the middle two; 0 while there is none. */
  median(): number {
    const [low, high] = [this.#lower.at(0), this.#upper.at(0)];
    return this.#lower.values.length > this.#upper.values.length ? low : (low + high) / 2;
  }
}
