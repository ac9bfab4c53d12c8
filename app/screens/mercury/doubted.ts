/** What makes the doubt of an account as a table: source, share of the variance, what would cut it. Shares are the core's; none is added anew. */
import type { Book } from '../../core/book/book.ts';
import { doubtsOf } from '../../core/book/doubts.ts';
import type { Measured } from '../../core/measured.ts';
import { cutText, doubtSource } from '../../words/doubts.ts';
import { percentText } from '../../words/figures.ts';
import { entryHref } from '../shared/places.ts';

export interface DoubtRow {
  readonly source: string;
  readonly share: string;
  readonly cut: string;
  /** The entry to open, where there is one. */
  readonly href: string | undefined;
}

/** Sources told one by one, and a share below which none is. */
const mostTold = 8;
const leastShare = 0.01;

/** The largest sources, and how many smaller ones there are with what they make together. */
export function doubtRows(
  book: Book,
  value: Measured,
): { readonly rows: readonly DoubtRow[]; readonly rest: { readonly n: number; readonly share: string } | null } {
  const all = doubtsOf(book, value).filter((d) => d.share > 0);
  const told = all.filter((d, i) => i < mostTold && (i === 0 || d.share >= leastShare));
  const rest = all.slice(told.length);
  return {
    rows: told.map((d) => ({
      source: doubtSource(book, d),
      share: percentText(d.share, 1),
      cut: cutText(d.cut),
      href: d.entry === null ? undefined : entryHref(d.entry),
    })),
    rest:
      rest.length === 0
        ? null
        : {
            n: rest.length,
            share: percentText(
              rest.reduce((sum, d) => sum + d.share, 0),
              1,
            ),
          },
  };
}
