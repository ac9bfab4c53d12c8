/**
 * Counted periods one after the other: small losses that no single period shows add up. Two bases, never mixed, because mixing counts an adjustment
 * twice: as closed (each period as it was known then, with what later knowledge changed in the one it came in) or as known today. Neighbours share a
 * count, so they are made independent before Page's test. Method: methods.md 1.4; cases.md 1.
 */
import { cholesky, forward } from '../linear.ts';
import { type Measured, scaled, total } from '../measured.ts';
import { pageSums, pageThreshold } from '../page-test.ts';
import type { Book } from './book.ts';
import { knownAt } from './known-at.ts';
import { type CountedPeriod, periodsOf } from './periods.ts';
import { unaccountedIn } from './unaccounted.ts';

export type SequenceBasis = 'as-closed' | 'as-known-today';

export interface SequenceTest {
  /** Each difference in its own standard uncertainties. */
  readonly z: readonly number[];
  /** The same made independent of one another. */
  readonly y: readonly number[];
  readonly page: readonly number[];
  readonly threshold: number;
  /** Chance of a false alarm over exactly these periods that the threshold holds. */
  readonly falseAlarm: number;
  /** The first period whose sum is above the threshold, counted from 1. */
  readonly signalAt: number | null;
}

export interface Sequence {
  readonly basis: SequenceBasis;
  readonly periods: readonly CountedPeriod[];
  readonly differences: readonly Measured[];
  /** Micrograms squared. */
  readonly covariance: readonly (readonly number[])[];
  /** Running totals, with their errors: the counts between them drop out. */
  readonly cumulative: readonly Measured[];
  /** Null where the errors cannot tell the periods apart: one has no known error, or follows from the others. */
  readonly test: SequenceTest | null;
}

/** Covariance of two values: over the sources both depend on, the product of their signed contributions. */
export function covariance(a: Measured, b: Measured): number {
  let sum = 0;
  for (const [source, u] of a.parts) sum += u * (b.parts.get(source) ?? 0);
  return sum;
}

/** What each period's account said when it was closed, with the change of all earlier ones since their own closing. */
function asClosed(book: Book, periods: readonly CountedPeriod[]): Measured[] {
  const first = periods[0]?.opening;
  let before: Measured = total([]);
  return periods.map((p) => {
    const known = knownAt(book, p);
    const momentOf = (id: string, now: string) => known.current.byId.get(id)?.happened ?? now;
    const from = first ? momentOf(first.id, first.happened) : null;
    const [upTo = total([])] = unaccountedIn(known, [{ from, to: momentOf(p.closing.id, p.closing.happened), after: true }]);
    const difference = total([upTo, scaled(before, -1)]);
    before = upTo;
    return difference;
  });
}

/** Tests differences that share errors. `k` is Page's reference value in standard deviations. */
export function sequenceTest(differences: readonly Measured[], k: number, falseAlarm: number): SequenceTest | null {
  const matrix = differences.map((a) => differences.map((b) => covariance(a, b)));
  const lower = cholesky(matrix);
  if (differences.length === 0 || lower === null) return null;
  const values = differences.map((d) => d.ug);
  const y = forward(lower, values);
  const page = pageSums(y, k);
  const threshold = pageThreshold(k, values.length, falseAlarm);
  const first = page.findIndex((s) => s > threshold);
  return {
    z: values.map((value, i) => value / Math.sqrt(matrix[i]?.[i] ?? 0)),
    y,
    page,
    threshold,
    falseAlarm,
    signalAt: first < 0 ? null : first + 1,
  };
}

/** The sequence of all periods that begin and end with a count of the whole. `k` 0.5 and a false alarm of 0.05 where nothing else was chosen. */
export function sequenceOf(
  book: Book,
  { basis, k = 0.5, falseAlarm = 0.05 }: { readonly basis: SequenceBasis; readonly k?: number; readonly falseAlarm?: number },
): Sequence {
  const periods = periodsOf(book).filter((p) => p.opening !== null);
  const differences =
    basis === 'as-closed'
      ? asClosed(book, periods)
      : unaccountedIn(
          book,
          periods.map((p) => p.period),
        );
  return {
    basis,
    periods,
    differences,
    covariance: differences.map((a) => differences.map((b) => covariance(a, b))),
    cumulative: differences.map((_, i) => total(differences.slice(0, i + 1))),
    test: sequenceTest(differences, k, falseAlarm),
  };
}
