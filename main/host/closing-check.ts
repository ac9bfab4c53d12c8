/**
 * Holds every closing against what it rests on: its files by their hashes, its end marks in the chains, its figures by the covered entries. Reads only.
 * Later entries that touch a closed period are no fault: they are told with what they changed.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Book, readBook } from '../../app/core/book/book.ts';
import {
  accountFor,
  adjustmentOf,
  changesBetween,
  closingsOf,
  type Ends,
  figuresOf,
  frozenBook,
  holdsMark,
  isTouched,
  overlap,
} from '../../app/core/book/closings.ts';
import type { Reading } from '../../app/core/book/current.ts';
import type { Entry } from '../../app/core/entry.ts';
import type { Problem } from '../../app/core/result.ts';
import { dayOf } from '../../app/core/time.ts';
import { z } from '../../app/core/zod.ts';
import { closingLines } from '../../app/words/closing.ts';
import { entryName } from '../../app/words/daybook-naming.ts';
import { gramText } from '../../app/words/figures.ts';
import { sha256 } from './canonical.ts';
import { type ClosingFile, closingFiles, closingsFolder, nameOfClosing } from './closing-files.ts';
import { statementFormat } from './closing-statement.ts';
import { onDisk } from './disk.ts';

/** Something about a closing: where its entry stands, or where its mark should; `code` and `data` for the words. */
export interface Finding {
  readonly desk?: string | undefined;
  readonly line?: number | undefined;
  readonly code: string;
  readonly data: NonNullable<Problem['data']>;
}

export interface ClosingFindings {
  readonly faults: readonly Finding[];
  readonly notices: readonly Finding[];
  /** Closings looked at, all versions. */
  readonly closings: number;
}

/** What a statement says of itself, as far as the check needs it. */
const statementHead = z.object({
  format: z.number().int().max(statementFormat),
  program: z.string(),
  closing: z.string(),
  end_marks: z.array(z.object({ desk: z.string(), entries: z.number().int(), end_mark: z.string() })),
});

