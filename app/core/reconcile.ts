/**
 * Reconciling readings that must agree (parts of a charge against the whole, a weighing repeated, a transfer weighed twice): first whether they can
 * agree at all, then which reading is most at odds, then the adjusted values beside the raw ones. Never for a mercury loss: the closing term is
 * the thing being measured. Method: methods.md 2.1 (global test; maximum-power measurement test).
 */
import { type Decimal, plus, times, toNumber, zero } from './decimal.ts';
import { cholesky, dot, forward, independentRows, type Matrix, timesVector, transposed } from './linear.ts';
import { chiSquareQuantile } from './normal.ts';

export interface Readings {
  readonly values: readonly Decimal[];
  /** Standard uncertainties, above zero. */
  readonly u: readonly Decimal[];
  /** Relative errors shared by some readings, by position. */
  readonly shared: readonly { readonly members: readonly number[]; readonly relativeU: Decimal }[];
  /** Rows of coefficients; each weighted sum must be zero. At least one is not all zeros. */
  readonly constraints: readonly (readonly Decimal[])[];
}

export interface Reconciled {
  readonly global: number;
  /** Independent constraints. */
  readonly freedom: number;
  readonly critical: number;
  readonly passes: boolean;
  /** One per reading; null for a reading no constraint looks at. */
  readonly statistics: readonly (number | null)[];
  /** Position of the one reading most at odds, when the global test fails and one is strictly so. */
  readonly suspect?: number | undefined;
  /** Null when the global test fails. */
  readonly adjusted: readonly number[] | null;
  readonly adjustedU: readonly number[] | null;
}

/** Two statistics closer than this are the same one, computed along different ways. */
const sameWithin = 1e-9;

function covarianceOf({ values, u, shared }: Readings): number[][] {
  return values.map((value, i) =>
    values.map((other, j) => {
      const own = i === j ? toNumber(times(u[i] ?? zero, u[i] ?? zero)) : 0;
      return shared.reduce((total, { members, relativeU }) => {
        if (!members.includes(i) || !members.includes(j)) return total;
        return total + toNumber(times(times(value, other), times(relativeU, relativeU)));
      }, own);
    }),
  );
}

function strictlyLargest(statistics: readonly (number | null)[]): number | undefined {
  const ranked = statistics.map((s, i) => [s ?? -1, i] as const).toSorted((a, b) => b[0] - a[0]);
  const [first, second] = ranked;
  if (!first || first[0] <= 0) return undefined;
  return !second || first[0] - second[0] > sameWithin * first[0] ? first[1] : undefined;
}

/** Tests and adjusts; null when the constraints' covariance cannot be resolved in doubles. */
export const reconcile = (readings: Readings): Reconciled | null => reconcileWith(readings, covarianceOf(readings));

/** The same where the readings' whole covariance is known: `v`, in the square of the values' unit. */
export function reconcileWith(readings: Pick<Readings, 'values' | 'constraints'>, v: Matrix): Reconciled | null {
  const rows = independentRows(readings.constraints).map((i) => readings.constraints[i] ?? []);
  const a = rows.map((row) => row.map(toNumber));
  const values = readings.values.map(toNumber);
  const columns = transposed(a, values.length);
  // the residuals are sums of decimals, so they are had exactly
  const residuals = rows.map((row) =>
    toNumber(row.reduce((total, c, i) => plus(total, times(c, readings.values[i] ?? zero)), zero)),
  );
  const va = a.map((row) => timesVector(v, row));
  const h = a.map((row) => va.map((other) => dot(row, other)));
  const lower = cholesky(h);
  if (!lower) return null;
  // with H = L·Lᵀ everything is a product of L⁻¹ with something
  const w = forward(lower, residuals);
  const freedom = rows.length;
  const global = dot(w, w);
  const critical = chiSquareQuantile(0.95, freedom);
  const passes = global <= critical;
  const statistics = columns.map((column) => {
    const q = forward(lower, column);
    const size = dot(q, q);
    return size > 0 ? Math.abs(dot(q, w)) / Math.sqrt(size) : null;
  });
  const parts = transposed(va, values.length).map((column) => forward(lower, column));
  return {
    global,
    freedom,
    critical,
    passes,
    statistics,
    ...(!passes && { suspect: strictlyLargest(statistics) }),
    adjusted: passes ? values.map((value, i) => value - dot(parts[i] ?? [], w)) : null,
    // a reading the constraints fix entirely keeps nothing; its rest may come out a rounding below zero
    adjustedU: passes
      ? values.map((_, i) => Math.sqrt(Math.max(0, (v[i]?.[i] ?? 0) - dot(parts[i] ?? [], parts[i] ?? []))))
      : null,
  };
}
