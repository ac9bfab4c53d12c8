/**
 * The lines of a file that may be anybody's: a journal out of order, a copy a synchronising program made. Every complete line is verified by
 * itself (canonical bytes, hash); where it belongs its own desk and number say. What does not verify is named, never guessed at.
 */
import { isUtf8 } from 'node:buffer';
import type { Problem } from '../../app/core/result.ts';
import { id } from '../../app/core/shapes.ts';
import { type LineCause, type LineRead, readLine } from './line.ts';

/** A line whose bytes are what its hash says. It may still not be an entry this program can read (`read`). */
export interface DeskLine {
  readonly desk: string;
  readonly n: number;
  readonly prev: string;
  readonly hash: string;
  /** As it stands in the file, without the newline; left out where the entry itself was read from a clean journal. */
  readonly text?: string;
  readonly read: LineRead;
}

/** A complete line whose bytes fail, at the number it should have there; `desk` null where the file names none. */
export interface BadLine {
  readonly desk: string | null;
  readonly line: number;
  readonly cause: LineCause;
  readonly problems: readonly Problem[];
}

export interface LooseFile {
  readonly lines: readonly DeskLine[];
  readonly bad: readonly BadLine[];
  /** A last line without its end. */
  readonly torn: { readonly desk: string | null; readonly line: number; readonly bytes: number } | null;
}

const newline = 10;

/** One line by itself, at the place it names. */
function lineAlone(text: string): DeskLine | { readonly cause: LineCause; readonly problems: readonly Problem[] } {
  let place = { desk: '', n: 0, prev: '' };
  let hash = '';
  try {
    const value = JSON.parse(text) as Record<string, unknown> | null;
    const { desk, n, prev, hash: own } = value ?? {};
    if (id.safeParse(desk).success && Number.isSafeInteger(n) && (n as number) > 0 && typeof prev === 'string')
      place = { desk: desk as string, n: n as number, prev };
    if (typeof own === 'string') hash = own;
  } catch {}
  const read = readLine(text, place);
  const sound = place.n > 0 && (read.is !== 'fault' || read.cause === 'not-an-entry');
  if (sound) return { ...place, hash, text, read };
  const { cause, problems } = read.is === 'fault' ? read : { cause: 'not-an-entry' as const, problems: [] };
  // it names no place, so it was held against none
  return { cause: cause === 'wrong-desk' ? 'not-an-entry' : cause, problems };
}

/**
 * Reads every line of a file.
 * @param home The desk whose journal the file is by its name: lines of another desk are faults in it. Null: a copy, whose lines say whose they are.
 */
export function readLoose(bytes: Uint8Array, home: string | null): LooseFile {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const lines: DeskLine[] = [];
  const bad: BadLine[] = [];
  let torn: LooseFile['torn'] = null;
  let desk = home;
  let next = 1;
  const fails = (cause: LineCause, problems: readonly Problem[] = []) => {
    bad.push({ desk, line: next, cause, problems });
    next += 1;
  };
  for (let start = 0; start < buffer.length; ) {
    const end = buffer.indexOf(newline, start);
    const part = buffer.subarray(start, end < 0 ? buffer.length : end);
    if (end < 0) {
      // a whole line whose end was changed into something else is no torn one
      const whole = part.at(-1) !== 0 && 'hash' in lineAlone(part.toString('utf8', 0, part.length - 1));
      if (whole) fails('line-end');
      else torn = { desk, line: next, bytes: part.length };
      break;
    }
    const read = isUtf8(part) ? lineAlone(part.toString('utf8')) : { cause: 'not-text' as const, problems: [] };
    if (!('hash' in read)) fails(read.cause, read.problems);
    else if (home !== null && read.desk !== home) fails('wrong-desk');
    else {
      lines.push(read);
      desk = read.desk;
      next = read.n + 1;
    }
    start = end + 1;
  }
  const first = home ?? lines[0]?.desk ?? null;
  return {
    lines,
    bad: bad.map((b) => (b.desk === null ? { ...b, desk: first } : b)),
    torn: torn?.desk === null ? { ...(torn as NonNullable<LooseFile['torn']>), desk: first } : torn,
  };
}
