/** Weights as they were read, in words: the digits of the record with the site's decimal mark, never rounded, never turned into another unit. */
import type { Book } from '../core/book/book.ts';
import { weighedFrom } from '../core/book/weights.ts';
import { type Decimal, sum, toText } from '../core/decimal.ts';
import type { Weight } from '../core/shapes.ts';
import { massText, massUnit, withoutNoughts } from './figures.ts';
import { marked } from './notation.ts';
import { temperatureText } from './temperatures.ts';

/** Thousands apart by narrow spaces, the decimals as they stand. */
export function spaced(text: string): string {
  return marked(text)
    .replace(/^(-?)(\d{4,})/, (_, sign: string, digits: string) => sign + digits.replace(/\B(?=(\d{3})+(?!\d))/g, '\u202f'))
    .replace(/^-/, '−');
}

/** A kept mass for the eye. */
export const massAsRead = (mass: string): string => spaced(mass).replace(/ (?=\S+$)/, '\u00a0');

/** "955.6 g", "1 204.5 g less tare 250.0 g", "186.0 ml at 21 °C", "34.5 kg as stated by the seller". */
export function weightAsRead(weight: Weight): string {
  switch (weight.how) {
    case 'scale':
      return weight.tare === undefined
        ? massAsRead(weight.gross)
        : `${massAsRead(weight.gross)} less tare ${massAsRead(weight.tare)}`;
    case 'volume':
      return `${spaced(weight.volume)} at ${temperatureText(weight.temperatureC)}`;
    case 'stated':
      return `${massAsRead(weight.mass)} as stated${weight.by === undefined ? '' : ` by ${weight.by}`}`;
  }
}

/** Exact grams with all their places, or troy ounces to at most six. */
export const exactMass = (grams: Decimal): string =>
  massUnit() === 'g' ? `${spaced(toText(grams))}\u00a0g` : withoutNoughts(massText(grams, 4));

const nowhere = { entry: 'shown', path: 'weight' };

/** Net in exact grams as the book reckons it. */
export const netOf = (book: Book, weight: Weight, at: string): Decimal =>
  weighedFrom(weight, { ...nowhere, at }, book.registers).grams;

/** The net of one or more weights: one that was read without a tare stays in its own unit, else exact grams. */
export function netText(book: Book, weights: readonly Weight[], at: string): string {
  const [only] = weights;
  if (weights.length === 1 && only) {
    if (only.how === 'scale' && only.tare === undefined) return massAsRead(only.gross);
    if (only.how === 'stated') return massAsRead(only.mass);
    if (only.how === 'volume') return weightAsRead(only);
  }
  return exactMass(sum(weights.map((w) => netOf(book, w, at))));
}
