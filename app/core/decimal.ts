/**
 * Exact decimals: the readings of a scale are decimal text, and sums, differences and comparisons of them must leave nothing over.
 * Nothing here rounds, except `rounded`, which says how. Numbers with a fractional power of two come in by their shortest decimal text.
 */

/** digits · 10^−places. `places` is never negative. */
export interface Decimal {
  readonly digits: bigint;
  readonly places: number;
}

/** Ways of rounding: half to the even neighbour (ISO 80000-1:2009, annex B, rule A; from memory), or toward zero. */
export type Rule = 'half-even' | 'down';

export const zero: Decimal = { digits: 0n, places: 0 };

const plain = /^(-?)(\d+)(?:\.(\d+))?$/;

/** Powers of ten that readings need; made once, because making one costs more than multiplying by it. */
const powers = Array.from({ length: 64 }, (_, n) => 10n ** BigInt(n));
const tenTo = (n: number): bigint => powers[n] ?? 10n ** BigInt(n);

/** Most digits that a double counts exactly, whatever they are. */
const exactDigits = 15;
const exactLimit = 9_007_199_254_740_992n;

/**
 * A short decimal without a sign, digit by digit: what a scale shows. Null where the text is anything else, which may still be a decimal.
 * The general reader below needs several times as long, and every weight of a book passes here more than once.
 */
function shortDecimal(text: string): Decimal | null {
  let value = 0;
  let point = -1;
  const { length } = text;
  if (length === 0 || length > exactDigits) return null;
  for (let i = 0; i < length; i++) {
    const digit = text.charCodeAt(i) - 48;
    if (digit >= 0 && digit <= 9) value = value * 10 + digit;
    else if (digit === -2 && point < 0 && i > 0 && i < length - 1) point = i;
    else return null;
  }
  return { digits: BigInt(value), places: point < 0 ? 0 : length - 1 - point };
}

/** Reads plain decimal text ("2.50", "-3"); null when it is anything else (exponent, comma, plus sign, blank). */
export function decimalFromText(text: string): Decimal | null {
  const short = shortDecimal(text);
  if (short) return short;
  const m = plain.exec(text);
  if (!m) return null;
  const fraction = m[3] ?? '';
  const digits = BigInt((m[2] ?? '') + fraction);
  return { digits: m[1] === '-' ? -digits : digits, places: fraction.length };
}

/** The decimal that JavaScript prints for this finite number, exactly: 0.1 becomes one tenth, 1e-7 becomes 0.0000001. */
export function decimalFromNumber(value: number): Decimal {
  if (!Number.isFinite(value)) throw new RangeError('a decimal needs a finite number');
  const [mantissa = '0', exponent = '0'] = String(value).split('e');
  const base = decimalFromText(mantissa) ?? zero;
  return shifted(base, Number(exponent));
}

/** value · 10^power. */
export function shifted(value: Decimal, power: number): Decimal {
  if (power <= value.places) return { digits: value.digits, places: value.places - power };
  return { digits: value.digits * tenTo(power - value.places), places: 0 };
}

const at = (value: Decimal, places: number): bigint =>
  places === value.places ? value.digits : value.digits * tenTo(places - value.places);

export function plus(a: Decimal, b: Decimal): Decimal {
  const places = Math.max(a.places, b.places);
  return { digits: at(a, places) + at(b, places), places };
}

export const negative = (a: Decimal): Decimal => ({ digits: -a.digits, places: a.places });

export function minus(a: Decimal, b: Decimal): Decimal {
  const places = Math.max(a.places, b.places);
  return { digits: at(a, places) - at(b, places), places };
}

export const times = (a: Decimal, b: Decimal): Decimal => ({ digits: a.digits * b.digits, places: a.places + b.places });

export const sum = (values: readonly Decimal[]): Decimal => values.reduce(plus, zero);

/** −1, 0 or 1 as a is below, equal to or above b. */
export function compare(a: Decimal, b: Decimal): -1 | 0 | 1 {
  const places = Math.max(a.places, b.places);
  const left = at(a, places);
  const right = at(b, places);
  return left < right ? -1 : left > right ? 1 : 0;
}

export const isZero = (a: Decimal): boolean => a.digits === 0n;

export const absolute = (a: Decimal): Decimal => (a.digits < 0n ? negative(a) : a);

/** The nearest double. */
export function toNumber(a: Decimal): number {
  // digits and power are both exact as doubles: one division rounds once, to the nearest
  if (a.places <= 22 && -exactLimit <= a.digits && a.digits <= exactLimit) return Number(a.digits) / 10 ** a.places;
  return Number(toText(a));
}

/** All digits, trailing zeros kept, never an exponent, never "-0". */
export function toText(a: Decimal): string {
  const sign = a.digits < 0n ? '-' : '';
  const digits = (a.digits < 0n ? -a.digits : a.digits).toString().padStart(a.places + 1, '0');
  if (a.places === 0) return sign + digits;
  return `${sign}${digits.slice(0, -a.places)}.${digits.slice(-a.places)}`;
}

/** a / b rounded to a whole number by the rule. b must not be 0. */
export function dividedWhole(a: Decimal, b: Decimal, rule: Rule = 'half-even'): bigint {
  const places = Math.max(a.places, b.places);
  let n = at(a, places);
  let d = at(b, places);
  if (d < 0n) {
    n = -n;
    d = -d;
  }
  const sign = n < 0n ? -1n : 1n;
  const size = n * sign;
  let whole = size / d;
  const rest = size % d;
  if (rule === 'half-even' && (rest * 2n > d || (rest * 2n === d && whole % 2n === 1n))) whole += 1n;
  return whole * sign;
}

/** a / b to `places` decimals, half-even: for quotients that are shown or compared at more places than any reading has. */
export const divided = (a: Decimal, b: Decimal, places: number): Decimal => ({
  digits: dividedWhole(shifted(a, places), b),
  places,
});

/** Rounded once to `places` decimals, on the decimal itself. */
export const rounded = (a: Decimal, places: number, rule: Rule = 'half-even'): Decimal =>
  a.places <= places
    ? { digits: at(a, places), places }
    : {
        digits: dividedWhole({ digits: a.digits, places: 0 }, { digits: tenTo(a.places - places), places: 0 }, rule),
        places,
      };