function headOf(bytes: Uint8Array): z.infer<typeof statementHead> | null {
  try {
    const read = statementHead.safeParse(JSON.parse(Buffer.from(bytes).toString('utf8')));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/** A figure may differ by what another machine's arithmetic leaves: a microgram. */
const crumbUg = 1;
/** Steps named in one notice; the rest are counted. */
const mostNamed = 4;

interface Looking {
  readonly folder: string;
  readonly names: readonly string[];
  readonly entries: readonly Entry[];
  readonly book: Book;
}

type ClosingReading = Reading<'closing'>;

const told = ({ book }: Looking, { body, happened }: ClosingReading) => ({
  to: dayOf(book.current.byId.get(body.closing)?.happened ?? happened),
  version: body.version,
});

/** The two files: there, and the ones that were issued. Also the program's version that the statement names. */
function filesOf(looking: Looking, reading: ClosingReading): { faults: Finding[]; names: string[]; program: string } {
  const { folder, names } = looking;
  const where = { desk: reading.entry.desk, line: reading.entry.n };
  const faults: Finding[] = [];
  const found: string[] = [];
  let program = '?';
  for (const which of ['statement', 'paper'] as const satisfies readonly ClosingFile[]) {
    const name = nameOfClosing(names, { desk: where.desk, id: reading.id, body: reading.body }, which);
    if (name === null) {
      faults.push({ ...where, code: 'closing-gone', data: { ...told(looking, reading), what: which } });
      continue;
    }
    found.push(name);
    const bytes = onDisk(name, () => readFileSync(join(closingsFolder(folder), name)));
    if (!bytes.ok || sha256(bytes.value) !== reading.body[which])
      faults.push({ ...where, code: 'closing-changed', data: { ...told(looking, reading), file: name } });
    else if (which === 'statement') program = headOf(bytes.value)?.program ?? program;
  }
  return { faults, names: found, program };
}

/** The figures, worked out anew from the entries that the end marks cover. */
function figuresAgree(looking: Looking, reading: ClosingReading, program: string): Finding[] {
  const account = accountFor(frozenBook(looking.entries, reading.body.ends), reading.body);
  const changes = account ? changesBetween(reading.body.figures, figuresOf(account)) : null;
  const lines = changes
    ? Object.entries(changes).flatMap(([name, ug]) =>
        Math.abs(ug) <= crumbUg
          ? []
          : [closingLines.differs(name as keyof typeof changes, gramText(ug, { sign: true, places: 6 }))],
      )
    : [closingLines.noCount];
  if (lines.length === 0) return [];
  const data = { ...told(looking, reading), lines: lines.join(', '), program };
  return [{ desk: reading.entry.desk, line: reading.entry.n, code: 'closing-disagrees', data }];
}

/** What later entries made of the standing closings, and which of those overlap. */
function touched({ book }: Looking): Finding[] {
  const standing = closingsOf(book);
  return standing.flatMap((closing, i) => {
    const { entry } = closing.reading;
    const where = { desk: entry.desk, line: entry.n };
    const data = { to: dayOf(closing.to), version: closing.body.version };
    const twin = standing.some((other, k) => k < i && overlap(other.period, closing.period));
    const twice: Finding[] = twin ? [{ ...where, code: 'twice', data }] : [];
    const adjustment = adjustmentOf(book, closing);
    if (!isTouched(adjustment)) return twice;
    const named = adjustment.steps.map((step) => `${entryName(book, step.entry.id)} (${step.entry.id})`);
    const steps = [
      ...named.slice(0, mostNamed),
      ...(named.length > mostNamed ? [closingLines.more(named.length - mostNamed)] : []),
    ].join(', ');
    const code = adjustment.ug > 0 ? 'adjusted' : adjustment.ug < 0 ? 'adjusted-more' : 'adjusted-lines';
    const g = gramText(Math.abs(adjustment.ug)).replace('\u00a0g', '');
    return [...twice, { ...where, code, data: { ...data, g, steps } }];
  });
}

/** Files that belong to no closing: a statement whose marks the chains no longer hold tells of a cut tail. */
function strays({ folder, entries }: Looking, names: readonly string[]): { faults: Finding[]; notices: Finding[] } {
  const faults: Finding[] = [];
  const notices: Finding[] = [];
  for (const file of names) {
    if (!file.endsWith('.json')) {
      notices.push({ code: 'orphan', data: { file } });
      continue;
    }
    const bytes = onDisk(file, () => readFileSync(join(closingsFolder(folder), file)));
    const head = bytes.ok ? headOf(bytes.value) : null;
    if (!head) {
      notices.push({ code: 'unread', data: { file } });
      continue;
    }
    const marks: Ends = head.end_marks.map(({ desk, entries: n, end_mark }) => ({ desk, entries: n, endMark: end_mark }));
    const cut = marks.filter((mark) => !holdsMark(entries, mark));
    for (const { desk, entries: n } of cut)
      faults.push({ desk, line: n, code: 'closing-unsaid', data: { file, desk, entries: n } });
    if (cut.length === 0) notices.push({ code: 'orphan', data: { file } });
  }
  return { faults, notices };
}

/** Looks at every closing of a daybook in `folder`, whose entries have been read and verified as far as they can be. */
export function checkClosings(folder: string, entries: readonly Entry[]): ClosingFindings {
  const names = closingFiles(folder);
  if (names.length === 0 && !entries.some((e) => e.kind === 'closing')) return { faults: [], notices: [], closings: 0 };
  const book = readBook(entries);
  const looking: Looking = { folder, names, entries, book };
  const faults: Finding[] = [];
  const notices: Finding[] = [];
  const owned = new Set<string>();
  const all = [...book.current.byId.values()].filter((r): r is ClosingReading => r.kind === 'closing');
  for (const reading of all) {
    const { desk, n: line } = reading.entry;
    const files = filesOf(looking, reading);
    for (const name of files.names) owned.add(name);
    faults.push(...files.faults);
    if (reading.struck) notices.push({ desk, line, code: 'struck', data: told(looking, reading) });
    const cut = reading.body.ends.filter((end) => !holdsMark(entries, end));
    for (const end of cut)
      faults.push({
        desk: end.desk,
        line: end.entries,
        code: 'closing-cut',
        data: { ...told(looking, reading), desk: end.desk, entries: end.entries },
      });
    if (cut.length === 0) faults.push(...figuresAgree(looking, reading, files.program));
  }
  const stray = strays(
    looking,
    names.filter((name) => !owned.has(name)),
  );
  return {
    faults: [...faults, ...stray.faults],
    notices: [...notices, ...stray.notices, ...touched(looking)],
    closings: all.length,
  };
}
