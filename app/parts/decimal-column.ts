/** Figures of one column made to align on the decimal point: what has to stand, unseen, after each so that all points fall in one line. */
import { notation } from '../words/notation.ts';

const comma = (): boolean => notation().decimal === 'comma';
const decimalsOf = (text: string): string =>
  (comma() ? /^[^0-9]*[\d\s]*(,\d+)?/ : /^[^0-9]*[\d,\s]*(\.\d+)?/).exec(text)?.[1] ?? '';

/** For each text the invisible digits to set after it. Texts without a digit get none. */
export function decimalTails(texts: readonly string[]): readonly string[] {
  const ends = texts.map((text) => (/\d/.test(text) ? decimalsOf(text).length : null));
  const longest = Math.max(0, ...ends.map((n) => n ?? 0));
  return ends.map((n) => {
    if (n === null || n === longest) return '';
    return n === 0 ? `${comma() ? ',' : '.'}${'0'.repeat(longest - 1)}` : '0'.repeat(longest - n);
  });
}
