/**
 * Reconciling a charge: do the readings of a run agree with one another, which is most at odds, and would a transposed figure explain it. Raw readings
 * are never overwritten; adjusted values exist only where the readings agree, and a transposition is a question for whoever has the sheet. What was
 * lost at the retort is a term of the sum with the run's own band, so the mercury balance is never forced to nothing. Method: methods.md 2.
 */
import { type Decimal, minus, plus, zero } from '../decimal.ts';
import { massFromText } from '../mass.ts';
import { type Reconciled, reconcileWith } from '../reconcile.ts';
import { transpositions } from '../transposed.ts';
import type { Book } from './book.ts';
import { type LeftOut, readingsOf, type Sum, type Term } from './reconciling/readings.ts';
import type { Run } from './runs.ts';
import { covariance } from './sequence.ts';

/** A swap of two neighbouring digits in one reading after which all readings agree. */
export interface Swap {
  /** Position of the reading. */
  readonly term: number;
  readonly part: 'gross' | 'tare' | 'mass';
  readonly was: string;
  readonly wouldBe: string;
  /** Of all readings, with the swap. */
  readonly global: number;
}

export interface Reconciling {
  readonly terms: readonly Term[];
  readonly sums: readonly Sum[];
  readonly leftOut: readonly LeftOut[];
  readonly result: Reconciled;
  /** Positions of the readings most at odds where they do not agree; more than one where they cannot be told apart. */
  readonly suspects: readonly number[];
  /** Those beside them that are no readings: a real change, or mercury that stayed or was lost, would look the same. */
  readonly orElse: readonly number[];
  /** Swaps in the suspects' figures that would make everything agree, the best first. */
  readonly swaps: readonly Swap[];
}

/** `nothing`: no two readings say the same thing. `unresolved`: their errors cannot be told apart. */
export type NotReconciled = { readonly none: 'nothing' | 'unresolved'; readonly leftOut: readonly LeftOut[] };

/** Statistics closer than this share are the same one. */
const sameShare = 1e-6;

/** Most swaps that are worth asking about. */
const mostSwaps = 5;

/** The readings of a run, tested together. */
export function reconciling(book: Book, run: Run): Reconciling | NotReconciled {
  const { sums, leftOut } = readingsOf(book, run);
  if (sums.length === 0) return { none: 'nothing', leftOut };
  const terms = [...new Set(sums.flatMap((sum) => [...sum.terms.keys()]))];
  const one: Decimal = { digits: 1n, places: 0 };
  const constraints = sums.map((sum) =>
    terms.map((term): Decimal => {
      const sign = sum.terms.get(term);
      return sign === undefined ? zero : sign === 1 ? one : { digits: -1n, places: 0 };
    }),
  );
  // grams squared, from the signed contributions: what two readings share is counted as shared
  const v = terms.map((a) => terms.map((b) => covariance(a.net, b.net) / 1e12));
  const tested = (values: readonly Decimal[]) => reconcileWith({ values, constraints }, v);
  const values = terms.map((term) => term.grams);
  const result = tested(values);
  if (!result) return { none: 'unresolved', leftOut };
  const found = { terms, sums, leftOut, result };
  if (result.passes) return { ...found, suspects: [], orElse: [], swaps: [] };
  const most = Math.max(...result.statistics.map((s) => s ?? 0));
  const tied = terms.flatMap((_, i) => ((result.statistics[i] ?? 0) >= most * (1 - sameShare) ? [i] : []));
  const suspects = tied.filter((i) => terms[i]?.as);
  const swaps = suspects
    .flatMap((i) => swapsOf(terms[i]).map((swap) => ({ ...swap, term: i })))
    .flatMap(({ grams, ...swap }): Swap[] => {
      const got = tested(values.map((value, i) => (i === swap.term ? grams : value)));
      return got?.passes ? [{ ...swap, global: got.global }] : [];
    })
    .sort((a, b) => a.global - b.global)
    .slice(0, mostSwaps);
  return { ...found, suspects, orElse: tied.filter((i) => !terms[i]?.as), swaps };
}

/** Every swap in a reading's figures, with the grams it would then come to; none below nothing. */
function swapsOf(term: Term | undefined): readonly (Omit<Swap, 'term' | 'global'> & { readonly grams: Decimal })[] {
  if (!term?.as) return [];
  const { as } = term;
  const texts: readonly (readonly [Swap['part'], string, 1 | -1])[] =
    as.how === 'scale'
      ? [['gross', as.gross, 1], ...(as.tare === undefined ? [] : [['tare', as.tare, -1] as const])]
      : as.how === 'stated'
        ? [['mass', as.mass, 1]]
        : [];
  return texts.flatMap(([part, was, sign]) => {
    const before = massFromText(was, '');
    if (!before.ok) return [];
    return transpositions(was).flatMap((wouldBe) => {
      const after = massFromText(wouldBe, '');
      if (!after.ok) return [];
      const change = minus(after.value.grams, before.value.grams);
      const grams = sign === 1 ? plus(term.grams, change) : minus(term.grams, change);
      return grams.digits < 0n ? [] : [{ part, was, wouldBe, grams }];
    });
  });
}
