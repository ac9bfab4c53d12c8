/**
 * Figures as they are shown: rounded once, half to even, on the exact decimal; an uncertainty with at most two digits and the value to the same
 * place (JCGM 100:2008, 7.2.6; from memory). A minus is the true minus sign; there is no minus nothing.
 */
import { type Decimal, decimalFromNumber, isZero, rounded, shifted, toText } from '../core/decimal.ts';

/** Decimals to which a standard or expanded uncertainty in grams is shown: two digits, never finer than a tenth of a milligram. */
export function placesFor(uG: number): number {
  if (!(uG > 0)) return 2;
  const first = Math.floor(Math.log10(uG));
  // 0.0996 rounds up to three digits' worth of two: the place moves with it
  const digits = Number((uG / 10 ** first).toFixed(1)) >= 10 ? first + 1 : first;
  return Math.min(4, Math.max(0, 1 - digits));
}

const grouped = (text: string): string => {
  const [whole = '', fraction] = text.split('.');
  const spaced = whole.replace(/\B(?=(\d{3})+(?!\d))/g, '\u202f');
  return fraction === undefined ? spaced : `${spaced}.${fraction}`;
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

/** "12.6 g" from micrograms: to the given places, by default 2. */
export const gramText = (ug: number, how: { places?: number; sign?: boolean } = {}): string =>
  `${decimalText(gramsOf(ug), how.places ?? 2, how.sign)}\u00a0g`;

/** "12.60 ± 0.64 g": value and expanded uncertainty (k = 2) to the same place; without a known u only the value, to two places. */
export function withU(grams: Decimal, uG: number | null, sign = false): string {
  if (uG === null) return `${decimalText(grams, 2, sign)}\u00a0g`;
  const U = 2 * uG;
  const places = U > 0 ? placesFor(U) : 2;
  return U > 0
    ? `${decimalText(grams, places, sign)} ± ${decimalText(decimalFromNumber(U), places)}\u00a0g`
    : `${decimalText(grams, places, sign)}\u00a0g`;
}

/** A share as a percentage: 0.013186 to "1.32 %". */
export const percentText = (share: number, places = 2): string =>
  `${decimalText(shifted(decimalFromNumber(share), 2), places)}\u00a0%`;
