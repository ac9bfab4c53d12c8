/**
 * Whether a period of any dates begins and ends at a count. Where it does not, its stock there is only what the book says, and the account says so
 * first. A count stands at an end where nothing moved between the two (methods.md 1.1: a period lies between two physical inventories).
 */
import { compareMoments } from '../time.ts';
import type { Book } from './book.ts';
import { isBefore, type Period, upToEnd } from './period.ts';
import { wholeCounts } from './periods.ts';

export type Missing = 'start' | 'end';

/** The ends of the period that no count of the whole stands at. The beginning of the book needs none; an empty book has no end. */
export function missingCounts(book: Book, period: Period): readonly Missing[] {
  const counts = wholeCounts(book);
  const { all } = book.movements;
  const at = (reached: (moment: string) => boolean): boolean => {
    // the last count before the edge, with nothing moved since; or the first after it, with nothing moved until then
    const last = counts.findLast((c) => reached(c.happened));
    if (last && !all.some((m) => reached(m.at) && compareMoments(m.at, last.happened) > 0)) return true;
    const next = counts.find((c) => !reached(c.happened));
    return (
      next !== undefined && !all.some((m) => !reached(m.at) && compareMoments(m.at, next.happened) <= 0 && m.entry !== next.id)
    );
  };
  if (all.length === 0) return [];
  const missing: Missing[] = [];
  if (period.from !== null && !at((moment) => isBefore(moment, period))) missing.push('start');
  if (!at((moment) => upToEnd(moment, period))) missing.push('end');
  return missing;
}
