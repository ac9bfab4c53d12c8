/** How each main figure is worked out, in words: the formula, what the example is given, and where the method comes from. No result stands here. */
import { marked } from './notation.ts';

export const workingKeys = ['net', 'gap', 'stock', 'unaccounted', 'detectable', 'fineness', 'yield', 'exposure'] as const;
export type WorkingKey = (typeof workingKeys)[number];

export interface WorkingText {
  readonly title: string;
  /** The formula, in words. */
  readonly formula: readonly string[];
  readonly source: string;
  /** The page that shows it. */
  readonly shown: string;
}

export const workingTexts: Readonly<Record<WorkingKey, WorkingText>> = {
  net: {
    title: 'Net weight and its uncertainty',
    formula: [
      'Net is gross less tare.',
      'Its standard uncertainty has two parts, added as squares: the scatter and the rounding of each of the two readings, and what the certificate of the scale leaves open, in proportion to the net. The second part is the same error in every weighing on that scale, so it adds up over many of them instead of averaging away.',
    ],
    source:
      'JCGM 100:2008, 5.1 and 5.2 (from memory), for the two parts. The share in proportion to the load is this project’s reading of a certificate.',
    shown: 'Scales of this site',
  },
  gap: {
    title: 'Run gap',
    formula: [
      'Gap is charge less sponge, less water, less mercury caught. Above nothing, something was not caught or stayed in the condenser; below nothing, something came out that had gone in before.',
      'Its uncertainty is the root of the squares of the three weighings where they share nothing. In the book, what they share through one scale is taken off against itself first.',
    ],
    source: 'Weighing in and weighing out, common practice; JCGM 100:2008, equation (10) (from memory), for the uncertainty.',
    shown: 'Runs',
  },
  stock: {
    title: 'Stock',
    formula: [
      'Every entry that touches mercury moves some from one place to another. The stock of a place is all that came to it less all that went from it, up to the moment asked.',
      'The sum over all places, the outside among them, is always nothing.',
    ],
    source: 'Double entry: what one place gives, another takes.',
    shown: 'Stocks',
  },
  unaccounted: {
    title: 'Unaccounted, and z',
    formula: [
      'Unaccounted is opening stock and receipts and found, less removals, less what was measurably released, less closing stock.',
      'z is unaccounted divided by its own standard uncertainty. A flask that stood under one seal at both ends adds no doubt; what several items share is added with its sign before it is squared.',
    ],
    source: 'JCGM 100:2008, equation (13) (from memory), for shared errors; the balance itself is plain bookkeeping.',
    shown: 'The account of a period',
  },
  detectable: {
    title: 'Detectable loss',
    get formula() {
      return [
        marked(
          'The smallest loss that the account would find nineteen times in twenty, while raising a false alarm once in twenty: twice 1.644854 standard uncertainties. What is smaller can have happened unseen.',
        ),
      ];
    },
    source: 'IAEA Safeguards Glossary 2001, expected accountancy capability (from memory).',
    shown: 'The account of a period',
  },
  fineness: {
    title: 'Fineness by fire assay',
    formula: [
      'What the proofs lost is added to each cornet, in milligrams; what they gained is taken off. Each cornet over its sample, times a thousand, is the fineness of that sample. The bar has their mean.',
    ],
    source: 'Fire assay with proofs, common practice.',
    shown: 'Bullion',
  },
  yield: {
    title: 'Fine gold and bullion yield',
    formula: [
      'Fine gold is the weight of the bar times its fineness, over a thousand.',
      'Bullion yield is the weight of the bar over the ore it came from; fine yield is the fine gold over the same ore.',
    ],
    source: 'Common practice.',
    shown: 'Yields',
  },
  exposure: {
    title: 'A day’s exposure',
    formula: [
      'Each reading is multiplied by its time; the sum over eight hours is the day’s mean. A reading below what the meter shows counts as nothing at the low end and as its mark at the high end.',
      'Time without a reading is given its own range by the person who knows the work. So the answer is two figures, and the true one lies between them if all that was entered is right.',
    ],
    source: 'Time-weighted mean over eight hours, common practice; the range is this project’s way with what is not known.',
    shown: 'Air',
  },
};

export const workingsWords = {
  title: 'How each figure is worked out',
  short: 'Workings',
  note: 'With invented inputs, reckoned anew on this page',
  intro:
    'Every example is reckoned while this page opens, by the same program code that reckons the book. The inputs are invented. On any page of the book, a figure with a dotted line opens to its own working.',
  index: 'Figures on this page',
  example: (title: string): string => `Example: ${title}`,
  shownAt: 'Shown at',
  toWords: 'Words',
  names: {
    gross: 'Gross',
    tare: 'Tare',
    division: 'Division of the scale',
    scatter: 'Scatter of its readings',
    certificate: (k: string, at: string): string => `Certificate: uncertainty with k = ${marked(k)}, at ${marked(at)}`,
    net: 'Net',
    u: 'Standard uncertainty',
    lot: (n: number): string => `Lot ${n}`,
    sponge: 'Sponge',
    mercury: 'Mercury caught',
    water: 'Water',
    uOf: (what: string): string => `Standard uncertainty of ${what}`,
    charge: 'Charge',
    gap: 'Gap',
    came: 'Came to the flask',
    went: 'Went from the flask to the plates',
    inFlask: 'Stock of the flask',
    inCircuit: 'Stock in circuit',
    opening: 'Opening stock',
    receipt: 'Received',
    removal: 'Removed',
    closing: 'Closing stock',
    sealed: (item: string): string => `${item}, a flask under one seal`,
    weighed: (item: string): string => `${item}, on the shelf`,
    unaccounted: 'Unaccounted',
    z: 'z',
    detectable: 'Detectable loss',
    sample: (n: number): string => `Sample ${n}: taken, cornet`,
    proof: 'Proof: gold taken, found',
    change: 'Loss of the proofs; below nothing, a gain',
    sampleFineness: (n: number): string => `Fineness of sample ${n}`,
    fineness: 'Fineness, mean',
    bar: 'Bar',
    fine: 'Fineness',
    ore: 'Ore',
    fineGold: 'Fine gold',
    bullionYield: 'Bullion yield',
    fineYield: 'Fine yield',
    reading: (from: string, to: string): string => `Reading from ${from} to ${to}`,
    shift: 'Shift',
    unsampled: 'Time without a reading: from, to',
    low: 'Mean over 8 h, at least',
    high: 'Mean over 8 h, at most',
    fromTo: (a: string, b: string): string => `${a} to ${b}`,
    pair: (a: string, b: string): string => `${a}, ${b}`,
  },
} as const;
