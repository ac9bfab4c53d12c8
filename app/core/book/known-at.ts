/**
 * The book as it was known when a count was closed: its entries up to the end marks of the closing, or, where none was made, up to the writing of the
 * count itself. It is read anew from those entries; nothing that came later colours it.
 */
import { compareMoments } from '../time.ts';
import { type Book, readBook } from './book.ts';
import type { CountedPeriod } from './periods.ts';

/** The book as known when this period was closed. */
export function knownAt(book: Book, { closing }: Pick<CountedPeriod, 'closing'>): Book {
  const made = book.current
    .of('closing')
    .filter((r) => r.body.closing === closing.id)
    .reduce<ReturnType<typeof book.current.of<'closing'>>[number] | null>(
      (last, r) => (last === null || r.body.version > last.body.version ? r : last),
      null,
    );
  if (made === null) {
    // entries of the count's own desk go by their number: clocks may run backwards
    const { desk, n, written } = closing.entry;
    return readBook(book.entries.filter((e) => (e.desk === desk ? e.n <= n : compareMoments(e.written, written) <= 0)));
  }
  const upTo = new Map(made.body.ends.map((end) => [end.desk, end.entries]));
  return readBook(book.entries.filter((e) => e.n <= (upTo.get(e.desk) ?? 0)));
}
