/**
 * A figure traced to its readings, in words: what was read, on which scale under which certificate, what makes the uncertainty, and which method says so,
 * each with whether it was read in its source or is given from memory.
 */

import type { Book } from '../core/book/book.ts';
import type { DoubtKind } from '../core/book/doubts.ts';
import type { Basis } from '../core/book/movements/gathering.ts';
import type { ComponentKind } from '../core/book/trace.ts';
import { marked } from './notation.ts';
import { placeText } from './places.ts';
import { temperatureText } from './temperatures.ts';

const times = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** How an amount comes about, by how it is known. */
export const basisFormulas: Readonly<Record<Basis, string>> = {
  weighed: 'gross − tare; less gold where the mercury was strained',
  stated: 'as somebody else stated it',
  estimated: 'by a named method, or a share of a weight',
  trued: 'charge − sponge · (1 − residual share) − water: from what stayed behind, never from what was caught',
  allotted: 'the total of a run of several lots, in proportion to their estimates',
  sibling: 'as the lot it was split from',
  difference: 'what came out less what went in',
  counted: 'what was counted less what the book had there',
  'invoice-against-weighed': 'what the scale showed less what the invoice said',
};

export const componentNames: Readonly<Record<ComponentKind, string>> = {
  repeatability: 'Repeatability, s for each reading',
  division: 'Division, d ÷ √12 for each reading',
  linearity: 'Linearity, a ÷ √3 for each reading',
  certificate: 'Certificate, U ÷ k in proportion to the net: shared by all readings until the next calibration',
  class: 'No certificate: twice the error allowed at verification, ÷ √3, shared by all readings of the scale',
  volume: 'Reading of the volume',
  temperature: 'Temperature of the mercury',
  density: 'Density of mercury, shared by all volumes',
  stated: 'As the other side stated it',
};

/** The method of each part, with whether it was read. */
export const componentSources: Readonly<Record<ComponentKind, string>> = {
  get repeatability() {
    return `JCGM 100:2008, 4.2 (from memory); never below ${marked('0.41')} d: United States Pharmacopeia, chapter 41 (read)`;
  },
  division: 'JCGM 100:2008, F.2.2.1 (from memory)',
  linearity: 'Eurachem/CITAC, Quantifying Uncertainty in Analytical Measurement, appendix A1 (read)',
  certificate: 'JCGM 100:2008, 4.3.3 (from memory)',
  class:
    'OIML R 76-1:2006, table 6 (read) and 3.5.2 (from memory); that it stands in for a certificate is a convention of this program',
  volume: 'JCGM 100:2008, 5.1.2 (from memory); density: Bigg 1964, Beattie and others 1941 (from memory)',
  temperature: 'Density of mercury and its slope: Bigg 1964, Beattie and others 1941 (from memory)',
  density: 'Bigg 1964, Beattie and others 1941 (from memory)',
  stated: 'Nothing here was measured: it is taken as it was given',
};

/** Where the error of a share, a rest or an estimate comes from. Readings and scales have their parts above. */
export const kindSources: Readonly<Record<DoubtKind, string>> = {
  scale: '',
  reading: '',
  method: 'As its entry says: by the method and the errors that were written down with it',
  share:
    'Mercury as a share of a weight: as its entry says; of squeezed amalgam without a history 50 to 75 parts in a hundred, taken as rectangular (read)',
  get residual() {
    return marked(
      'Mercury left in sponge: 1 to 1.5 parts in a hundred, taken as rectangular (read), or as this site set it; where the sponge was heavy, by the usual ratio',
    );
  },
  allotment: 'Split of one total in proportion to estimates: its errors cancel in the sum',
  get gold() {
    return marked('Gold in strained mercury: 0.03 to 0.17 parts in a hundred, taken as rectangular (read)');
  },
  density: 'Bigg 1964, Beattie and others 1941 (from memory)',
  rate: 'This site’s own earlier periods',
  other: '',
};

