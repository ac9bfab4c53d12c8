/**
 * How far results of one method may lie apart: the repeat limit of one laboratory, the range of several results, and the critical difference of the means
 * of two laboratories. At 95 %; says nothing of which is right. Source: ISO 5725-6 (from memory; methods.md 5.2).
 */

export interface Spread {
  /** Standard deviation of results in one laboratory, and between laboratories, in one unit; the second is not below the first. */
  readonly repeatS: number;
  readonly betweenS: number;
}

/** Factors f(n) for the range of n results, n = 2 to 6. */
const rangeFactors = [2.8, 3.3, 3.6, 3.9, 4.0] as const;
const two = rangeFactors[0];

/** Most results whose range this knows a limit for. */
export const mostResults = rangeFactors.length + 1;

/** r = 2.8 s: two results of one laboratory. */
export const repeatLimit = ({ repeatS }: Spread): number => two * repeatS;

/** R = 2.8 s: one result of each of two laboratories. */
export const betweenLimit = ({ betweenS }: Spread): number => two * betweenS;

/** Greatest range of n results of one laboratory; null for one result, and beyond six. */
export const rangeLimit = ({ repeatS }: Spread, n: number): number | null => {
  const factor = rangeFactors[n - 2];
  return factor === undefined ? null : factor * repeatS;
};

/** Greatest difference of the means of n1 results of one laboratory and n2 of another: √(R² − r² (1 − 1/(2 n1) − 1/(2 n2))). */
export const criticalDifference = (spread: Spread, n1: number, n2: number): number =>
  Math.sqrt(betweenLimit(spread) ** 2 - repeatLimit(spread) ** 2 * (1 - 1 / (2 * n1) - 1 / (2 * n2)));
