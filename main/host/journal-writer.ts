/**
 * The one writer of a desk's own journal: adds lines at its end, flushed to disk before they are answered. It never changes a byte that is
 * there, except that a torn tail of its own file is moved aside first. When a write fails the file is cut back to what it was; when even that
 * cannot be known, the writer refuses everything until it is opened, and so verified, again.
 */
import {
  closeSync,
  constants,
  existsSync,
  fdatasyncSync,
  fstatSync,
  ftruncateSync,
  openSync,
  readFileSync,
  statSync,
} from 'node:fs';
import { join } from 'node:path';
import type { Draft, Entry } from '../../app/core/entry.ts';
import { bad, good, type Problem, problem, type Result } from '../../app/core/result.ts';
import { diskProblem, flushFolder, makeFolder, onDisk, writeAll, writeWhole } from './disk.ts';
import { readJournal } from './journal.ts';
import { lineFor } from './line.ts';

/** The folder of the journals inside a daybook, and a desk's file in it. */
export const desksFolder = (daybook: string): string => join(daybook, 'desks');
export const journalPath = (daybook: string, desk: string): string => join(desksFolder(daybook), `${desk}.jsonl`);

export interface JournalWriter {
  readonly desk: string;
  /** Entries in the journal, and the hash of the last. */
  readonly end: () => { readonly entries: number; readonly endMark: string };
  /** Adds entries in order: all of them with one flush, or none. `written` is the machine's clock, a moment with offset. */
  readonly append: (drafts: readonly Draft[], written: string) => Result<readonly Entry[]>;
  readonly close: () => void;
}

// a journal that is a link to elsewhere is not ours to write
const noFollow = constants.O_NOFOLLOW ?? 0;

/** Copies the torn tail of a journal into `<desk>.torn-<n>` beside it, a name no reader takes for a journal. */
function keepTail(path: string, tail: Uint8Array, line: number): void {
  const stem = `${path.slice(0, -'.jsonl'.length)}.torn-${line}`;
  let aside = stem;
  for (let again = 2; existsSync(aside); again++) aside = `${stem}-${again}`;
  const to = openSync(aside, 'wx');
  try {
    writeAll(to, tail);
    fdatasyncSync(to);
  } finally {
    closeSync(to);
  }
  flushFolder(join(path, '..'));
}

/** Moves the torn tail of an open journal aside. */
function setTailAside(path: string, fd: number, bytes: Uint8Array, goodBytes: number, line: number): void {
  keepTail(path, bytes.subarray(goodBytes), line);
  ftruncateSync(fd, goodBytes);
  fdatasyncSync(fd);
}

/**
 * Puts a desk's own journal there whole, from lines that verify as one chain and hold every sound line the file has: when copies beside it hold
 * more than it does, or it is out of order. A tail without its end is set aside first. Only its own writer may, while it holds the lock.
 */
export function putWhole(daybook: string, desk: string, lines: readonly string[]): Result<null> {
  const path = journalPath(daybook, desk);
  return onDisk(path, () => {
    const bytes = existsSync(path) ? readFileSync(path) : new Uint8Array();
    const tail = bytes.subarray(bytes.lastIndexOf(10) + 1);
    if (tail.length > 0) keepTail(path, tail, lines.length + 1);
    writeWhole(path, `${lines.join('\n')}\n`);
    return null;
  });
}

/**
 * Opens a desk's journal for writing and verifies all of it. A journal that does not exist is made with its first entry. Only the installation
 * that is this desk may call it, and only while it holds the lock of the daybook.
 */
export function openJournal(daybook: string, desk: string): Result<JournalWriter> {
  const path = journalPath(daybook, desk);
  let fd: number | null = null;
  let size = 0;
  let entries = 0;
  let endMark = readJournal(new Uint8Array(), desk).endMark;
  let refusal: Problem | null = null;

  const opened = onDisk<Problem | null>(path, () => {
    if (!existsSync(path)) return null;
    fd = openSync(path, constants.O_RDWR | constants.O_APPEND | noFollow);
    const bytes = readFileSync(fd);
    const journal = readJournal(bytes, desk);
    if (journal.fault) return problem('chain-broken', '', { desk, line: journal.fault.line, cause: journal.fault.cause });
    if (journal.newer) return problem('newer-format', '', { desk, line: journal.newer.line, format: journal.newer.format });
    if (journal.torn) setTailAside(path, fd, bytes, journal.goodBytes, journal.torn.line);
    size = journal.goodBytes;
    entries = journal.entries.length;
    endMark = journal.endMark;
    return null;
  });
  const close = () => {
    if (fd !== null) closeSync(fd);
    fd = null;
    refusal ??= problem('journal-closed', '', { desk });
  };
  if (!opened.ok || opened.value) {
    close();
    return opened.ok ? bad(...(opened.value ? [opened.value] : [])) : opened;
  }

  /** True when the file is still the one we know, to the byte: nobody swapped or lengthened it. */
  const unchanged = (at: number): boolean => {
    const ours = fstatSync(at);
    const there = statSync(path);
    return ours.size === size && ours.ino === there.ino && ours.dev === there.dev;
  };

  const write = (text: string): Problem | null => {
    const bytes = Buffer.from(text, 'utf8');
    const fresh = fd === null;
    try {
      if (fresh) makeFolder(desksFolder(daybook));
      fd ??= openSync(path, constants.O_RDWR | constants.O_APPEND | constants.O_CREAT | constants.O_EXCL | noFollow, 0o666);
      if (!unchanged(fd)) {
        refusal = problem('journal-changed', '', { path });
        return refusal;
      }
    } catch (error) {
      return diskProblem(error, path);
    }
    try {
      writeAll(fd, bytes);
      fdatasyncSync(fd);
      if (fresh) flushFolder(desksFolder(daybook));
      size += bytes.length;
      return null;
    } catch (error) {
      cutBack(fd);
      return diskProblem(error, path);
    }
  };

  const cutBack = (at: number): void => {
    try {
      ftruncateSync(at, size);
      fdatasyncSync(at);
      if (!unchanged(at)) throw new Error('the file is not what it was');
    } catch {
      refusal = problem('journal-unsure', '', { path });
    }
  };

  const append = (drafts: readonly Draft[], written: string): Result<readonly Entry[]> => {
    if (refusal) return bad(refusal);
    const made: Entry[] = [];
    const lines: string[] = [];
    let prev = endMark;
    for (const draft of drafts) {
      const { entry, line } = lineFor(draft, { desk, n: entries + made.length + 1, prev }, written);
      made.push(entry);
      lines.push(`${line}\n`);
      prev = entry.hash;
    }
    if (made.length === 0) return good(made);
    const failed = write(lines.join(''));
    if (failed) return bad(failed);
    entries += made.length;
    endMark = prev;
    return good(made);
  };

  return good({ desk, end: () => ({ entries, endMark }), append, close });
}

/** Adds one entry to a desk's journal: opens and verifies it, sets a torn tail aside, writes the line, flushes, answers the entry. */
export function appendEntry(daybook: string, desk: string, draft: Draft, written: string): Result<Entry> {
  const writer = openJournal(daybook, desk);
  if (!writer.ok) return writer;
  try {
    const kept = writer.value.append([draft], written);
    return kept.ok ? good(kept.value[0] as Entry) : kept;
  } finally {
    writer.value.close();
  }
}
