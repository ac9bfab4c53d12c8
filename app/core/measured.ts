/**
 * The value type of all computing: a mass and, for every source of error it depends on, its signed standard contribution. What two values
 * share (a scale in one calibration epoch, an estimating method, a density) cancels or adds as it must when they are subtracted or added.
 * No variance is ever summed anywhere else. Method: JCGM 100:2008, equation (13) and 5.2.2 (from memory; methods.md 1.2).
 *
 * A sum or a share remembers what it is of and works its contributions out when somebody asks: a book has some hundred thousand values, and few of them
 * are ever opened.
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

export const nothing: Measured = exactly(0);

/** Adds one contribution to those gathered; what cancels to nothing is gone. */
function gather(into: Map<string, number>, source: string, u: number): void {
  const next = (into.get(source) ?? 0) + u;
  if (next === 0) into.delete(source);
  else into.set(source, next);
}

/** A value with one or two error sources, as every weighing has them. */
class FewSources implements Measured {
  readonly ug: number;
  readonly source: string;
  readonly u: number;
  readonly other: string | null;
  readonly otherU: number;

  constructor(ug: number, source: string, u: number, other: string | null, otherU: number) {
    this.ug = ug;
    this.source = source;
    this.u = u;
    this.other = other;
    this.otherU = otherU;
  }

  get parts(): ReadonlyMap<string, number> {
    const parts = new Map<string, number>();
    gatherAll(this, 1, parts);
    return parts;
  }
}

/** What others were put together to: `factor` of `of`, and where there is a second, `sign` of it. */
class Combined implements Measured {
  readonly ug: number;
  readonly depth: number;
  private left: Measured | null;
  private readonly factor: number;
  private right: Measured | null;
  private readonly sign: 1 | -1;
  private made: ReadonlyMap<string, number> | null = null;

  constructor(ug: number, of: Measured, factor: number, second: Measured | null, sign: 1 | -1) {
    this.ug = ug;
    this.depth = 1 + Math.max(depthOf(of), second === null ? 0 : depthOf(second));
    this.left = of;
    this.factor = factor;
    this.right = second;
    this.sign = sign;
    // long chains are worked out at once: nobody follows them to the end of the stack
    if (this.depth > deepest) void this.parts;
  }

  /** Gathers what it is made of. */
  gatherInto(into: Map<string, number>, factor: number): void {
    if (this.made !== null) gatherParts(this.made, factor, into);
    else {
      if (this.left !== null) gatherAll(this.left, factor * this.factor, into);
      if (this.right !== null) gatherAll(this.right, factor * this.sign, into);
    }
  }

  get parts(): ReadonlyMap<string, number> {
    if (this.made !== null) return this.made;
    const parts = new Map<string, number>();
    this.gatherInto(parts, 1);
    this.made = parts;
    this.left = null;
    this.right = null;
    return parts;
  }
}

const deepest = 16;
const depthOf = (value: Measured): number => (value instanceof Combined ? value.depth : 0);

function gatherParts(parts: ReadonlyMap<string, number>, factor: number, into: Map<string, number>): void {
  for (const [source, u] of parts) gather(into, source, factor * u);
}

/** Gathers factor times the contributions of a value. */
function gatherAll(value: Measured, factor: number, into: Map<string, number>): void {
  if (value instanceof FewSources) {
    gather(into, value.source, factor * value.u);
    if (value.other !== null) gather(into, value.other, factor * value.otherU);
  } else if (value instanceof Combined) value.gatherInto(into, factor);
  else gatherParts(value.parts, factor, into);
}

/** Whether it is plain without looking closer that a value has no error. */
const isExact = (value: Measured): boolean =>
  !(value instanceof FewSources || value instanceof Combined) && value.parts.size === 0;

/** A value with one error source or two that differ; a contribution of nothing is none. */
export function measuredBy(ug: number, source: string, u: number, other: string | null = null, otherU = 0): Measured {
  if (u === 0) return other === null || otherU === 0 ? exactly(ug) : new FewSources(ug, other, otherU, null, 0);
  return otherU === 0 ? new FewSources(ug, source, u, null, 0) : new FewSources(ug, source, u, other, otherU);
}

