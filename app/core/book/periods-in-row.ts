/**
 * Counted periods in a row as a table wants them: each with its difference, its ore, and this site's usual rate from the periods before it. It adds no
 * figure of its own to `sequenceOf` and `excessOf`; the usual rate stands beside the test and is never in it. Method: methods.md 1.1, 1.4.
 */
import { type Measured, total } from '../measured.ts';
import { oreOf, perTonne } from './account.ts';
import type { Book } from './book.ts';
import { type Period, upToEnd } from './period.ts';
import type { CountedPeriod } from './periods.ts';
import { type Sequence, sequenceTest } from './sequence.ts';
import { type Excess, excessOf, type NoUsual } from './usual.ts';

/** Fewest periods in a row that a drawing and a paper are made of: of two the second says it all. */
export const leastInRow = 3;

/** Page's reference value: half a standard deviation, for a loss that is about one of them each period (methods.md 1.4). */
export const referenceK = 0.5;

export interface PeriodInRow {
  readonly counted: CountedPeriod;
  readonly difference: Measured;
  readonly cumulative: Measured;
  /** Grams a tonne with its standard uncertainty; null without ore. */
  readonly perTonne: { readonly g: number; readonly uG: number } | null;
  /** The usual rate before it and what it lost beyond that; or why there is none. */
  readonly usual: Excess | NoUsual;
}

/** Each period of a sequence, in order. */
export const periodsInRow = (book: Book, { periods, differences, cumulative }: Sequence): readonly PeriodInRow[] =>
  periods.map((counted, i): PeriodInRow => {
    const difference = differences[i] ?? total([]);
    return {
      counted,
      difference,
      cumulative: cumulative[i] ?? total([]),
      perTonne: perTonne(difference, oreOf(book, counted.period)),
      usual: excessOf(book, { period: counted.period, unaccounted: difference }),
    };
  });

/** The sequence without the counts after the end of this period, tested over exactly those that are left. */
export function sequenceUpTo(sequence: Sequence, period: Period, falseAlarm: number): Sequence {
  const count = sequence.periods.filter((p) => upToEnd(p.closing.happened, period)).length;
  const differences = sequence.differences.slice(0, count);
  return {
    ...sequence,
    periods: sequence.periods.slice(0, count),
    differences,
    covariance: sequence.covariance.slice(0, count).map((row) => row.slice(0, count)),
    cumulative: sequence.cumulative.slice(0, count),
    test: sequenceTest(differences, referenceK, falseAlarm),
  };
}
