/** The list of movements, newest first, a page at a time, of one place or of all. */
import type { Book } from '../../core/book/book.ts';
import type { Movement } from '../../core/book/movements/gathering.ts';
import { placeParts } from '../../core/book/places.ts';
import { toText } from '../../core/decimal.ts';
import { uOf } from '../../core/measured.ts';
import { basisTexts } from '../../words/account.ts';
import { dayText } from '../../words/dates.ts';
import { entryName } from '../../words/daybook-naming.ts';
import { spaced } from '../../words/daybook-weights.ts';
import { gramsOf, massFigure, massUnit } from '../../words/figures.ts';
import { placeText } from '../../words/places.ts';
import { entryHref } from '../shared/places.ts';
import { movementsHref } from './address.ts';
import { movementsOf } from './stocks.ts';

/** Movements on one page. */
export const perPage = 100;

/** Movements with something in them: what is zero and exactly known moved nothing. */
const moved = (m: Movement): boolean => m.mercury.ug !== 0 || uOf(m.mercury) > 0.1;

/** Micrograms as exact grams, to the tenth of a gram at least; or as troy ounces. */
const exactGrams = (ug: number): string =>
  massUnit() === 'g' ? spaced(toText(gramsOf(ug)).replace(/(\.\d+?)0+$/, '$1')) : massFigure(gramsOf(ug), 4);

export interface MovementRow {
  readonly day: string;
  readonly from: string;
  readonly fromHref: string;
  readonly to: string;
  readonly toHref: string;
  /** Exact grams; below nothing where more came out than went in. */
  readonly grams: string;
  readonly basis: string;
  readonly entry: string;
  readonly entryHref: string;
}

export interface MovementPage {
  readonly rows: readonly MovementRow[];
  readonly count: number;
  readonly pages: number;
  /** The page shown, from 1: the last where the address asks for a later one. */
  readonly number: number;
}

/** A page of movements; `place` empty: of every place. `chosen`: of these alone. */
export function movementPage(book: Book, place: string, asked: number, chosen?: readonly Movement[]): MovementPage {
  const all = (chosen ?? (place === '' ? book.movements.all : movementsOf(book, place, null))).filter(moved).toReversed();
  const pages = Math.max(1, Math.ceil(all.length / perPage));
  const number = Math.min(Math.max(1, asked), pages);
  const rows = all.slice((number - 1) * perPage, number * perPage).map(
    (m): MovementRow => ({
      day: dayText(m.at).replaceAll(' ', '\u00a0'),
      from: placeText(book, m.from),
      fromHref: movementsHref(m.from),
      to: placeText(book, m.to),
      toHref: movementsHref(m.to),
      grams: exactGrams(m.mercury.ug),
      basis: basisTexts[m.basis],
      entry: entryName(book, m.entry),
      entryHref: entryHref(m.entry),
    }),
  );
  return { rows, count: all.length, pages, number };
}

/** The longest list of places offered whole; of more, those that last: a lot or a charge is found through its entry. */
const mostPlaces = 200;
const lasting: ReadonlySet<string> = new Set(['vessel', 'circuit', 'condenser', 'outside', 'found', 'loss']);

/** Places that any movement names, by their names; `present` is among them if it is one. */
export function placesMoved(book: Book, present = ''): readonly { readonly value: string; readonly label: string }[] {
  const places = [...new Set(book.movements.all.filter(moved).flatMap((m) => [m.from, m.to]))];
  return places
    .filter((place) => places.length <= mostPlaces || place === present || lasting.has(placeParts(place).kind))
    .map((value) => ({ value, label: placeText(book, value) }))
    .sort((a, b) => (a.label < b.label ? -1 : a.label > b.label ? 1 : 0));
}
