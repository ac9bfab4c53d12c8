/**
 * The question that closes a period, from asking to keeping. Printing is slow, so other questions may be answered meanwhile: what they keep comes after the
 * end marks of the closing, and the rules are asked again before anything is written.
 */
import type { AskOf, OpenBook, ReplyOf } from '../../app/contract.ts';
import type { Entry } from '../../app/core/entry.ts';
import { bad, good, problem, type Result } from '../../app/core/result.ts';
import { problemsOf } from './check.ts';
import { type ClosingSource, closingEntry, type DrawnUp, drawUp, writeClosing } from './closings.ts';
import type { OpenDaybook } from './open-daybook.ts';
import type { HostOptions } from './questions.ts';
import { withKeys } from './sign-check.ts';

/** What closing needs of the host: its queue, the daybook that is open when its turn comes, and the printer. */
export interface Closer {
  readonly inTurn: <T>(act: () => Result<T>) => Promise<Result<T>>;
  readonly open: () => OpenDaybook | null;
  readonly options: Pick<HostOptions, 'print' | 'clock' | 'version'>;
}

type Reply = ReplyOf<'close-period'>;
type Begun = { readonly kept: Reply } | { readonly drawn: DrawnUp; readonly source: ClosingSource };

const noDaybook = problem('no-daybook-open', '');

/** The answer for a closing that was kept before under this id. */
function keptBefore(entries: readonly Entry[], id: string, { desks }: OpenBook): Reply | null {
  const entry = entries.find((e) => e.id === id);
  const desk = desks.find((d) => d.desk === entry?.desk);
  return entry && desk ? { entry, desk } : null;
}

/** Closes a period. Problems: those of `drawUp`, of printing, of the disk, `not-writable`, `no-daybook-open`. */
export async function closePeriod(ask: AskOf<'close-period'>, { inTurn, open, options }: Closer): Promise<Result<Reply>> {
  const begun = await inTurn((): Result<Begun> => {
    const book = open();
    if (!book) return bad(noDaybook);
    const whole = book.whole();
    if (!whole.ok) return whole;
    const described = book.describe();
    const kept = keptBefore(whole.value.entries, ask.id, described);
    if (kept) return good({ kept });
    if (!described.writable) return bad(problem('not-writable', ''));
    const desks = withKeys(book.folder, whole.value.desks);
    const source: ClosingSource = { ...whole.value, desks, id: described.id };
    const drawn = drawUp(source, ask, options.version, options.clock());
    return drawn.ok ? good({ drawn: drawn.value, source }) : drawn;
  });
  if (!begun.ok) return begun;
  if ('kept' in begun.value) return good(begun.value.kept);
  const { drawn, source } = begun.value;
  const paper = await options.print(drawn.entries, source.name, drawn.desks, 'mercury-account', undefined, {}, drawn.onPaper);
  if (!paper.ok) return paper;
  return inTurn((): Result<Reply> => {
    const book = open();
    const described = book?.describe();
    if (!book || described?.id !== source.id) return bad(noDaybook);
    if (!described.writable) return bad(problem('not-writable', ''));
    const whole = book.whole();
    if (!whole.ok) return whole;
    const entry = closingEntry(drawn, paper.value);
    const now = options.clock();
    const kept = keptBefore(whole.value.entries, ask.id, described);
    if (kept) return good(kept);
    const problems = problemsOf(whole.value.entries, entry, now);
    if (problems.length > 0) return bad(...problems);
    const written = writeClosing(book.folder, described.ownDesk, drawn, paper.value);
    if (!written.ok) return written;
    const done = book.keep(entry, now);
    // the closing is on the disk: what keeps it from being signed is a notice of the book, and no reason to call it not kept
    if (done.ok) book.sign(now);
    return done;
  });
}
