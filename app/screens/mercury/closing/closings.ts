/** What the page shows of periods: those that are not closed, oldest first, and every closing with what later entries made of it, newest first. */
import type { Period } from '../../../core/book/account.ts';
import type { Book } from '../../../core/book/book.ts';
import {
  type Adjustment,
  adjustmentOf,
  type Carried,
  type Closing,
  closingsOf,
  everyClosing,
  isTouched,
  overlap,
} from '../../../core/book/closings.ts';
import { type CountedPeriod, periodsOf } from '../../../core/book/periods.ts';
import { compareMoments } from '../../../core/time.ts';
import { dayText, momentText } from '../../../words/dates.ts';
import { entryName } from '../../../words/daybook-naming.ts';
import { gramText } from '../../../words/figures.ts';
import { closingPage as words } from '../../../words/screens-closing.ts';

/** Counted periods of which no part is closed, oldest first. */
export function openPeriods(book: Book): readonly CountedPeriod[] {
  const closed = closingsOf(book);
  return periodsOf(book).filter(({ period }) => !closed.some((c) => overlap(c.period, period)));
}

/** The one to close next: the first open one after the last that was closed, not a gap that was left before it. */
export function nextToClose(book: Book, open: readonly CountedPeriod[]): CountedPeriod | undefined {
  const last = closingsOf(book).reduce((to, c) => (to === '' || compareMoments(c.to, to) > 0 ? c.to : to), '');
  const after = last === '' ? undefined : open.find((p) => compareMoments(p.closing.happened, last) > 0);
  return after ?? open[0];
}

/** The period in words, by its two counts. */
export const periodText = ({ from, to }: Period): string =>
  words.periodText(from === null ? null : momentText(from), momentText(to ?? ''));

export interface ListedClosing {
  readonly closing: Closing;
  readonly title: string;
  /** What later entries made of it; null for a version that was replaced. */
  readonly adjustment: Adjustment | null;
  /** The same in words. */
  readonly says: string;
  readonly entries: readonly { readonly id: string; readonly text: string }[];
}

function saysOf(adjustment: Adjustment | null): string {
  if (!adjustment) return words.replaced;
  if (!isTouched(adjustment)) return words.untouched;
  return adjustment.ug === 0 ? words.touchedLines : words.touched(gramText(adjustment.ug, { sign: true }));
}

export function listedClosings(book: Book): readonly ListedClosing[] {
  const standing = new Set(closingsOf(book).map((c) => c.id));
  return everyClosing(book)
    .toReversed()
    .map((closing) => {
      const adjustment = standing.has(closing.id) ? adjustmentOf(book, closing) : null;
      return {
        closing,
        title: `${periodText(closing.period)}, ${words.version(closing.body.version)}`,
        adjustment,
        says: saysOf(adjustment),
        entries: (adjustment?.steps ?? []).map(({ entry }) => ({ id: entry.id, text: entryName(book, entry.id) })),
      };
    });
}

/** A line taken over, with the closing it comes from and the entries that made it. */
export function carriedLine(book: Book, { of, ug, steps }: Carried) {
  const from = everyClosing(book).find((c) => c.id === of);
  return {
    of,
    ug,
    text: words.carriedFrom(dayText(from?.to ?? ''), from?.body.version ?? 0),
    figure: gramText(ug, { sign: true }),
    entries: steps.map(({ entry }) => ({ id: entry.id, text: entryName(book, entry.id) })),
  };
}
