/**
 * Exact quotients of decimals, for means, shares and yields that are compared with a limit or printed once. Nothing here rounds except
 * `toDouble`, which gives the double nearest to the exact value.
 */
import { type Decimal, decimalFromText, zero } from './decimal.ts';

/** n / d with d above zero. */
export interface Ratio {
  readonly n: bigint;
  readonly d: bigint;
}

const make = (n: bigint, d: bigint): Ratio => (d < 0n ? { n: -n, d: -d } : { n, d });

/** Shortened by the common divisor, so that long sums stay small. */
function shortened({ n, d }: Ratio): Ratio {
  let [a, b] = [n < 0n ? -n : n, d];
  while (b) [a, b] = [b, a % b];
  return a > 1n ? { n: n / a, d: d / a } : { n, d };
}

export const nought: Ratio = { n: 0n, d: 1n };

/** The decimal itself as a ratio. */
export const asRatio = (a: Decimal): Ratio => ({ n: a.digits, d: 10n ** BigInt(a.places) });

/** A ratio written as decimal text, for constants. */
export const ratioFromText = (text: string): Ratio => asRatio(decimalFromText(text) ?? zero);

export const plusRatio = (a: Ratio, b: Ratio): Ratio => shortened(make(a.n * b.d + b.n * a.d, a.d * b.d));
export const minusRatio = (a: Ratio, b: Ratio): Ratio => shortened(make(a.n * b.d - b.n * a.d, a.d * b.d));
export const timesRatio = (a: Ratio, b: Ratio): Ratio => shortened(make(a.n * b.n, a.d * b.d));

/** a / b; null when b is not above zero, because nothing in this trade is shared out over nothing. */
export const over = (a: Ratio, b: Ratio): Ratio | null => (b.n > 0n ? shortened(make(a.n * b.d, a.d * b.n)) : null);

export const sumRatio = (values: readonly Ratio[]): Ratio => values.reduce(plusRatio, nought);

/** The mean of the values; null when there are none. */
export const mean = (values: readonly Ratio[]): Ratio | null => over(sumRatio(values), { n: BigInt(values.length), d: 1n });

/** −1, 0 or 1 as a is below, equal to or above b. */
export function compareRatio(a: Ratio, b: Ratio): -1 | 0 | 1 {
  const difference = a.n * b.d - b.n * a.d;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

export const absoluteRatio = (a: Ratio): Ratio => (a.n < 0n ? { n: -a.n, d: a.d } : a);

/** Digits carried before the one conversion: more than a double can tell apart. */
const guard = 40;

/** Up to here every whole number is a double of its own, and the division of two of them rounds once, to the nearest. */
const exactLimit = 9_007_199_254_740_992n;

/** The double nearest to the exact value: the digits beyond the guard are told by a last one, so a tie cannot be mistaken. */
export function toDouble({ n, d }: Ratio): number {
  if (-exactLimit <= n && n <= exactLimit && d <= exactLimit) return Number(n) / Number(d);
  const size = n < 0n ? -n : n;
  const places = Math.max(0, guard - (size.toString().length - d.toString().length));
  const scaled = size * 10n ** BigInt(places);
  const sticky = scaled % d === 0n ? '0' : '1';
  const value = Number(`${scaled / d}${sticky}e-${places + 1}`);
  return n < 0n ? -value : value;
}

/** The double nearest to a / b. b must not be zero. */
export const quotient = (a: Decimal, b: Decimal): number =>
  // only the difference of the places matters: small numbers stay small
  a.places < b.places
    ? toDouble(make(a.digits * 10n ** BigInt(b.places - a.places), b.digits))
    : toDouble(make(a.digits, b.digits * 10n ** BigInt(a.places - b.places)));
