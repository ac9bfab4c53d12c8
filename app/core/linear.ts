/**
 * The little linear algebra a balance needs: symmetric positive definite matrices of a few rows, as rows of numbers, and the exact test that they are
 * positive definite. Method: Cholesky decomposition; fraction-free elimination (Bareiss) for the exact questions.
 */
import { type Decimal, shifted, toNumber } from './decimal.ts';

export type Vector = readonly number[];
export type Matrix = readonly Vector[];

const entry = (m: Matrix, i: number, j: number): number => m[i]?.[j] ?? 0;
const member = (v: Vector, i: number): number => v[i] ?? 0;

export const dot = (a: Vector, b: Vector): number => a.reduce((total, x, i) => total + x * member(b, i), 0);
export const timesVector = (m: Matrix, v: Vector): number[] => m.map((row) => dot(row, v));
export const transposed = (m: Matrix, columns: number): number[][] =>
  Array.from({ length: columns }, (_, j) => m.map((row) => member(row, j)));

/** Lower triangular L with L·Lᵀ = m; null when m is not positive definite to the precision of a double. */
export function cholesky(m: Matrix): number[][] | null {
  const lower: number[][] = [];
  for (let i = 0; i < m.length; i += 1) {
    const row: number[] = [];
    for (let j = 0; j <= i; j += 1) {
      const upper = j === i ? row : (lower[j] ?? []);
      let rest = entry(m, i, j);
      for (let k = 0; k < j; k += 1) rest -= member(row, k) * member(upper, k);
      if (j === i) {
        if (!(rest > 0)) return null;
        row.push(Math.sqrt(rest));
      } else row.push(rest / member(upper, j));
    }
    lower.push(row);
  }
  return lower;
}

/** y with L·y = b. */
export function forward(lower: Matrix, b: Vector): number[] {
  const y: number[] = [];
  for (let i = 0; i < lower.length; i += 1) {
    const row = lower[i] ?? [];
    let rest = member(b, i);
    for (let k = 0; k < i; k += 1) rest -= member(row, k) * member(y, k);
    y.push(rest / member(row, i));
  }
  return y;
}

/** Whole numbers in the proportion of the decimals of each row: every row by the same power of ten. */
function wholeRows(rows: readonly (readonly Decimal[])[]): bigint[][] {
  const places = Math.max(0, ...rows.flat().map((value) => value.places));
  return rows.map((row) => row.map((value) => shifted(value, places).digits));
}

/** Rows of the matrix that do not follow from the rows before them, by exact elimination. */
export function independentRows(rows: readonly (readonly Decimal[])[]): number[] {
  const kept: { readonly row: readonly bigint[]; readonly pivot: number }[] = [];
  const indices: number[] = [];
  wholeRows(rows).forEach((whole, index) => {
    let row: readonly bigint[] = whole;
    for (const { row: above, pivot } of kept) {
      const [own, lead] = [row[pivot] ?? 0n, above[pivot] ?? 1n];
      if (own !== 0n) row = row.map((value, j) => value * lead - own * (above[j] ?? 0n));
    }
    const pivot = row.findIndex((value) => value !== 0n);
    if (pivot < 0) return;
    kept.push({ row, pivot });
    indices.push(index);
  });
  return indices;
}

/** Every leading minor is above zero, by exact elimination: sure, and slow for many rows. */
function minorsAboveZero(rows: readonly (readonly Decimal[])[]): boolean {
  const m = wholeRows(rows);
  let before = 1n;
  for (let k = 0; k < m.length; k += 1) {
    const lead = m[k]?.[k] ?? 0n;
    if (lead <= 0n) return false;
    for (let i = k + 1; i < m.length; i += 1) {
      const row = m[i] ?? [];
      const first = row[k] ?? 0n;
      for (let j = k + 1; j < m.length; j += 1) row[j] = ((row[j] ?? 0n) * lead - first * (m[k]?.[j] ?? 0n)) / before;
    }
    before = lead;
  }
  return true;
}

/** The pivots of a decomposition in doubles, each as a share of its diagonal; the last one is the first that is not above zero. */
function pivotShares(m: Matrix): number[] {
  const shares: number[] = [];
  const lower: number[][] = [];
  for (let i = 0; i < m.length; i += 1) {
    const row = forward(lower, (m[i] ?? []).slice(0, i));
    const pivot = entry(m, i, i) - dot(row, row);
    shares.push(pivot / entry(m, i, i));
    if (!(pivot > 0)) break;
    lower.push([...row, Math.sqrt(pivot)]);
  }
  return shares;
}

/** Pivots nearer to zero than this share of their diagonal may be the rounding of doubles, and are looked at exactly. */
const doubtful = 1e-9;

/** Whether an exact symmetric matrix is positive definite. */
export function positiveDefinite(rows: readonly (readonly Decimal[])[]): boolean {
  const least = Math.min(...pivotShares(rows.map((row) => row.map(toNumber))));
  if (least > doubtful) return true;
  return least < -doubtful ? false : minorsAboveZero(rows);
}
