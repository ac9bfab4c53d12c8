/** The glossary: every trade word the screens use, and the texts of its page. Which word a label uses is read from the label itself. */
import { metalTerms } from './glossary-metals.ts';
import { workTerms } from './glossary-work.ts';

export interface Term {
  /** Its place in the address. */
  readonly key: string;
  readonly name: string;
  /** Other words for the same. */
  readonly also?: readonly string[];
  /** What it means, in one or two sentences. */
  readonly says: string;
  /** What it is not to be confused with. */
  readonly not?: string;
  /** Its unit, where it is a quantity. */
  readonly unit?: string;
}

/** All words, in the order of their names. */
export const glossary: readonly Term[] = [...metalTerms, ...workTerms].toSorted((a: Term, b: Term) =>
  a.name.localeCompare(b.name, 'en'),
);

const plain = (text: string): string => text.toLowerCase().trim();
const namesOf = (term: Term): readonly string[] => [term.name, ...(term.also ?? [])];

/** The words that hold what is typed: those whose name begins with it first, then names, then what is said of them. */
export function termsLike(typed: string): readonly Term[] {
  const sought = plain(typed);
  if (sought === '') return glossary;
  const rank = (term: Term): number => {
    const names = namesOf(term).map(plain);
    if (names.some((name) => name.startsWith(sought))) return 0;
    if (names.some((name) => name.includes(sought))) return 1;
    return plain(`${term.says} ${term.not ?? ''} ${term.unit ?? ''}`).includes(sought) ? 2 : 3;
  };
  return glossary
    .map((term) => ({ term, at: rank(term) }))
    .filter(({ at }) => at < 3)
    .toSorted((a, b) => a.at - b.at)
    .map(({ term }) => term);
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Words by name, longest first, each as a whole word, its plural included. One letter alone is no word of a label. */
const inLabels = glossary
  .flatMap((term) => namesOf(term).map((name) => ({ term, name })))
  .filter(({ name }) => name.length > 1)
  .toSorted((a, b) => b.name.length - a.name.length)
  .map(({ term, name }) => ({ term, found: new RegExp(`(?<![\\p{L}-])${escaped(name)}s?(?![\\p{L}-])`, 'iu') }));

/** The trade word a label uses, the longest where there are several; undefined where it uses none. */
export const termIn = (label: string): Term | undefined => inLabels.find(({ found }) => found.test(label))?.term;

export const glossaryWords = {
  title: 'Words',
  note: 'What the words of the trade mean in this book',
  intro: 'Where a site or an office uses a word otherwise, that use goes before this one: write it into a note.',
  search: 'Look for a word',
  count: (n: number): string => (n === 1 ? '1 word' : `${n} words`),
  none: 'No word here holds that. Try part of it, or clear the field to see them all.',
  also: (names: readonly string[]): string => `Also: ${names.join(', ')}.`,
  not: (what: string): string => `Not ${what}.`,
  unit: (unit: string): string => `Unit: ${unit}`,
  unknown: 'There is no such word here. All words stand below.',
  toWorkings: 'How each figure is worked out',
  open: (name: string): string => `What is “${name}”?`,
  inGlossary: (name: string): string => `“${name}” among all words`,
  hints: 'Words at fields',
  hintsOf: { on: 'Shown', off: 'Not shown' },
} as const;
