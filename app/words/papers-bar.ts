/** Texts of the bar record: what one bar is made of and was found to hold. It certifies nothing, and says so. */

import type { BarFate } from '../core/book/bars.ts';
import type { FinenessClass } from '../core/book/fineness.ts';
import { massHead } from './figures.ts';

export const barPaper = {
  name: 'Bar record',
  subject: (label: string, day: string) => `${label}, poured ${day}`,
  number: (id: string) => `Filed under its melt and its row there, ${id}`,
  isNot:
    'This record certifies nothing. It repeats what was written down of this bar and what follows from it. What a bar is worth, and whether it may be held, moved or sold, is for the assayer, the buyer and the authorities to say.',
  noPlace: 'Where the bar is kept is not printed.',

  bar: 'The bar',
  label: 'Stamped number',
  mass: 'Mass',
  poured: 'Poured',
  by: 'Recorded by',
  witness: 'Seen by',
  made: 'Made of',
  bars: (labels: string) => `earlier bars: ${labels}`,
  sponges: (names: string) => `sponge of ${names}`,
  other: (labels: string) => `other metal: ${labels}`,
  lots: 'Out of the lots',
  ore: 'Out of the work and ore',
  fate: 'What became of it',
  fates: { here: 'here, by the book', left: 'left the site', melted: 'melted again' } satisfies Readonly<Record<BarFate, string>>,
  out: (party: string, document: string) => `handed over to ${party}, document ${document}`,
  back: (party: string, document: string) => `taken back from ${party}, document ${document}`,
  melted: 'went into a melt',

  holds: 'What it holds',
  metal: 'Metal',
  permille: 'Parts per thousand',
  get grams(): string {
    return massHead('Fine');
  },
  U: '± U (k = 2)',
  basis: 'By',
  gold: 'Gold',
  silver: 'Silver',
  base: 'Neither gold nor silver',
  notAssayed: 'No assay of this bar is written down: what it holds is not known.',
  classes: {
    certificate: 'certificate of another laboratory',
    titration: 'titration',
    proofed: 'fire assay with proofs',
    unproofed: 'fire assay without proofs, uncorrected',
    'by-parts': 'the bars it was melted from, weighed in by mass',
    indicative: 'density, indicative only',
  } satisfies Readonly<Record<FinenessClass, string>>,
  sampling: (permille: string) => `Sampling adds ${permille} parts per thousand to the gold (k = 1). It is counted in U.`,
  noSampling: 'What sampling adds was not stated. It is not in U, and is often more than all the rest.',
  indicative: 'The gold rests on a density. It is an indication, and no basis for a settlement.',

  assays: 'Assays of this bar',
  method: 'Assay',
  from: 'By whom',
  sampled: 'Sampled',
  noLaboratory: 'not recorded',

  settlement: 'Settlement',
  settlementNote: 'A figure agreed between two parties. It stands beside the assays and changes none of them.',
  ours: 'Our figure',
  theirs: 'Their figure',
  difference: 'Difference',
  limit: 'Splitting limit',
  rule: 'Rule of the contract beyond it',
  umpire: 'Umpire',
  noUmpire: 'none',
  contract: 'Contract',
  settled: 'Settled at',
  waits: 'not settled: an umpire’s figure is needed',
  settledFine: 'Fine gold by the settled figure',
} as const;
