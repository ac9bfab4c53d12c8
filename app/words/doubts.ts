/** What makes the uncertainty of an account, in plain words, and what would cut it. */
import type { Book } from '../core/book/book.ts';
import type { Cut, Doubt, DoubtKind } from '../core/book/doubts.ts';
import { entryLine } from './daybook-line.ts';

const of: Readonly<Record<DoubtKind, (what: string) => string>> = {
  scale: (what) => `The calibration of a scale (${what})`,
  method: (what) => `An estimate (${what})`,
  reading: (what) => `One reading (${what})`,
  share: (what) => `Mercury taken as a share of a weight (${what})`,
  residual: (what) => `Mercury left in sponge (${what})`,
  allotment: (what) => `Lots fired together (${what})`,
  gold: () => 'Gold in strained mercury',
  density: () => 'The density of mercury',
  rate: () => 'The usual rate of this site',
  other: (what) => what,
};

const cuts: Readonly<Record<Cut, string>> = {
  'recalibrate-scale': 'have the scale calibrated again, with a smaller uncertainty',
  'weigh-not-estimate': 'weigh it instead of estimating it',
  'weigh-again': 'weigh it again, on a finer scale or several times',
  'weigh-what-was-stated': 'weigh what was only stated',
  'assay-the-share': 'have its mercury assayed',
  'fire-or-melt': 'fire it, or fire it again, and weigh what is left',
  'fire-apart': 'fire the lots apart',
  'assay-the-mercury': 'have the strained mercury assayed for gold, or retort it',
  'measure-volume-less': 'weigh the mercury instead of measuring its volume',
  'count-more-periods': 'count more periods',
  'tell-its-error': 'write down how sure it is',
};

/** What a doubt is of. */
export function doubtSource(book: Book, { kind, of: what, entry }: Pick<Doubt, 'kind' | 'of' | 'entry'>): string {
  const reading = entry === null ? undefined : book.current.byId.get(entry);
  return of[kind](reading ? entryLine(book, reading) : what);
}

/** What would cut it. */
export const cutText = (cut: Cut): string => cuts[cut];

/** A doubt and what would cut it. */
export const doubtText = (book: Book, doubt: Pick<Doubt, 'kind' | 'of' | 'entry' | 'cut'>): string =>
  `${doubtSource(book, doubt)}: ${cutText(doubt.cut)}.`;
