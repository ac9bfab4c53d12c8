/** What of a desk's record no figure counts: lines behind a fork, behind a gap, of a newer program, or cut off. Whatever is worked out over the rest has to say so. */
import type { CoveredDesk } from '../../app/papers/paper.ts';
import { leftOutTexts } from '../../app/words/notices.ts';
import { type Desk, rangesText } from './daybook-folder.ts';

/** Desks as a paper covers them. */
export const coveredDesks = (desks: readonly Desk[]): CoveredDesk[] =>
  desks.map((desk) => ({ desk: desk.desk, entries: desk.entries, endMark: desk.endMark, leftOut: leftOut(desk) }));

/** In words, what is left out of a desk; one sentence for each cause, none where all of it counts. */
export const leftOut = ({
  desk,
  fork,
  missing,
  torn,
  newer,
}: Pick<Desk, 'desk' | 'fork' | 'missing' | 'torn' | 'newer'>): string[] => [
  ...(fork ? [leftOutTexts.fork(desk, fork.line)] : []),
  ...(missing?.[0] ? [leftOutTexts.missing(desk, rangesText(missing), missing[0].from)] : []),
  ...(newer ? [leftOutTexts.newer(desk, newer.line)] : []),
  ...(torn ? [leftOutTexts.torn(desk, torn.line)] : []),
];
