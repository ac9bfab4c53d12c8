/** Addresses of the words and of how figures are worked out, and a word as a field shows it. */
import type { Explained } from '../../parts/explained.ts';
import { glossaryWords, type Term, termIn } from '../../words/glossary.ts';
import { marked } from '../../words/notation.ts';

/** All words, or one of them. */
export const wordHref = (key?: string): string => `#/words${key === undefined ? '' : `/${key}`}`;
/** How figures are worked out, or one of them. */
export const workingsHref = (key?: string): string => `#/workings${key === undefined ? '' : `/${key}`}`;

/** What is said of a word, sentence by sentence, other names left out. */
export const saidOf = ({ says, not, unit }: Term): readonly string[] => [
  marked(says),
  ...(not === undefined ? [] : [marked(glossaryWords.not(not))]),
  ...(unit === undefined ? [] : [marked(glossaryWords.unit(unit))]),
];

/** The trade word that a label uses, for the field it stands at. */
export function explainedIn(label: string): Explained | null {
  const term = termIn(label);
  if (!term) return null;
  return {
    question: glossaryWords.open(term.name),
    says: saidOf(term),
    href: wordHref(term.key),
    more: glossaryWords.inGlossary(term.name),
  };
}
