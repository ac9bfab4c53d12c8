/**
 * Counted periods: what lies between two counts of the whole, one after the other, from the end of the one up to and with the other. They never
 * overlap and leave no moment out. Method: methods.md 1.1 (a balance period lies between two physical inventories).
 */
import { compareMoments } from '../time.ts';
import type { Book } from './book.ts';
import type { Reading } from './current.ts';
import type { Period } from './period.ts';

export interface CountedPeriod {
  /** The ids of its two counts: `opening..closing`; `start..closing` where it begins with the book. */
  readonly key: string;
  readonly opening: Reading<'stock-take'> | null;
  readonly closing: Reading<'stock-take'>;
  readonly period: Period;
}

/** Counts of the whole, oldest first; of two at one moment only the later written counts. */
export function wholeCounts(book: Pick<Book, 'current'>): readonly Reading<'stock-take'>[] {
  const whole = book.current.of('stock-take').filter((r) => r.body.scope === 'whole');
  return whole.filter((r, i) => {
    const next = whole[i + 1];
    return next === undefined || compareMoments(r.happened, next.happened) !== 0;
  });
}

/** All counted periods in order; the first one begins with the book and has no opening count. */
export const periodsOf = (book: Pick<Book, 'current'>): readonly CountedPeriod[] =>
  wholeCounts(book).map((closing, i, all): CountedPeriod => {
    const opening = all[i - 1] ?? null;
    return {
      key: `${opening?.id ?? 'start'}..${closing.id}`,
      opening,
      closing,
      period: opening ? { from: opening.happened, to: closing.happened, after: true } : { from: null, to: closing.happened },
    };
  });

/**
 * A period whose first moment is that of a count of the whole begins after it: what was found missing at a count belongs to the period that ends with
 * it, and neighbours hold every moment once. Any other period stays as it is.
 */
export function afterItsCount(book: Pick<Book, 'current'>, period: Period): Period {
  const { from } = period;
  if (from === null || from.length <= 10 || period.after === true) return period;
  return wholeCounts(book).some((count) => compareMoments(count.happened, from) === 0) ? { ...period, after: true } : period;
}
