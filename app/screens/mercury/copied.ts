/** Text that is copied out of a table: comma-separated cells of which none begins a formula, and the way to the clipboard. */
import { asText } from '../../words/formula.ts';

const cell = (text: string): string => `"${asText(text).replaceAll('"', '""')}"`;

/** A shown figure as a spreadsheet reads it: a plain minus, no spaces. */
export const plainNumber = (text: string): string => text.replace(/[\u202f\u00a0]/g, '').replace('−', '-');

/** Rows of cells as text. */
export const csvOf = (rows: readonly (readonly string[])[]): string =>
  rows.map((cells) => `${cells.map(cell).join(',')}\n`).join('');

/** Puts a text on the clipboard; false where the page may not. */
export async function copied(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
