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

/** A value that is exactly known. */
export const exactly = (ug: number): Measured => ({ ug, parts: new Map() });

/** A value with one error source. */
export const measured = (ug: number, parts: Iterable<readonly [string, number]>): Measured => {
  const map = new Map<string, number>();
  for (const [source, u] of parts) if (u !== 0) map.set(source, (map.get(source) ?? 0) + u);
  return { ug, parts: map };
};

/** factor · value: the contributions scale with it. */
export const scaled = (value: Measured, factor: number): Measured =>
  measured(
    value.ug * factor,
    [...value.parts].map(([source, u]) => [source, u * factor] as const),
  );

/** Sum of any number of values; contributions of one source add with their signs. */
export function total(values: readonly Measured[]): Measured {
  let ug = 0;
  const map = new Map<string, number>();
  for (const value of values) {
    ug += value.ug;
    for (const [source, u] of value.parts) {
      const next = (map.get(source) ?? 0) + u;
      if (next === 0) map.delete(source);
      else map.set(source, next);
    }
  }
  return { ug, parts: map };
}

export const added = (a: Measured, b: Measured): Measured => total([a, b]);

export const less = (a: Measured, b: Measured): Measured => total([a, scaled(b, -1)]);

/** Combined standard uncertainty in micrograms (k = 1). */
export const uOf = (value: Measured): number => Math.sqrt([...value.parts.values()].reduce((squares, u) => squares + u * u, 0));

export const nothing: Measured = exactly(0);