/** Where the rules of the account's figures come from. */
export const figureSources = {
  sum: 'Errors by source, what two readings share added with its sign before it is squared: JCGM 100:2008, equation (13) and 5.2.2 (from memory)',
  z: 'Twice the standard uncertainty as the mark of significance: Jaech, INMM volume 2, number 4, page 16 (read)',
  get detectable() {
    return `${marked('Twice 1.644854')}: IAEA Safeguards Glossary 2001, expected accountancy capability (from memory)`;
  },
  perTonne: 'not accounted for ÷ ore in tonnes, their relative uncertainties added as squares',
  perTonneSource: 'Relative uncertainty of a quotient: JCGM 100:2008, 5.1.6 (from memory)',
} as const;

export const traceWords = {
  title: (entry: string) => `Trace: ${entry}`,
  link: 'Trace it to its readings',
  intro:
    'Everything this entry moved, each amount down to what was read. The parts of an uncertainty are added as squares, after what two readings share was added or cancelled with its sign.',
  theEntry: 'The entry itself',
  none: 'This entry moves no mercury by itself.',
  noEntry: 'No entry of this book bears this name.',
  movement: (book: Book, from: string, to: string) => `${placeText(book, from)} → ${placeText(book, to)}`,
  readings: 'What was read',
  otherReadings: 'Readings of other entries',
  otherReadingsNote: (n: number) => `${times(n, 'reading', 'readings')} that an amount here rests on`,
  showOthers: 'Open them',
  amount: 'Mercury moved',
  weighing: (what: string) => `Read: ${what}`,
  ofEntry: (what: string, entry: string) => `${what}, in: ${entry}`,
  gross: 'Gross',
  reading: 'Reading, scale zeroed',
  tare: 'Tare',
  volume: (volume: string, t: string) => `${volume} at ${temperatureText(t)}`,
  stated: (by: string) => (by === '' ? 'Stated by somebody not named' : `Stated by ${by}`),
  net: 'Net, with expanded uncertainty (k = 2)',
  noScale: 'No scale was named: how sure this is cannot be said',
  scale: (label: string, d: string) => `${label}, reads to ${d}`,
  scaleFrom: (day: string, who: string) => `Entered in this state on ${day}, by ${who}`,
  nobody: 'nobody named',
  certificate: (number: string, U: string, k: string, at: string) =>
    `Certificate${number === '' ? '' : ` ${number}`}: U ${U} (k = ${k}) at ${at}`,
  certificateDays: (on: string, due: string) =>
    [on === '' ? 'its day is not recorded' : `made on ${on}`, due === '' ? 'no day set for the next' : `next due on ${due}`].join(
      ', ',
    ),
  noCertificate: 'No certificate on the book: unverified',
  sources: 'What makes its uncertainty, largest first',
  source: (what: string, share: string) => `${what}: ${share} of the variance`,
  sum: 'Uncertainty of the amount (k = 2): twice the root of the squares',
  sumSource: 'JCGM 100:2008, equation (13) and 5.2.2 (from memory)',
  exact: 'Exactly as reckoned: nothing in it is uncertain, or nobody recorded how much',
  others: (n: number) => `${times(n, 'other source', 'other sources')} together`,
  get lessThan() {
    return marked('less than 0.1 %');
  },

  stands: 'Stands in',
  standsNote: 'Statements and papers it touches',
  standsNowhere: 'It stands in no account and on no paper of its own.',
  periods: 'Counted periods',
  period: (from: string, to: string) =>
    `${from === '' ? 'From the beginning' : `After the count of ${from}`} to the count of ${to}`,
  open: 'Since the last count: in no counted period yet',
  closings: 'Closings',
  closing: (version: number, to: string) => `Closing to ${to}, version ${version}`,
  runs: 'Runs',
  lots: 'Balls and lots',
  yields: 'Yields',
  yieldOf: (name: string) => `Yield of: ${name}`,
  papers: 'Papers',
  moves: 'Movements',
  movesOwn: (n: number) => `${times(n, 'movement', 'movements')} written by it`,
  restsOn: (entry: string, n: number) => `${times(n, 'movement', 'movements')} of: ${entry}`,
  resting: 'Movements of other entries that rest on it',
} as const;
