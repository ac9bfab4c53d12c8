/**
 * Reads a quantity written as decimal text with its unit, exactly. One reader for masses and volumes, so both refuse the same slips. It never
 * guesses a unit and never rounds.
 */
import { compare, type Decimal, decimalFromText, plus, times, zero } from './decimal.ts';
import { bad, good, type Problem, problem, type Result } from './result.ts';

/** What one kind of quantity may be written in. */
export interface Notation {
  /** The first half of every problem code: `mass-comma`, `volume-comma`. */
  readonly kind: 'mass' | 'volume';
  /** The base unit in one of each unit, exact. */
  readonly factors: Readonly<Record<string, Decimal>>;
  /** Unit words that could mean more than one unit, each with the problem's ending: `bare-ounce`. */
  readonly bare: readonly (readonly [word: RegExp, ending: string])[];
}

/** A quantity as written, and what it comes to in the base unit. */
export interface Quantity {
  readonly text: string;
  readonly amount: Decimal;
}

/** Longest text looked at; a weighing never needs more. */
const longest = 200;
const plain = /^\d+(?:\.\d+)?$/;

/**
 * "955.60 g": one number, one space, one unit, as forms write it; null for anything else, which is then read word by word. Most weights of a book
 * are of this form and are read several times.
 */
function oneUnit(text: string, factors: Notation['factors']): Decimal | null {
  const space = text.indexOf(' ');
  const unit = text.slice(space + 1);
  const factor = space > 0 && Object.hasOwn(factors, unit) ? factors[unit] : undefined;
  const number = text.slice(0, space);
  if (!factor || number.charCodeAt(0) === 45) return null;
  const size = decimalFromText(number);
  // the base unit itself needs no multiplying
  return size && (factor.digits === 1n && factor.places === 0 ? size : times(size, factor));
}

/** "18ozt" is a number and a unit; anything else stays one word and is judged as it stands. */
const wordsOf = (tidy: string): string[] =>
  tidy.split(/\s+/).flatMap((w) => w.match(/^[\d.]+(?=[A-Za-z])|[A-Za-z].*$|.+/g) ?? []);

/**
 * Plain decimals with a point, each followed by its unit, units from large to small and each once.
 * Problems, each beginning with the kind: not-text, empty, too-long, comma, sign, exponent, number, no-unit, unit, order and the bare units'.
 */
export function quantityFromText(text: unknown, field: string, notation: Notation): Result<Quantity> {
  const refuse = (ending: string, data?: Problem['data']): Result<Quantity> =>
    bad(problem(`${notation.kind}-${ending}`, field, data));
  if (text === undefined) return bad(problem('missing', field));
  if (typeof text !== 'string') return refuse('not-text');
  const plainly = text.length <= longest ? oneUnit(text, notation.factors) : null;
  if (plainly) return good({ text, amount: plainly });
  const tidy = text.trim();
  const read = tidy.slice(0, 40);
  if (tidy === '') return refuse('empty');
  if (tidy.length > longest) return refuse('too-long', { most: longest });
  const words = wordsOf(tidy);
  let amount = zero;
  let last: Decimal | undefined;
  for (let i = 0; i < words.length; i += 2) {
    const number = words[i] ?? '';
    const unit = words[i + 1];
    if (number.includes(',')) return refuse('comma', { read });
    if (/^[-+−]/.test(number)) return refuse('sign', { read });
    if (plain.test(number) && unit !== undefined && /^e[-+]?\d+/i.test(unit)) return refuse('exponent', { read });
    const size = plain.test(number) ? decimalFromText(number) : null;
    if (!size) return refuse('number', { read, part: number.slice(0, 40) });
    if (unit === undefined) return refuse('no-unit', { read });
    const twoMeanings = notation.bare.find(([word]) => word.test(unit));
    if (twoMeanings) return refuse(twoMeanings[1], { read });
    const factor = Object.hasOwn(notation.factors, unit) ? notation.factors[unit] : undefined;
    if (!factor) return refuse('unit', { read, unit: unit.slice(0, 40), units: Object.keys(notation.factors).join(' ') });
    if (last && compare(factor, last) >= 0) return refuse('order', { read });
    last = factor;
    amount = plus(amount, times(size, factor));
  }
  return good({ text: tidy, amount });
}
