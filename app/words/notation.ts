/**
 * The notation that words are being written in: one for the whole window, or for the paper that is being drawn up. It begins as the program's own and
 * stays so in the terminal; only `writeIn` changes it. What is on disk, in CSV and in drafts never follows it.
 */
import { type Notation, ownNotation } from '../core/book/site-notation.ts';

let now: Notation = ownNotation;

/** What is written in at this moment. */
export const notation = (): Notation => now;

/** From now on everything is written so. Gives a text that is the same for the same notation: what a page that was written otherwise is known by. */
export function writeIn(next: Notation): string {
  now = next;
  return [next.decimal, next.masses, next.temperature, next.days].join(' ');
}

/** Makes something in a notation, and goes back to the one before. `make` must be done when it returns. */
export function writtenIn<T>(next: Notation, make: () => T): T {
  const before = now;
  now = next;
  try {
    return make();
  } finally {
    now = before;
  }
}

/** Makes something in the program's own notation: text for a spreadsheet, which keeps points and grams. */
export const writtenPlainly = <T>(make: () => T): T => writtenIn(ownNotation, make);

/** Numbers written with a point, with the site's decimal mark: "12.5" becomes "12,5" where it writes commas. */
export const marked = (text: string): string => (now.decimal === 'comma' ? text.replace(/(\d)\.(?=\d)/g, '$1,') : text);

/** The site's decimal mark by name: "point". */
export const markName = (): 'comma' | 'point' => now.decimal;

/**
 * Point and comma changed for each other where the site writes commas, else the text itself. What was typed becomes what the record reads and back
 * again: a comma is the decimal mark, and a point, which might stand for thousands, becomes a comma, which the record refuses by name.
 */
export const swappedMarks = (text: string): string =>
  now.decimal === 'comma' ? text.replace(/[.,]/g, (mark) => (mark === '.' ? ',' : '.')) : text;
