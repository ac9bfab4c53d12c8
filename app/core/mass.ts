/**
 * Masses as they are read off a scale: decimal text with its unit, kept exactly, beside an exact value in grams and whole micrograms.
 * A bare "oz" or "ton" is never guessed. Unit factors: National Institute of Standards and Technology, Handbook 44, appendix C,
 * section 4 (exact by the 1959 international pound of 453.59237 g; read through the references of methods.md section 4).
 */
import {
  type Decimal,
  decimalFromText as decimal,
  dividedWhole,
  isZero,
  rounded,
  shifted,
  times,
  toText,
  zero,
} from './decimal.ts';
import { type Notation, quantityFromText } from './quantity.ts';
import { quotient } from './ratio.ts';
import { bad, good, problem, type Result } from './result.ts';

/** Units a mass may be written in. Case-sensitive. `gr dwt ozt lbt` are troy, `oz-av lb` avoirdupois. */
export const massUnits = ['ug', 'mg', 'g', 'kg', 't', 'gr', 'dwt', 'ozt', 'lbt', 'oz-av', 'lb', 'short-ton', 'long-ton'] as const;
export type MassUnit = (typeof massUnits)[number];

const exact = (text: string): Decimal => decimal(text) ?? zero;

/** Grams in one of each unit, exact. */
export const gramsPer: Readonly<Record<MassUnit, Decimal>> = {
  ug: exact('0.000001'),
  mg: exact('0.001'),
  g: exact('1'),
  kg: exact('1000'),
  t: exact('1000000'),
  gr: exact('0.06479891'),
  dwt: exact('1.55517384'),
  ozt: exact('31.1034768'),
  lbt: exact('373.2417216'),
  'oz-av': exact('28.349523125'),
  lb: exact('453.59237'),
  'short-ton': exact('907184.74'),
  'long-ton': exact('1016046.9088'),
};

/** A mass as somebody wrote it down. */
export interface Mass {
  /** Exactly as read: "2.50 g" stays "2.50 g". */
  readonly text: string;
  /** Grams, exact. */
  readonly grams: Decimal;
  /** Whole micrograms, half-even: a safe integer. What the book adds. */
  readonly ug: number;
}

const notation: Notation = {
  kind: 'mass',
  factors: gramsPer,
  bare: [
    [/^(oz|ozs|ounces?)\.?$/i, 'bare-ounce'],
    [/^tons?\.?$/i, 'bare-ton'],
  ],
};

/**
 * Reads "955.6 g" or "18 ozt 18 dwt" as exact grams, however large: plain decimals with a point, each followed by its unit, units from large to
 * small and each once. Problems: missing, and with `mass-` before them not-text, empty, too-long, bare-ounce, bare-ton, sign, comma, exponent,
 * unit, no-unit, number, order.
 */
export function gramsFromText(text: unknown, field: string): Result<Decimal> {
  const got = quantityFromText(text, field, notation);
  return got.ok ? good(got.value.amount) : got;
}

/** A million is exact as a double, and so is the product wherever it is a safe integer. */
const millionths = [1e6, 1e5, 1e4, 1e3, 1e2, 10, 1];

/** Whole micrograms of exact grams, half-even; above the safe integers only their size tells. */
export function wholeMicrograms(grams: Decimal): number {
  const factor = millionths[grams.places];
  const ug = factor === undefined ? Number.NaN : Number(grams.digits) * factor;
  return Number.isSafeInteger(ug) ? ug : Number(rounded(shifted(grams, 6), 0).digits);
}

/**
 * Whether it is grams as a scale shows them, "955.60 g", up to a thousand tonnes: then `massFromText` reads it. False says nothing. Every weight of a
 * journal passes here, most of them of this form.
 */
export function isPlainGrams(text: string): boolean {
  const end = text.length - 2;
  if (end < 1 || end > 12 || !text.endsWith(' g')) return false;
  let point = end;
  for (let i = 0; i < end; i++) {
    const code = text.charCodeAt(i);
    if (code === 46 && point === end && i > 0 && i < end - 1) point = i;
    else if (!(code >= 48 && code <= 57)) return false;
  }
  return point <= 9;
}

/** A mass for the book: as `gramsFromText`, and small enough to be counted in whole micrograms (`mass-too-large` above some 9,000 t). */
export function massFromText(text: unknown, field: string): Result<Mass> {
  const got = quantityFromText(text, field, notation);
  if (!got.ok) return got;
  const grams = got.value.amount;
  const ug = wholeMicrograms(grams);
  if (!Number.isSafeInteger(ug)) return bad(problem('mass-too-large', field, { read: got.value.text.slice(0, 40) }));
  return good({ text: got.value.text, grams, ug });
}

/** Micrograms as gram text with all its places: 955600000 becomes "955.600000". */
export const gramsText = (ug: number): string => toText({ digits: BigInt(ug), places: 6 });

/** The mass in another unit: the double nearest to the exact quotient. */
export const massIn = (grams: Decimal, unit: MassUnit): number => quotient(grams, gramsPer[unit]);

/** Troy notation "18 ozt 18 dwt 0 gr": grains half-even to 4 places, trailing zeros dropped, carried at 24 grains and 20 pennyweights. */
export function troyText(grams: Decimal): string {
  const perTenThousandth = times(gramsPer.gr, exact('0.0001'));
  const tenThousandths = dividedWhole(grams, perTenThousandth);
  const sign = tenThousandths < 0n ? '-' : '';
  const size = tenThousandths < 0n ? -tenThousandths : tenThousandths;
  const perDwt = 240000n;
  const dwt = size / perDwt;
  const grains = toText({ digits: size % perDwt, places: 4 }).replace(/\.?0+$/, '');
  return `${sign}${dwt / 20n} ozt ${dwt % 20n} dwt ${grains} gr`;
}

/** Whether nothing at all was read. */
export const isNothing = (mass: Mass): boolean => isZero(mass.grams);
