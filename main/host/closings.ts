/**
 * Closes a period: works the account out from the host's own entries, writes its statement and its paper, and only then keeps the closing. What is refused
 * writes nothing; a closing without its files is never kept. Files whose closing could not be kept stay, and `check` tells of them.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { AskOf, OpenBook } from '../../app/contract.ts';
import { type Account, accountOf } from '../../app/core/book/account.ts';
import { type Book, readBook } from '../../app/core/book/book.ts';
import {
  adjustmentsInto,
  type Carried,
  everyClosing,
  type Figures,
  figuresOf,
  periodBetween,
} from '../../app/core/book/closings.ts';
import type { Draft, Entry } from '../../app/core/entry.ts';
import type { Body } from '../../app/core/kinds/index.ts';
import { gramsText } from '../../app/core/mass.ts';
import { bad, good, type Problem, problem, type Result } from '../../app/core/result.ts';
import { dayOf } from '../../app/core/time.ts';
import type { ClosingOnPaper } from '../../app/papers/mercury-account/closing.ts';
import type { CoveredDesk } from '../../app/papers/paper.ts';
import { sha256 } from './canonical.ts';
import { problemsOf } from './check.ts';
import {
  type ClosingFile,
  closingFileName,
  closingFiles,
  closingsFolder,
  nameOfClosing,
  writeClosingFile,
} from './closing-files.ts';
import { type ClosingDraft, statementText } from './closing-statement.ts';
import { onDisk } from './disk.ts';

/** What a closing is drawn up from. */
export interface ClosingSource extends Pick<OpenBook, 'id' | 'name'> {
  readonly desks: readonly CoveredDesk[];
  readonly entries: readonly Entry[];
}

/** A closing ready to be printed, written and kept. */
export interface DrawnUp {
  readonly draft: ClosingDraft;
  readonly statement: string;
  /** Last day of the period. */
  readonly day: string;
  /** The desks it rests on, and the entries they hold: what its paper is printed from. */
  readonly desks: readonly CoveredDesk[];
  readonly entries: readonly Entry[];
  readonly onPaper: ClosingOnPaper;
}

/** Stands for a hash until the file is made; the rules do not look at it. */
const unmade = '0'.repeat(64);

const bodyOf = ({ draft, statement }: Pick<DrawnUp, 'draft' | 'statement'>, paper: string): Record<string, unknown> => ({
  ...draft.body,
  statement: sha256(statement),
  paper,
});

/** The closing as it is kept, with the hash of its printed paper. */
export const closingEntry = (drawn: DrawnUp, paper: Uint8Array | null): Draft => ({
  ...drawn.draft,
  kind: 'closing',
  body: bodyOf(drawn, paper === null ? unmade : sha256(paper)),
});

function bodyFor(
  book: Book,
  ask: AskOf<'close-period'>,
  { figures, carried, ends }: { figures: Figures; carried: readonly Carried[]; ends: Body<'closing'>['ends'] },
): ClosingDraft['body'] {
  const { opening, closing, replaces, note, falseAlarm } = ask;
  const before = replaces === undefined ? undefined : everyClosing(book).find((c) => c.id === replaces);
  return {
    ...(opening === undefined ? {} : { opening }),
    closing,
    version: (before?.body.version ?? 0) + 1,
    ...(replaces === undefined ? {} : { replaces }),
    ends,
    figures,
    ...(carried.length === 0 ? {} : { adjustments: carried.map(({ of, ug }) => ({ of, g: gramsText(ug) })) }),
    ...(falseAlarm === undefined ? {} : { falseAlarm }),
    ...(note === undefined ? {} : { note }),
  } as ClosingDraft['body'];
}

/** Figures for the rules to refuse by when the period itself cannot be worked out. */
const noAccount = (book: Book): Account => accountOf(book, { from: null, to: null });

/**
 * Draws the closing up from everything that is on the book now. Problems: those of the rules of a closing, `closing-empty`, `closing-strange` where a
 * newer program wrote what may have moved mercury.
 */
export function drawUp(source: ClosingSource, ask: AskOf<'close-period'>, program: string, now: string): Result<DrawnUp> {
  const { entries, id: daybookId, name } = source;
  const ends = source.desks
    .filter((d) => d.entries > 0)
    .map(({ desk, entries: n, endMark }) => ({ desk, entries: n, endMark }))
    .sort((a, b) => (a.desk < b.desk ? -1 : 1));
  if (ends.length === 0) return bad(problem('closing-empty', ''));
  const book = readBook(entries);
  const strange = book.current.notUnderstood[0];
  if (strange) return bad(problem('closing-strange', '', { kind: strange.kind }));
  const period = periodBetween(book, ask);
  const account = period === null ? noAccount(book) : accountOf(book, period);
  const carried = period === null ? [] : adjustmentsInto(book, period, ask.replaces ?? ask.id);
  const figures = figuresOf(account);
  const { id, happened, by, witness } = ask;
  const draft: ClosingDraft = {
    id,
    happened,
    by,
    ...(witness === undefined ? {} : { witness }),
    body: bodyFor(book, ask, { figures, carried, ends }),
  };
  const statement = statementText(book, draft, { account, figures, carried, ends, daybook: { id: daybookId, name }, program });
  const { version, opening, closing, replaces, note } = draft.body;
  const drawn: DrawnUp = {
    draft,
    statement,
    day: dayOf(period?.to ?? happened),
    desks: ends.map((end) => {
      const { leftOut, key, signed } = source.desks.find((d) => d.desk === end.desk) ?? {};
      return { ...end, leftOut, key, signed };
    }),
    entries,
    onPaper: { id, version, opening, closing, replaces, note, by, happened, carried: carried.map(({ of, ug }) => ({ of, ug })) },
  };
  const problems = problemsOf(entries, closingEntry(drawn, null), now);
  return problems.length > 0 ? bad(...problems) : good(drawn);
}

/** Writes the two files. The closing may be kept only after this. */
export const writeClosing = (folder: string, desk: string, drawn: DrawnUp, paper: Uint8Array): Result<null> =>
  onDisk(closingsFolder(folder), () => {
    const named = { id: drawn.draft.id, version: drawn.draft.body.version };
    writeClosingFile(folder, closingFileName(desk, drawn.day, named, 'statement'), drawn.statement);
    writeClosingFile(folder, closingFileName(desk, drawn.day, named, 'paper'), paper);
    return null;
  });

/** A file of a kept closing, as long as it is the one that was issued. Problems: `unknown-id`, `closing-gone`, `closing-changed`. */
export function issuedFile(folder: string, entries: readonly Entry[], id: string, which: ClosingFile): Result<Uint8Array> {
  const entry = entries.find((e) => e.id === id && e.kind === 'closing');
  if (!entry) return bad(problem('no-such-closing', 'closing'));
  const body = entry.body as Body<'closing'>;
  const told = { to: dayOf(entries.find((e) => e.id === body.closing)?.happened ?? entry.happened), version: body.version };
  const file = nameOfClosing(closingFiles(folder), { desk: entry.desk, id, body }, which);
  if (file === null) return bad(problem('closing-gone', 'closing', { ...told, what: which }));
  const read = onDisk(file, () => new Uint8Array(readFileSync(join(closingsFolder(folder), file))));
  if (!read.ok) return read;
  const changed: Problem = problem('closing-changed', 'closing', { ...told, file });
  return sha256(read.value) === body[which] ? read : bad(changed);
}
