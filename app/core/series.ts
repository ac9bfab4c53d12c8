/**
 * A run of periods: neighbouring differences share a stock, so they are made independent before they are tested. Small losses that no single period
 * shows add up here. Method: methods.md 1.4 (Cholesky standardisation; Page's test for losses; the cumulative sum telescopes).
 */
import { type Decimal, negative, plus, sum, times, toNumber, zero } from './decimal.ts';
import { cholesky, forward, positiveDefinite } from './linear.ts';
import { pageSums, pageThreshold } from './page-test.ts';

/** Grams, exact. `inventoryU` has one more member than there are periods: before the first and after each. */
export interface Periods {
  readonly differences: readonly Decimal[];
  readonly inventoryU: readonly Decimal[];
  readonly throughputU: readonly Decimal[];
  /** Errors every period shares, each with its coefficient per period. */
  readonly shared: readonly { readonly coefficients: readonly Decimal[]; readonly u: Decimal }[];
}

export interface SeriesFigures {
  readonly covariance: readonly (readonly Decimal[])[];
  readonly z: readonly number[];
  readonly y: readonly number[];
  readonly page: readonly number[];
  readonly threshold: number;
  /** The first period whose sum is above the threshold, counted from 1. */
  readonly signalAt: number | null;
  readonly cumulative: readonly Decimal[];
  readonly cumulativeU: readonly number[];
}

const square = (a: Decimal): Decimal => times(a, a);
const member = (list: readonly Decimal[], i: number): Decimal => list[i] ?? zero;

/** Covariance of the differences in grams squared, exact. */
export function covarianceOf(periods: Periods): Decimal[][] {
  const { differences, inventoryU, throughputU, shared } = periods;
  const stock = (j: number) => square(member(inventoryU, j));
  const common = (j: number, k: number) =>
    sum(shared.map(({ coefficients, u }) => times(times(member(coefficients, j), member(coefficients, k)), square(u))));
  return differences.map((_, j) =>
    differences.map((__, k) => {
      const own = j === k ? sum([square(member(throughputU, j)), stock(j), stock(j + 1)]) : zero;
      const neighbour = Math.abs(j - k) === 1 ? negative(stock(Math.max(j, k))) : zero;
      return sum([own, neighbour, common(j, k)]);
    }),
  );
}

/** Standard uncertainty of each running total: only the first and the latest stock remain. */
function cumulativeUOf({ differences, inventoryU, throughputU, shared }: Periods): number[] {
  return differences.map((_, j) => {
    const upTo = (list: readonly Decimal[]) => sum(list.slice(0, j + 1));
    const variance = sum([
      square(member(inventoryU, 0)),
      square(member(inventoryU, j + 1)),
      sum(throughputU.slice(0, j + 1).map(square)),
      sum(shared.map(({ coefficients, u }) => square(times(upTo(coefficients), u)))),
    ]);
    return Math.sqrt(toNumber(variance));
  });
}

/** Everything the sequence shows; null when the covariance is not positive definite. */
export function seriesFigures(periods: Periods, k: number, falseAlarm: number): SeriesFigures | null {
  const covariance = covarianceOf(periods);
  if (!positiveDefinite(covariance)) return null;
  const doubles = covariance.map((row) => row.map(toNumber));
  const lower = cholesky(doubles);
  if (!lower) return null;
  const values = periods.differences.map(toNumber);
  const y = forward(lower, values);
  const page = pageSums(y, k);
  const threshold = pageThreshold(k, values.length, falseAlarm);
  const first = page.findIndex((s) => s > threshold);
  let running = zero;
  return {
    covariance,
    z: values.map((value, j) => value / Math.sqrt(doubles[j]?.[j] ?? 0)),
    y,
    page,
    threshold,
    signalAt: first < 0 ? null : first + 1,
    cumulative: periods.differences.map((difference) => {
      running = plus(running, difference);
      return running;
    }),
    cumulativeU: cumulativeUOf(periods),
  };
}
