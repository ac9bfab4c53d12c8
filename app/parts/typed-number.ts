/**
 * What is typed into a number field, and the text the form holds for it. Forms hold numbers as the record has them, with a point and in degrees Celsius;
 * only the field itself is in the site's notation. What is no number goes through both ways, so that the schema names it.
 */
import { decimalFromNumber, rounded, toText } from '../core/decimal.ts';
import { notation, swappedMarks } from '../words/notation.ts';

/** What a number field counts: a temperature on the scale, a difference of temperatures, or anything else. */
export type Counts = 'temperature' | 'difference' | 'other';

export const countsOf = (unit: string | undefined, difference: boolean): Counts =>
  unit !== '°C' ? 'other' : difference ? 'difference' : 'temperature';

const number = (text: string): number | null => {
  const plain = text.trim().replace('−', '-');
  return /^-?\d{1,12}(\.\d{1,12})?$/.test(plain) ? Number(plain) : null;
};
/** At most so many decimals, none that say nothing. */
const tidy = (value: number, places: number): string => {
  const text = toText(rounded(decimalFromNumber(value), places));
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
};

/** The text a form holds for what was typed. Degrees Fahrenheit become degrees Celsius to a hundredth. */
export function heldNumber(typed: string, counts: Counts): string {
  const plain = swappedMarks(typed);
  if (counts === 'other' || notation().temperature === 'celsius') return plain;
  const f = number(plain);
  return f === null ? plain : tidy(((counts === 'difference' ? f : f - 32) * 5) / 9, 2);
}

/** What the field shows of a text that the form held before anything was typed. */
export function shownNumber(held: string, counts: Counts): string {
  const c = counts === 'other' || notation().temperature === 'celsius' ? null : number(held);
  return swappedMarks(c === null ? held : tidy((c * 9) / 5 + (counts === 'difference' ? 0 : 32), 1));
}
