/** The site's standing as one line for the head of every page and paper: its own words, on that day. It is a statement and permits nothing. */
import type { Book } from '../../core/book/book.ts';
import { standingAt } from '../../core/book/site.ts';
import { dayOf } from '../../core/time.ts';
import { site } from '../../words/screens-site.ts';

const onDay = (day: string) => (item: { since?: string | undefined; until?: string | undefined }) =>
  (item.since === undefined || item.since <= day) && (item.until === undefined || day <= item.until);

/** "A stock of mercury; clearing legacy mercury (mill)", or null while nothing was stated. */
export function standingLine(book: Book, now: string): string | null {
  const standing = standingAt(book.current, now);
  if (!standing) return null;
  const today = onDay(dayOf(now));
  const held = standing.body.held.filter(today).map(site.standing.heldText);
  const done = standing.body.done.filter(today).map(site.standing.doneText);
  return [held.join(', ') || site.standing.nothingNow, done.join(', ') || site.standing.nothingNow].join(' · ');
}
