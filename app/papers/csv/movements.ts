/** Every movement of mercury as a table: the day on the wall, from, to, exact grams, the entry. The places of the whole book sum to nothing. */
import type { Book } from '../../core/book/book.ts';
import { toText } from '../../core/decimal.ts';
import { dayOf } from '../../core/time.ts';
import { gramsOf } from '../../words/figures.ts';
import { placeNames } from '../../words/places.ts';
import { csvText } from './cells.ts';

export const movementsHeader = ['date', 'from', 'to', 'grams', 'entry'] as const;

/** The movements of a book in order of happening. Places that read alike are told apart. */
export function movementsCsv(book: Book): string {
  const { all } = book.movements;
  const names = placeNames(
    book,
    all.flatMap((m) => [m.from, m.to]),
  );
  const name = (place: string): string => names.get(place) ?? place;
  return csvText(
    movementsHeader,
    all.map((m) => [dayOf(m.at), name(m.from), name(m.to), toText(gramsOf(m.mercury.ug)), m.entry]),
  );
}
