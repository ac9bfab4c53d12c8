/**
 * The mercury account of a period: reservations first, then what was there, came, went and is there now, what is not accounted for with its
 * uncertainty, and what stands behind it. It never calls a loss vapour and never takes the balance for a measure of the air.
 */
import { type Account, accountOf, type Period } from '../core/book/account.ts';
import type { Book } from '../core/book/book.ts';
import type { Reading } from '../core/book/current.ts';
import type { Flag } from '../core/book/flags.ts';
import { upToEnd } from '../core/book/period.ts';
import { wholeCounts } from '../core/book/periods.ts';
import { excessOf } from '../core/book/usual.ts';
import type { Entry } from '../core/entry.ts';
import { bad, good, problem, type Result } from '../core/result.ts';
import { compareMoments } from '../core/time.ts';
import { accountWords } from '../words/account.ts';
import { dayText, momentText } from '../words/dates.ts';
import { accountPaper as words } from '../words/papers-account.ts';
import { closingPaper } from '../words/papers-closing.ts';
import { bookReservations, namedFlags, once, unknownU } from './doubts.ts';
import { flowDrawing } from './flow-drawing.ts';
import { answerOf } from './mercury-account/answer.ts';
import { carriedOf } from './mercury-account/carried.ts';
import { type ClosingOnPaper, closingOf, closingSignature } from './mercury-account/closing.ts';
import { doubtedOf } from './mercury-account/doubted.ts';
import { figuresOf } from './mercury-account/figures.ts';
import { movementsOf } from './mercury-account/movements.ts';
import { outOfStepCounts, outOfStepIn, outOfStepList } from './mercury-account/out-of-step.ts';
import { sequenceSection } from './mercury-account/sequence.ts';
import { pathsOf, stocksOf } from './mercury-account/stocks.ts';
import { type Definition, type Frame, paper } from './paper.ts';
import { standingText } from './standing.ts';

/**
 * The two ends in words, by the book itself where they are open, and the moment whose standing and names count: the last one that the book tells
 * of inside.
 */
export function periodWords(book: Book, period: Period): Readonly<Record<'from' | 'to' | 'end', string>> {
  const moments = book.entries.map(({ happened }) => happened).sort(compareMoments);
  const { from, to } = period;
  const inside = moments.findLast((at) => upToEnd(at, period));
  return {
    from: dayText(from ?? moments[0] ?? ''),
    to: dayText(to ?? moments.at(-1) ?? ''),
    end: inside ?? moments[0] ?? '',
  };
}

/** Whether it lies between two counts of the whole. */
const isCounted = (book: Book, { from, to, after }: Period): boolean =>
  to !== null &&
  to.length > 10 &&
  (from === null || after === true) &&
  wholeCounts(book).some((count) => compareMoments(count.happened, to) === 0);

/** An entry that this program does not know and that happened up to the end of the period: it may have moved mercury. */
export const unreadUpTo = (book: Book, period: Period): Entry | undefined =>
  book.current.notUnderstood.find(({ happened }) => upToEnd(happened, period));

/** Flags of the account's reservations, whole: the account names only entry and code. */
function flagsOf(book: Book, account: Account): Flag[] {
  const named = new Set(account.reservations.map(({ entry, code }) => `${entry} ${code}`));
  return [...book.flags.values()].flat().filter(({ entry, code }) => named.has(`${entry} ${code}`));
}

/** Readings whose weights stand in the account: of the period, and of what was in stock before it. */
function readingsIn(book: Book, period: Period): Reading[] {
  const entries = book.movements.all.filter(({ at }) => upToEnd(at, period)).map(({ entry }) => entry);
  return once(entries).flatMap((id) => {
    const reading = book.current.byId.get(id);
    return reading && reading.kind !== 'retort' ? [reading] : [];
  });
}

/** The account of a period; with `closing`, as the statement of a closed one, to be signed. Problems: `paper-not-understood` where a newer program wrote something that may have moved mercury by then. */
export function mercuryAccount(book: Book, period: Period, frame: Frame, closing?: ClosingOnPaper): Result<Definition> {
  const unread = unreadUpTo(book, period);
  if (unread) return bad(problem('paper-not-understood', '', { kind: unread.kind, entry: unread.id }));
  const account = accountOf(book, period);
  const { from, to, end } = periodWords(book, period);
  const excess = excessOf(book, account);
  const outOfStep = outOfStepIn(book, period, end);
  return good(
    paper(frame, {
      name: words.name,
      subject: words.subject(from, to),
      number: closing
        ? closingPaper.filed(closing.id, closing.version)
        : period.from === null && period.to === null
          ? words.whole
          : isCounted(book, period)
            ? words.counted(period.from === null ? null : momentText(period.from), momentText(period.to ?? ''))
            : words.period,
      standing: standingText(book, end),
      reservations: once([
        ...account.uncounted.map((end) => accountWords.uncounted[end]),
        ...bookReservations(book),
        ...unknownU(book, readingsIn(book, period)),
        ...namedFlags(book, flagsOf(book, account)),
      ]),
      body: [
        ...(closing ? closingOf(book, closing, frame.desks, account.unaccounted.ug) : []),
        ...outOfStepCounts(book, outOfStep, end),
        ...answerOf(account, excess),
        ...figuresOf(account, excess),
        ...stocksOf(book, account),
        ...(closing ? [] : carriedOf(book, account)),
        ...pathsOf(account),
        ...doubtedOf(book, account),
        ...flowDrawing(book, period),
        ...sequenceSection(book, period),
        ...movementsOf(book, period),
        ...outOfStepList(book, outOfStep),
        ...(closing ? closingSignature(book, closing) : []),
      ],
    }),
  );
}
