/**
 * A daybook as it lies on disk: makes an empty one, and reads one with every desk's chain verified and all entries merged. Reading never writes,
 * not even to set a torn tail aside. Desks merge by set union: each wrote only its own journal.
 */
import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Notice } from '../../app/contract.ts';
import { type Entry, formatNumber } from '../../app/core/entry.ts';
import { read } from '../../app/core/read.ts';
import { bad, good, problem, type Result } from '../../app/core/result.ts';
import { id, label, moment } from '../../app/core/shapes.ts';
import { minutesOf } from '../../app/core/time.ts';
import { z } from '../../app/core/zod.ts';
import { machineClock } from './clock.ts';
import { diskProblem, flushFolder, makeFolder, onDisk, writeWhole } from './disk.ts';
import { type Journal, readJournal } from './journal.ts';
import { desksFolder } from './journal-writer.ts';

const infoFile = 'daybook.json';
const info = z.strictObject({ id, name: label, format: z.literal(formatNumber), made: moment });
/** What daybook.json says. */
export type DaybookInfo = Omit<z.infer<typeof info>, 'format'> & { readonly format: number };

/** One desk of a daybook, as far as its journal could be verified. `entries` counts. */
export interface Desk extends Omit<Journal, 'entries' | 'goodBytes'> {
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

/** Reads daybook.json. A higher format number is accepted here and told as a notice: the journals may still be readable. */
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
  const got = read(info, value);
  return got.ok ? got : bad(problem('daybook-unreadable', '', { path }));
}

const journalName = /^([a-z0-9][a-z0-9-]{5,63})\.jsonl$/;
const tornName = /^[a-z0-9][a-z0-9-]{5,63}\.torn-\d+(-\d+)?$/;
const conflictName = /sync-conflict|conflicted copy/i;

/** Entries by happening, writing, desk, number. Moments are read once each, not at every comparison. */
function merged(journals: readonly Journal[]): Entry[] {
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

function noticesOf({ desk, fault, torn, newer }: Journal): Notice[] {
  if (fault) return [{ code: 'broken-chain', desk, line: fault.line, detail: fault.cause }];
  if (newer) return [{ code: 'newer-format', desk, line: newer.line, detail: String(newer.format) }];
  return torn ? [{ code: 'torn-line', desk, line: torn.line }] : [];
}

/** Reads and verifies a whole daybook. Fails only when there is no daybook or the disk cannot be read; what is wrong inside is told in it. */
export function readDaybook(dir: string): Result<Daybook> {
  const folder = resolve(dir);
  const about = readInfo(folder);
  if (!about.ok) return about;
  const notices: Notice[] = [];
  if (about.value.format > formatNumber) notices.push({ code: 'newer-format', detail: String(about.value.format) });
  const got = onDisk(folder, () => {
    const journals: Journal[] = [];
    // a copy may have lost its empty folders
    const files = existsSync(desksFolder(folder)) ? readdirSync(desksFolder(folder), { withFileTypes: true }) : [];
    for (const file of files.toSorted((a, b) => (a.name < b.name ? -1 : 1))) {
      const desk = journalName.exec(file.name)?.[1];
      if (desk !== undefined && file.isFile())
        journals.push(readJournal(readFileSync(join(desksFolder(folder), file.name)), desk));
      else if (!tornName.test(file.name) && (!file.name.startsWith('.') || conflictName.test(file.name)))
        notices.push({ code: 'conflict-copy', detail: join('desks', file.name) });
    }
    for (const name of readdirSync(folder)) if (conflictName.test(name)) notices.push({ code: 'conflict-copy', detail: name });
    return journals;
  });
  if (!got.ok) return got;
  const journals = got.value;
  return good({
    folder,
    info: about.value,
    desks: journals.map(({ entries, goodBytes: _, ...rest }) => ({ ...rest, entries: entries.length })),
    entries: merged(journals),
    notices: [...notices, ...journals.flatMap(noticesOf)],
  });
}
