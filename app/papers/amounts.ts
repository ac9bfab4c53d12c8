/** Amounts on papers: exact to what was read, and how sure they are. Rounded once, here, on the exact decimal, and in the unit the site shows masses in. */
import { type Decimal, zero } from '../core/decimal.ts';
import { type Measured, uOf } from '../core/measured.ts';
import { gramsOf, massFigure, massUnit, massWithU } from '../words/figures.ts';
import { notKnown } from '../words/papers.ts';

/** Finest place shown: a tenth of a milligram. Readings in other units than grams are exact to many more. */
const mostPlaces = 4;

/** Grams to as many places as were read: "371.8". */
export const gramsText = (grams: Decimal, sign = false): string => massFigure(grams, Math.min(mostPlaces, grams.places), sign);

/** Grams with their unit. */
export const withGrams = (grams: Decimal): string => `${gramsText(grams)}\u00a0${massUnit()}`;

/** Grams of a computed mass, which is kept in whole micrograms, to the places given. */
export const ugText = (ug: number, places: number, sign = false): string => massFigure(gramsOf(ug), places, sign);

/** Expanded uncertainty (k = 2) in grams: "± 0.64", to two digits. */
export function uText(net: Measured, known: boolean): string {
  if (!known) return notKnown;
  const U = (2 * uOf(net)) / 1e6;
  return U > 0 ? `± ${massWithU(zero, U).U}` : '± 0';
}
