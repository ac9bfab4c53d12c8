/** Book against count, as rows for the eye: only of places that are answered. */
import type { Book } from '../../../core/book/book.ts';
import { comparedWithBook } from '../../../core/book/count-list.ts';
import { decimalFromNumber } from '../../../core/decimal.ts';
import { decimalText, massUnit } from '../../../words/figures.ts';
import { placeText } from '../../../words/places.ts';
import { stockTake as words } from '../../../words/screens-count.ts';
import { type Figure, figureOf } from '../figures.ts';
import { type CountRow, lineRead } from './plan.ts';

export interface ComparedRow {
  readonly place: string;
  readonly name: string;
  readonly how: string;
  readonly book: Figure;
  /** Null where the book's amount is carried forward. */
  readonly counted: Figure | null;
  readonly difference: Figure;
  /** To one place; empty where the difference has no uncertainty. */
  readonly z: string;
}

/** What an answered row found; null while it is not completely answered. `without`: the stock-take it was kept in, once it was. */
export function comparedRow(book: Book, row: CountRow, at: string, without: string | null = null): ComparedRow | null {
  const line = row.done ? lineRead(row) : null;
  if (line === null) return null;
  const { book: booked, counted, difference, z } = comparedWithBook(book, line, at, without);
  return {
    place: row.place,
    name: placeText(book, row.place),
    how: words.ways[line.how],
    book: figureOf(booked),
    counted: counted && figureOf(counted),
    difference: figureOf(difference),
    z: z === null ? '' : decimalText(decimalFromNumber(z), 1),
  };
}

const grams = ({ value, U }: Figure): string => `${value}${U === '' ? '' : ` ± ${U}`}\u00a0${massUnit()}`;

/** The comparison of one place in a sentence, for the moment it is answered. */
export const spoken = (row: ComparedRow): string =>
  row.counted === null
    ? words.spokenNothing(row.name, row.how, grams(row.book))
    : words.spoken(row.name, grams(row.book), grams(row.counted), grams(row.difference), row.z);
