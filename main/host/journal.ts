/**
 * Reads one desk's journal: every line verified in order, up to the first that fails. Reads only; a torn last line is told and left where it is.
 * A cut tail is a notice, because a machine that lost power in the middle of a line leaves one; a complete line that fails is a fault. The lines of an
 * import of which the last are not there are such a tail, too: they count together or not at all.
 */
import { isUtf8 } from 'node:buffer';
import { type Entry, firstPrev } from '../../app/core/entry.ts';
import type { Problem } from '../../app/core/result.ts';
import { sha256 } from './canonical.ts';
import { cutImport } from './cut-import.ts';
import { type LineCause, readLine } from './line.ts';
import { type HashMember, isPlain } from './plain-line.ts';

/** The first complete line that fails, from 1, and why. */
export interface Fault {
  readonly line: number;
  readonly cause: LineCause;
  /** What the entry's schema found, where that is the cause. */
  readonly problems: readonly Problem[];
}

export interface Journal {
  readonly desk: string;
  /** Every entry before the first fault, the first newer line or the torn tail. */
  readonly entries: readonly Entry[];
  /** `hash` of the last of them; 64 zeros for none. */
  readonly endMark: string;
  /** Bytes of the file that hold them, newlines included. */
  readonly goodBytes: number;
  readonly fault?: Fault;
  /** A last line without its end, or the lines of an import without its end: the first number, and their bytes. */
  readonly torn?: { readonly line: number; readonly bytes: number };
  /** The first line a newer program wrote. */
  readonly newer?: { readonly line: number; readonly format: number };
}

const newline = 10;

const scratch = Buffer.allocUnsafeSlow(65_536);
const member: HashMember = { from: -1, to: -1 };

/** The hash of a line whose bytes are plainly canonical, over all of them but its own hash; null where the general reader has to look. */
function plainHash(buffer: Buffer, start: number, end: number): string | null {
  if (end - start > scratch.length || !isPlain(buffer, start, end, member) || member.from < 0) return null;
  const head = buffer.copy(scratch, 0, start, member.from);
  const length = head + buffer.copy(scratch, head, member.to, end);
  return sha256(scratch.subarray(0, length));
}

/**
 * Verifies the bytes of `desks/<desk>.jsonl`.
 * @param desk The name of the file without its ending: every line must carry it.
 */
export function readJournal(bytes: Uint8Array, desk: string): Journal {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const allText = isUtf8(buffer);
  const entries: Entry[] = [];
  let prev = firstPrev;
  let start = 0;
  /** Where the last import began. */
  let importStart = 0;
  const done = (more: Pick<Journal, 'fault' | 'torn' | 'newer'> = {}): Journal => {
    const cut = more.fault || more.newer ? null : cutImport(entries);
    if (cut === null) return { desk, entries, endMark: prev, goodBytes: start, ...more };
    entries.length = cut;
    return {
      desk,
      entries,
      endMark: entries.at(-1)?.hash ?? firstPrev,
      goodBytes: importStart,
      torn: { line: cut + 1, bytes: buffer.length - importStart },
    };
  };
  while (start < buffer.length) {
    const line = entries.length + 1;
    const end = buffer.indexOf(newline, start);
    if (end < 0) return done(tail(buffer.subarray(start), { desk, n: line, prev }));
    const plain = plainHash(buffer, start, end);
    const text =
      plain !== null
        ? buffer.toString('latin1', start, end)
        : allText || isUtf8(buffer.subarray(start, end))
          ? buffer.toString('utf8', start, end)
          : null;
    if (text === null) return done({ fault: { line, cause: 'not-text', problems: [] } });
    const got = readLine(text, { desk, n: line, prev }, plain);
    if (got.is === 'fault') return done({ fault: { line, cause: got.cause, problems: got.problems } });
    if (got.is === 'newer') return done({ newer: { line, format: got.format } });
    entries.push(got.entry);
    if (got.entry.imported?.n === 1) importStart = start;
    prev = got.entry.hash;
    start = end + 1;
  }
  return done();
}

/** Bytes after the last newline: torn, unless a whole line stands there whose end was changed into something else. */
function tail(bytes: Buffer, place: { desk: string; n: number; prev: string }): Pick<Journal, 'fault' | 'torn'> {
  const ended = bytes.at(-1) !== 0 && readLine(bytes.toString('utf8', 0, bytes.length - 1), place).is !== 'fault';
  return ended ? { fault: { line: place.n, cause: 'line-end', problems: [] } } : { torn: { line: place.n, bytes: bytes.length } };
}
