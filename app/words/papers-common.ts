/** Texts that several papers share. */
import { kindName } from './daybook-naming.ts';
import { runSheet } from './papers.ts';

/** "the charge": a kind of entry inside a sentence. */
export const theKind = (kind: string): string => runSheet.kinds[kind] ?? `the ${kindName(kind).toLowerCase()}`;

export const commonWords = {
  capital: (text: string) => text.charAt(0).toUpperCase() + text.slice(1),
  small: (text: string) => text.charAt(0).toLowerCase() + text.slice(1),
  about: (entry: string, text: string) => `${entry}: ${text}`,
  uUnknown: (n: number) =>
    `${n === 1 ? 'One weight' : `${n} weights`} on this paper ${n === 1 ? 'has' : 'have'} no known uncertainty. Nothing is counted for ${n === 1 ? 'it' : 'them'} in any ± U here, so those are too small.`,
  noChanges: 'Nothing this paper rests on was corrected, struck or noted upon.',
  notCounted: '–',
  remarks: 'Remarks',
  filed: (id: string) => `Filed under ${id}`,
  notComputable: (why: string) => `not computable: ${why}`,
} as const;
