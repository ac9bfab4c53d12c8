/**
 * The mercury account of a period: reservations first, then what was there, came, went and is there now, what is not accounted for with its
 * uncertainty, and what stands behind it. It never calls a loss vapour and never takes the balance for a measure of the air.
 */
import { type Account, accountOf, type Period } from '../core/book/account.ts';
import type { Book } from '../core/book/book.ts';
import { type Flag, reservations } from '../core/book/flags.ts';
import { isStock } from '../core/book/places.ts';
import { bad, good, problem, type Result } from '../core/result.ts';
import { compareMoments } from '../core/time.ts';
import { dayText } from '../words/dates.ts';
import { accountPaper as words } from '../words/papers-account.ts';
import { bookReservations, namedFlags, once, unknownU } from './doubts.ts';
import { figuresOf } from './mercury-account/figures.ts';
import { movementsOf } from './mercury-account/movements.ts';
import { pathsOf, stocksOf } from './mercury-account/stocks.ts';
import { type Definition, type Frame, paper } from './paper.ts';
import { standingText } from './standing.ts';

/** The first and the last moment the book tells of. */
function span({ entries }: Book): { first: string; last: string } {
  const all = entries.map(({ happened }) => happened).sort(compareMoments);
  return { first: all[0] ?? '', last: all.at(-1) ?? '' };
}

/** The two ends in words, each where it is open by the book itself, and the moment whose standing counts. */
export function periodWords(book: Book, { from, to }: Period): Readonly<Record<'from' | 'to' | 'end', string>> {
  const { first, last } = span(book);
  return { from: dayText(from ?? first), to: dayText(to ?? last), end: to ?? last };
}

/** An entry that this program does not know and that happened up to the end of the period: it may have moved mercury. */
export const unreadUpTo = (book: Book, { to }: Period) =>
  book.current.notUnderstood.find(({ happened }) => to === null || compareMoments(happened, to) <= 0);

/** Flags of the account's reservations, whole: the account names only entry and code. */
function flagsOf(book: Book, account: Account): Flag[] {
  const entries = once(account.reservations.map(({ entry }) => entry));
  return entries.flatMap((entry) => (book.flags.get(entry) ?? []).filter(({ code }) => reservations.has(code)));
}

/** Readings whose weights stand in the account: of the period, and of what is in stock at its end. */
function readingsIn(book: Book, { from, to }: Period) {
  const inside = (at: string) => to === null || compareMoments(at, to) <= 0;
  const early = (at: string) => from !== null && compareMoments(at, from) < 0;
  const entries = book.movements.all.filter((m) => inside(m.at) && (!early(m.at) || isStock(m.to))).map((m) => m.entry);
  return once(entries).flatMap((id) => {
    const reading = book.current.byId.get(id);
    return reading && reading.kind !== 'retort' ? [reading] : [];
  });
}

/** The account of a period. Problems: `paper-not-understood` where a newer program wrote something that may have moved mercury by then. */
export function mercuryAccount(book: Book, period: Period, frame: Frame): Result<Definition> {
  const unread = unreadUpTo(book, period);
  if (unread) return bad(problem('paper-not-understood', '', { kind: unread.kind, entry: unread.id }));
  const account = accountOf(book, period);
  const { from, to, end } = periodWords(book, period);
  return good(
    paper(frame, {
      name: words.name,
      subject: words.subject(from, to),
      number: period.from === null && period.to === null ? words.whole : words.period,
      standing: standingText(book, end),
      reservations: once([
        ...bookReservations(book),
        ...unknownU(book, readingsIn(book, period)),
        ...namedFlags(book, flagsOf(book, account)),
      ]),
      body: [...figuresOf(account), ...stocksOf(book, account), ...pathsOf(account), ...movementsOf(book, period)],
    }),
  );
}
