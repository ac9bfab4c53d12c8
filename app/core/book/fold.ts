/**
 * Text as it is compared when something is looked for: without case, accents, marks of no width, and the differences between dashes, quotes and spaces
 * that a keyboard makes. It changes nothing that is kept or shown. Source: Unicode Standard Annex 15, compatibility decomposition.
 */
const plain = /^[\x20-\x7e]*$/;

/** Letters that decompose into nothing plainer by themselves. */
const letters: Readonly<Record<string, string>> = {
  '\u00df': 'ss', // sharp s
  '\u00e6': 'ae', // ae
  '\u0153': 'oe', // oe
  '\u00f8': 'o', // o with a stroke
  '\u0111': 'd', // d with a stroke
  '\u00f0': 'd', // eth
  '\u0142': 'l', // l with a stroke
  '\u00fe': 'th', // thorn
  '\u0131': 'i', // i without a dot
  '\u03c2': '\u03c3', // the last sigma of a word
};

/** The text folded for comparing. */
export function folded(text: string): string {
  if (plain.test(text)) return text.toLowerCase();
  return text
    .normalize('NFKD')
    .replace(/[\p{M}\p{Cf}]+/gu, '')
    .toLowerCase()
    .replace(/[\u00df\u00e6\u0153\u00f8\u0111\u00f0\u0142\u00fe\u0131\u03c2]/g, (letter) => letters[letter] ?? letter)
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/[\u2018\u2019\u201a\u201b\u2032]/g, "'")
    .replace(/[\u201c\u201d\u201e\u00ab\u00bb\u2033]/g, '"')
    .replace(/\s+/g, ' ');
}

/** The words of what is looked for, each once, in the order they were written. */
export const wordsOf = (text: string): readonly string[] => [
  ...new Set(
    folded(text)
      .split(' ')
      .filter((word) => word !== ''),
  ),
];
