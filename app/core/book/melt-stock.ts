/**
 * What a melt left behind and no later one took: prills and slag. They are stock, and their metal is counted with no melt until they go into a pot. What
 * was handed over or thrown away names no melt and is not told apart here.
 */
import type { Book } from './book.ts';
import type { Reading } from './current.ts';
import { type Weighed, weighedFrom } from './weights.ts';

export interface LeftOver {
  /** The melt that made it. */
  readonly melt: Reading<'melt'>;
  readonly weighed: Weighed;
}

/** The melts whose prills or slag went into this one. */
export const leftOverIn = ({ body }: Reading<'melt'>, what: 'prills' | 'slag'): readonly string[] =>
  what === 'prills' ? (body.added ?? []).flatMap((piece) => piece.prills ?? []) : (body.slags ?? []).map((slag) => slag.melt);

/** Prills or slag not melted again, the oldest first; those that weighed nothing are none. */
export function leftOverOf(book: Pick<Book, 'current' | 'registers'>, what: 'prills' | 'slag'): readonly LeftOver[] {
  const melts = book.current.of('melt');
  const taken = new Set(melts.flatMap((melt) => leftOverIn(melt, what)));
  return melts.flatMap((melt) => {
    const weight = melt.body[what];
    if (!weight || taken.has(melt.id)) return [];
    const weighed = weighedFrom(weight, { entry: melt.id, path: what, at: melt.happened }, book.registers);
    return weighed.net.ug > 0 ? [{ melt, weighed }] : [];
  });
}