/** A value with its error sources; what is named twice adds. */
export const measured = (ug: number, parts: Iterable<readonly [string, number]>): Measured => {
  const map = new Map<string, number>();
  for (const [source, u] of parts) if (u !== 0) map.set(source, (map.get(source) ?? 0) + u);
  return { ug, parts: map };
};

/** What stands for a value in a sum that outlives it: a running total goes on, so its contributions are copied. */
const standing = (value: Measured): Measured =>
  value instanceof RunningTotal ? { ug: value.ug, parts: new Map(value.parts) } : value;

/** The contributions of a value under another mass: rounded to the microgram, or as far as it is posted. */
export const withMass = (value: Measured, ug: number): Measured =>
  ug === value.ug ? value : isExact(value) ? exactly(ug) : new Combined(ug, standing(value), 1, null, 1);

/** In whole micrograms, with the same contributions. */
export const whole = (value: Measured): Measured => withMass(standing(value), Math.round(value.ug));

/** factor · value: the contributions scale with it. One times a value is that value, and no second copy of it. */
export function scaled(value: Measured, factor: number): Measured {
  if (factor === 1) return value;
  if (factor === 0 || isExact(value)) return exactly(value.ug * factor);
  return new Combined(value.ug * factor, standing(value), factor, null, 1);
}

/**
 * A sum that is added to in place: the one way long sums are made, so that they do not copy what they have at every step. While it holds one
 * value it shares that value's contributions: most places of a book get one amount and give it away again whole.
 */
export class RunningTotal implements Measured {
  ug = 0;
  /** The only value that brought contributions, as long as there is one. */
  #only: Measured | null = null;
  /** The contributions, once they are this sum's own. */
  #own: Map<string, number> | null = null;

  get parts(): ReadonlyMap<string, number> {
    return this.#own ?? this.#only?.parts ?? noParts;
  }

  /** Adds the value, or with −1 takes it off; contributions of one source add with their signs. */
  add(value: Measured, sign: 1 | -1 = 1): this {
    this.ug += sign * value.ug;
    if (isExact(value)) return this;
    if (this.#own === null) {
      // what another sum holds may still change there, so it is never shared
      if (sign === 1 && this.#only === null && !(value instanceof RunningTotal)) {
        this.#only = value;
        return this;
      }
      if (sign === -1 && this.#only === value) {
        this.#only = null;
        return this;
      }
      this.#own = new Map();
      if (this.#only !== null) gatherAll(this.#only, 1, this.#own);
      this.#only = null;
    }
    gatherAll(value, sign, this.#own);
    return this;
  }
}

const isNought = (value: Measured): boolean => value.ug === 0 && value.parts.size === 0;

/** Sum of any number of values; contributions of one source add with their signs. */
export function total(values: readonly Measured[]): Measured {
  const [first, second] = values;
  if (first === undefined) return nothing;
  if (values.length === 1) return standing(first);
  if (values.length === 2 && second !== undefined) return added(first, second);
  const sum = new RunningTotal();
  for (const value of values) sum.add(value);
  return { ug: sum.ug, parts: sum.parts };
}

// nothing added or taken off leaves the value itself: no second copy of it is kept

export function added(a: Measured, b: Measured): Measured {
  if (isNought(a)) return standing(b);
  if (isNought(b)) return standing(a);
  return new Combined(a.ug + b.ug, standing(a), 1, standing(b), 1);
}

export function less(a: Measured, b: Measured): Measured {
  if (isNought(b)) return standing(a);
  if (a === b) return nothing;
  return new Combined(a.ug - b.ug, standing(a), 1, standing(b), -1);
}

/** Combined standard uncertainty in micrograms (k = 1). */
export function uOf(value: Measured): number {
  if (value instanceof FewSources) return Math.sqrt(value.u * value.u + value.otherU * value.otherU);
  const parts = value instanceof Combined ? new Map<string, number>() : value.parts;
  if (value instanceof Combined) gatherAll(value, 1, parts as Map<string, number>);
  let squares = 0;
  for (const u of parts.values()) squares += u * u;
  return Math.sqrt(squares);
}
