/**
 * Text that the paper's font can draw. A character it lacks would print as an empty box that tells nobody what stood there; its number in the
 * Unicode tables is printed instead. Nothing else about a text is changed: what was entered carries no markup and gets none.
 */
import type { Content } from 'pdfmake/interfaces';
import { frameWords } from '../words/papers.ts';

/** Whether the font has a character, asked by its code point. */
export type CanPrint = (codePoint: number) => boolean;

const layoutMarks = new Set([0x09, 0x0a]);

export const printableText = (text: string, canPrint: CanPrint): string =>
  Array.from(text, (character) => {
    const code = character.codePointAt(0) ?? 0;
    return layoutMarks.has(code) || canPrint(code)
      ? character
      : frameWords.unprintable(code.toString(16).toUpperCase().padStart(4, '0'));
  }).join('');

/** A copy of the content in which every text can be drawn. */
export function printable<C extends Content>(content: C, canPrint: CanPrint): C {
  const inside = (value: unknown, key: string): unknown => {
    if (typeof value === 'string') return key === 'text' ? printableText(value, canPrint) : value;
    if (Array.isArray(value)) return value.map((item) => inside(item, key));
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, inside(v, k)]));
  };
  return inside(content, 'text') as C;
}
