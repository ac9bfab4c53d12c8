/**
 * The value type of all computing: a mass and, for every source of error it depends on, its signed standard contribution. What two values
 * share (a scale in one calibration epoch, an estimating method, a density) cancels or adds as it must when they are subtracted or added.
 * No variance is ever summed anywhere else. Method: JCGM 100:2008, equation (13) and 5.2.2 (from memory; methods.md 1.2).
 */

/** A mass in micrograms with its contributions, one per error source, in micrograms at one standard uncertainty, signed. */
export interface Measured {
  readonly ug: number;
  readonly parts: ReadonlyMap<string, number>;
}

/** The contributions of what is exactly known: one list for all of them. */
const noParts: ReadonlyMap<string, number> = new Map();

/** A value that is exactly known. */
export const exactly = (ug: number): Measured => ({ ug, parts: noParts });

/** A value with one error source. */
export const measured = (ug: number, parts: Iterable<readonly [string, number]>): Measured => {
  const map = new Map<string, number>();
  for (const [source, u] of parts) if (u !== 0) map.set(source, (map.get(source) ?? 0) + u);
  return { ug, parts: map };
};

/** factor · value: the contributions scale with it. One times a value is that value, and no second copy of it. */
export function scaled(value: Measured, factor: number): Measured {
  if (factor === 1) return value;
  const parts = new Map<string, number>();
  for (const [source, u] of value.parts) if (u * factor !== 0) parts.set(source, u * factor);
  return { ug: value.ug * factor, parts };
}

/**
 * A sum that is added to in place: the one way values are summed, so that a long sum does not copy what it has at every step. While it holds one
 * value it shares that value's contributions: most places of a book get one amount and give it away again whole.
 */
export class RunningTotal implements Measured {
  ug = 0;
  parts: ReadonlyMap<string, number> = noParts;
  /** The contributions, once they are this sum's own. */
  #own: Map<string, number> | null = null;

  /** Adds the value, or with −1 takes it off; contributions of one source add with their signs. */
  add(value: Measured, sign: 1 | -1 = 1): this {
    this.ug += sign * value.ug;
    if (value.parts.size === 0) return this;
    if (this.#own === null) {
      // what another sum holds may still change there, so it is never shared
      if (sign === 1 && this.parts.size === 0 && !(value instanceof RunningTotal)) {
        this.parts = value.parts;
        return this;
      }
      if (sign === -1 && this.parts === value.parts) {
        this.parts = noParts;
        return this;
      }
      this.#own = new Map(this.parts);
      this.parts = this.#own;
    }
    for (const [source, u] of value.parts) {
      const next = (this.#own.get(source) ?? 0) + sign * u;
      if (next === 0) this.#own.delete(source);
      else this.#own.set(source, next);
    }
    return this;
  }
}

const isNought = (value: Measured): boolean => value.ug === 0 && value.parts.size === 0;

/** Sum of any number of values; contributions of one source add with their signs. */
export function total(values: readonly Measured[]): Measured {
  const sum = new RunningTotal();
  for (const value of values) sum.add(value);
  return { ug: sum.ug, parts: sum.parts };
}

// nothing added or taken off leaves the value itself: no second copy of it is kept

export const added = (a: Measured, b: Measured): Measured => (isNought(a) ? b : isNought(b) ? a : total([a, b]));

export function less(a: Measured, b: Measured): Measured {
  if (isNought(b)) return a;
  const sum = new RunningTotal().add(a).add(b, -1);
  return { ug: sum.ug, parts: sum.parts };
}

/** Combined standard uncertainty in micrograms (k = 1). */
export function uOf(value: Measured): number {
  let squares = 0;
  for (const u of value.parts.values()) squares += u * u;
  return Math.sqrt(squares);
}

export const nothing: Measured = exactly(0);
