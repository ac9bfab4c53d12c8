/**
 * A daybook as it lies on disk: makes an empty one, and reads one with every desk's chain verified and all entries merged. Reading never writes,
 * not even to set a torn tail aside. Desks merge by set union (`desk-union.ts`): each wrote only its own journal.
 */
import { randomUUID } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Notice } from '../../app/contract.ts';
import { type Entry, formatNumber } from '../../app/core/entry.ts';
import { read } from '../../app/core/read.ts';
import { bad, good, problem, type Result } from '../../app/core/result.ts';
import { id, label, moment } from '../../app/core/shapes.ts';
import { minutesOf } from '../../app/core/time.ts';
import { z } from '../../app/core/zod.ts';
import { machineClock } from './clock.ts';
import { conflictName, readDesks } from './desk-files.ts';
import type { Branch, DeskRead } from './desk-union.ts';
import { diskProblem, flushFolder, makeFolder, onDisk, writeWhole } from './disk.ts';

const infoFile = 'daybook.json';
const info = z.strictObject({ id, name: label, format: z.literal(formatNumber), made: moment });
/** What daybook.json says. */
export type DaybookInfo = Omit<z.infer<typeof info>, 'format'> & { readonly format: number };

/** One desk of a daybook, as far as its lines could be verified. `entries` counts. */
export interface Desk extends Omit<DeskRead, 'entries'> {
  readonly entries: number;
}

export interface Daybook {
  readonly folder: string;
  readonly info: DaybookInfo;
  readonly desks: readonly Desk[];
  /** Every entry of every desk that verifies, by happening, writing, desk and number. */
  readonly entries: readonly Entry[];
  readonly notices: readonly Notice[];
}

/** Folders of a daybook. */
export const evidenceFolder = (daybook: string): string => join(daybook, 'evidence');
const folders = ['desks', 'evidence', 'closings'];

/** Makes an empty daybook. The folder may exist only if nothing is in it. `made` is a moment with offset: now, if left out. */
export function makeDaybook(dir: string, name: string, made: string = machineClock()): Result<DaybookInfo> {
  const folder = resolve(dir);
  const named = read(label, name);
  if (!named.ok) return bad(...named.problems.map((p) => ({ ...p, field: 'name' })));
  const fresh: DaybookInfo = { id: randomUUID(), name, format: formatNumber, made };
  const done = onDisk<Result<DaybookInfo>>(folder, () => {
    makeFolder(folder);
    if (readdirSync(folder).length > 0) return bad(problem('folder-not-empty', '', { path: folder }));
    for (const inner of folders) mkdirSync(join(folder, inner));
    // last, so that a folder without it is no daybook yet
    writeWhole(join(folder, infoFile), `${JSON.stringify(fresh, null, 2)}\n`);
    flushFolder(resolve(folder, '..'));
    return good(fresh);
  });
  return done.ok ? done.value : done;
}

/**
 * Reads daybook.json. A higher format number is accepted here and told as a notice: the journals may still be readable. A newer title page that
 * this program cannot read is `newer-unread`.
 */
function readInfo(folder: string): Result<DaybookInfo> {
  const path = join(folder, infoFile);
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    const said = diskProblem(error, path);
    return bad(said.code === 'file-gone' || said.code === 'not-a-folder' ? problem('not-a-daybook', '', { path: folder }) : said);
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return bad(problem('daybook-unreadable', '', { path }));
  }
  const newer = z.object({ id, name: label, format: z.number().int().gt(formatNumber), made: moment }).safeParse(value);
  if (newer.success) return good(newer.data);
  const unlike = z.object({ format: z.number().int().gt(formatNumber) }).safeParse(value);
  if (unlike.success) return bad(problem('newer-unread', '', { format: unlike.data.format }));
  const got = read(info, value);
  return got.ok ? got : bad(problem('daybook-unreadable', '', { path }));
}

/** Entries by happening, writing, desk, number. Moments are read once each, not at every comparison. */
function merged(journals: readonly DeskRead[]): Entry[] {
  const rows = journals.flatMap((j) =>
    j.entries.map((entry) => ({ entry, happened: minutesOf(entry.happened) ?? 0, written: minutesOf(entry.written) ?? 0 })),
  );
  rows.sort(
    (a, b) =>
      a.happened - b.happened ||
      a.written - b.written ||
      (a.entry.desk < b.entry.desk ? -1 : a.entry.desk > b.entry.desk ? 1 : a.entry.n - b.entry.n),
  );
  return rows.map((row) => row.entry);
}

/** Numbers of lines as text: "3, 5-8". */
export const rangesText = (ranges: NonNullable<Desk['missing']>): string =>
  ranges.map(({ from, to }) => (from === to ? `${from}` : `${from}-${to}`)).join(', ');

// enough to see what each branch says; the lines themselves lie in the files
const mostShown = 40;

/** A branch of a fork as the window is told of it. */
export const branchTold = ({ endMark, lines }: Branch): NonNullable<Notice['branches']>[number] => ({
  endMark,
  count: lines.length,
  lines: lines
    .slice(0, mostShown)
    .map(({ n, read }) =>
      read.is === 'entry' ? { n, id: read.entry.id, kind: read.entry.kind, happened: read.entry.happened } : { n },
    ),
});

function noticesOf({ desk, fault, torn, newer, missing, fork }: DeskRead): Notice[] {
  const notices: Notice[] = [];
  if (fault) notices.push({ code: 'broken-chain', desk, line: fault.line, detail: fault.cause });
  else if (newer) notices.push({ code: 'newer-format', desk, line: newer.line, detail: String(newer.format) });
  if (fork) notices.push({ code: 'fork', desk, line: fork.line, branches: fork.branches.map(branchTold) });
  const [first] = missing ?? [];
  if (missing && first) notices.push({ code: 'lines-missing', desk, line: first.from, detail: rangesText(missing) });
  if (torn) notices.push({ code: 'torn-line', desk, line: torn.line });
  return notices;
}

/** Reads and verifies a whole daybook. Fails only when there is no daybook or the disk cannot be read; what is wrong inside is told in it. */
export function readDaybook(dir: string): Result<Daybook> {
  const folder = resolve(dir);
  const about = readInfo(folder);
  if (!about.ok) return about;
  const notices: Notice[] = [];
  if (about.value.format > formatNumber) notices.push({ code: 'newer-format', detail: String(about.value.format) });
  const got = onDisk(folder, () => {
    const read = readDesks(folder);
    notices.push(...read.notices);
    for (const name of readdirSync(folder)) if (conflictName.test(name)) notices.push({ code: 'conflict-copy', detail: name });
    return read.desks;
  });
  if (!got.ok) return got;
  const desks = got.value;
  return good({
    folder,
    info: about.value,
    desks: desks.map(({ entries, ...rest }) => ({ ...rest, entries: entries.length })),
    entries: merged(desks),
    notices: [...notices, ...desks.flatMap(noticesOf)],
  });
}
