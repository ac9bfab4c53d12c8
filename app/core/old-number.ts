/** Whole numbers with a fraction as old books print them: "10 1/2", "10½", "2.5". Exact, or nothing. Source: methods.md 4 (mixed notations). */
import { decimalFromText } from './decimal.ts';
import { asRatio, plusRatio, type Ratio } from './ratio.ts';

const printed: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** Longer than any old book prints; keeps a hostile text from being worked on. */
const longest = 60;

/** Printed fractions written out, spaces single. Null where the text is longer than a figure is. */
export function writtenOut(text: string): string | null {
  if (text.length > longest) return null;
  return text
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${printed[sign] ?? ''}`)
    .replace(/\s+/g, ' ')
    .trim();
}

/** A number as a pattern inside a longer one; matches exactly what `oldNumber` reads. */
export const numberPattern = '\\d+\\.\\d+|\\d+(?: \\d+/\\d+)?|\\d+/\\d+';

/** The number, exact; null where it is none or its fraction is not a proper one. */
export function oldNumber(text: string): Ratio | null {
  const written = writtenOut(text);
  if (written === null) return null;
  const decimal = /^\d+(?:\.\d+)?$/.test(written) ? decimalFromText(written) : null;
  if (decimal) return asRatio(decimal);
  const m = /^(?:(\d+) )?(\d+)\/(\d+)$/.exec(written);
  if (!m) return null;
  const [whole, n, d] = [BigInt(m[1] ?? 0), BigInt(m[2] ?? 0), BigInt(m[3] ?? 0)];
  return n > 0n && n < d ? plusRatio({ n: whole, d: 1n }, { n, d }) : null;
}
