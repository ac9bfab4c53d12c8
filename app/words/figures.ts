/**
 * Figures as they are shown: rounded once, half to even, on the exact decimal; an uncertainty with at most two digits and the value to the same
 * place (JCGM 100:2008, 7.2.6; from memory). A minus is the true minus sign; there is no minus nothing. Decimal mark and unit of mass are the site's
 * (notation.ts).
 */
import { type Decimal, decimalFromNumber, divided, isZero, rounded, shifted, toNumber, toText } from '../core/decimal.ts';
import { gramsPer } from '../core/mass.ts';
import type { Ratio } from '../core/ratio.ts';
import { marked, notation } from './notation.ts';

/**
 * Decimals to which a standard or expanded uncertainty is shown: two digits, and no finer than `most`. In grams that is a tenth of a milligram, what a
 * troy ounce has two places more for.
 */
export function placesFor(u: number, most = 4): number {
  if (!(u > 0)) return 2;
  const first = Math.floor(Math.log10(u));
  // 0.0996 rounds up to three digits' worth of two: the place moves with it
  const digits = Number((u / 10 ** first).toFixed(1)) >= 10 ? first + 1 : first;
  return Math.min(most, Math.max(0, 1 - digits));
}

const grouped = (text: string): string => {
  const [whole = '', fraction] = text.split('.');
  const spaced = whole.replace(/\B(?=(\d{3})+(?!\d))/g, '\u202f');
  return fraction === undefined ? spaced : marked(`${spaced}.${fraction}`);
};

/** A decimal to so many places, with a true minus sign and narrow spaces between thousands. */
export function decimalText(value: Decimal, places: number, sign = false): string {
  const once = rounded(value, places);
  const text = grouped(toText({ digits: once.digits < 0n ? -once.digits : once.digits, places: once.places }));
  if (isZero(once)) return text;
  return once.digits < 0n ? `−${text}` : sign ? `+${text}` : text;
}

/** Micrograms as exact decimal grams. */
export const gramsOf = (ug: number): Decimal => shifted(decimalFromNumber(ug), -6);

const inTroy = (): boolean => notation().masses === 'troy';

/** The unit that masses which were worked out are shown in. */
export const massUnit = (): 'g' | 'ozt' => (inTroy() ? 'ozt' : 'g');

/** Grams as a number of that unit, without it; `places` are those of grams, and a troy ounce has two more. */
export function massFigure(grams: Decimal, places: number, sign = false): string {
  if (!inTroy()) return decimalText(grams, places, sign);
  const finer = Math.min(6, places + 2);
  return decimalText(divided(grams, gramsPer.ozt, finer), finer, sign);
}

/** The same with its unit: "12.60 g", or "0.4051 ozt". */
export const massText = (grams: Decimal, places: number, sign = false): string =>
  `${massFigure(grams, places, sign)}\u00a0${massUnit()}`;

/** An exact mass, whose six decimals of a troy ounce need no noughts behind the second. */
export const withoutNoughts = (text: string): string => (inTroy() ? text.replace(/(?<=[.,]\d{2}\d*?)0+(?=\D|$)/, '') : text);

/** A shown mass without its unit, for a column that is headed with it. */
export const withoutUnit = (text: string): string => text.replace(/\u00a0(?:g|ozt)$/, '');

/** The heading of a column of masses: "Mercury, g". */
export const massHead = (what: string): string => `${what}, ${massUnit()}`;

/** Value and expanded uncertainty (k = 2, grams) in the unit of masses, to the same place; the second is empty where none is known. */
export function massWithU(grams: Decimal, U: number, sign = false): { readonly value: string; readonly U: string } {
  if (!(U > 0)) return { value: massFigure(grams, 2, sign), U: '' };
  if (!inTroy()) {
    const places = placesFor(U);
    return { value: decimalText(grams, places, sign), U: decimalText(decimalFromNumber(U), places) };
  }
  const inOunces = U / toNumber(gramsPer.ozt);
  const places = placesFor(inOunces, 6);
  return {
    value: decimalText(divided(grams, gramsPer.ozt, places), places, sign),
    U: decimalText(decimalFromNumber(inOunces), places),
  };
}

/** Grams as a number of the unit of masses, for a drawing. */
export const inMassUnits = (grams: number): number => (inTroy() ? grams / toNumber(gramsPer.ozt) : grams);

/** An uncertainty alone, in grams, above nothing: "0.064 g", in the unit of masses. */
export function uText(uG: number): string {
  const own = inMassUnits(Math.abs(uG));
  return `${decimalText(decimalFromNumber(own), placesFor(own, inTroy() ? 6 : 4))}\u00a0${massUnit()}`;
}

/** An exact share of grams as a share of the unit of masses. */
export const inMassUnit = ({ n, d }: Ratio): Ratio =>
  inTroy() ? { n: n * 10n ** BigInt(gramsPer.ozt.places), d: d * gramsPer.ozt.digits } : { n, d };

/** Grams given as an exact share, as a number of that unit, rounded once; `places` as with `massFigure`. */
export function massRatioFigure(grams: Ratio, places: number, sign = false): string {
  const { n, d } = inMassUnit(grams);
  const to = inTroy() ? Math.min(6, places + 2) : places;
  return decimalText(divided({ digits: n, places: 0 }, { digits: d, places: 0 }, to), to, sign);
}

/** The same with its expanded uncertainty in grams, above nothing, to the same place. */
export function massRatioWithU(grams: Ratio, U: number): { readonly value: string; readonly U: string } {
  const { n, d } = inMassUnit(grams);
  const own = inTroy() ? U / toNumber(gramsPer.ozt) : U;
  const places = placesFor(own, inTroy() ? 6 : 4);
  return {
    value: decimalText(divided({ digits: n, places: 0 }, { digits: d, places: 0 }, places), places),
    U: decimalText(decimalFromNumber(own), places),
  };
}

/** "12.6 g" from micrograms: to the given places, by default 2. */
export const gramText = (ug: number, how: { places?: number; sign?: boolean } = {}): string =>
  massText(gramsOf(ug), how.places ?? 2, how.sign);

/** "12.60 ± 0.64 g": value and expanded uncertainty (k = 2) to the same place; without a known u only the value, to two places. */
export function withU(grams: Decimal, uG: number | null, sign = false): string {
  const shown = massWithU(grams, uG === null ? 0 : 2 * uG, sign);
  return `${shown.value}${shown.U === '' ? '' : ` ± ${shown.U}`}\u00a0${massUnit()}`;
}

/** A share as a percentage: 0.013186 to "1.32 %". */
export const percentText = (share: number, places = 2): string =>
  `${decimalText(shifted(decimalFromNumber(share), 2), places)}\u00a0%`;
