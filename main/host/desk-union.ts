/**
 * One desk out of all files that hold lines of it: the set union of its lines, folded into one chain from line 1. Lines may come late, twice
 * and in any order. Three things are kept apart and never mixed up: a line that is not here yet (the verified lines before it count), a line whose
 * bytes fail (broken), and two different lines of one number (a fork: the desk stands still at the last common line and neither is chosen).
 */
import { type Entry, firstPrev } from '../../app/core/entry.ts';
import { canonicalText } from './canonical.ts';
import { cutImport } from './cut-import.ts';
import type { DeskLine, LooseFile } from './desk-lines.ts';
import type { Fault, Journal } from './journal.ts';

/** Numbers of lines, both ends included. */
export interface LineRange {
  readonly from: number;
  readonly to: number;
}

/** One way a forked desk goes on after the last common line. */
export interface Branch {
  /** `hash` of its last line that is here. */
  readonly endMark: string;
  readonly lines: readonly DeskLine[];
}

/** A desk as far as it verifies over all its files. */
export interface DeskRead extends Omit<Journal, 'goodBytes'> {
  /** The highest number of a line that is here, counted or not; left out where that is the number of entries. */
  readonly last?: number;
  /** Lines that are in no file although later ones are. */
  readonly missing?: readonly LineRange[];
  /** The first number that two different lines carry, and every way on from there. */
  readonly fork?: { readonly line: number; readonly branches: readonly Branch[] };
}

/** A file that holds lines of the desk: `journal` when it is the desk's own file by its name and verifies whole from its first line. */
export interface DeskSource {
  /** The file's name in desks/. */
  readonly name: string;
  /** Whether it is `<desk>.jsonl` itself. */
  readonly main: boolean;
  readonly journal?: Journal;
  readonly loose?: LooseFile;
}

export interface DeskUnion {
  readonly desk: DeskRead;
  /** Every sound line by number, each once; two for one number where the desk forked. */
  readonly lines: ReadonlyMap<number, readonly DeskLine[]>;
  /** Lines of copies that fail although the line is whole in another file. */
  readonly damagedCopies: readonly { readonly name: string; readonly line: number }[];
}

const lineOf = (entry: Entry): DeskLine => ({
  desk: entry.desk,
  n: entry.n,
  prev: entry.prev,
  hash: entry.hash,
  read: { is: 'entry', entry },
});

/** Numbers from 1 to the last one here that no line carries, without those where a line stands that fails. */
function missingIn(here: readonly number[], failing: ReadonlySet<number>): LineRange[] {
  const ranges: LineRange[] = [];
  let next = 1;
  for (const n of here) {
    let from = next;
    for (const bad of [...failing].filter((b) => b >= from && b < n).sort((a, b) => a - b)) {
      if (bad > from) ranges.push({ from, to: bad - 1 });
      from = bad + 1;
    }
    if (n > from) ranges.push({ from, to: n - 1 });
    next = n + 1;
  }
  return ranges;
}

/** Every way on from the lines of number `n`, each to its last line that is here. */
function branchesAt(n: number, lines: ReadonlyMap<number, readonly DeskLine[]>): Branch[] {
  const branches: Branch[] = [];
  const open: DeskLine[][] = (lines.get(n) ?? []).map((line) => [line]);
  for (let path = open.shift(); path; path = open.shift()) {
    let last = path.at(-1)!;
    for (;;) {
      const next: readonly DeskLine[] = (lines.get(last.n + 1) ?? []).filter((line) => line.prev === last.hash);
      if (next.length === 1) {
        last = next[0]!;
        path.push(last);
        continue;
      }
      if (next.length === 0) branches.push({ endMark: last.hash, lines: path });
      else for (const line of next) open.push([...path, line]);
      break;
    }
  }
  return branches;
}

/** Folds the files of one desk into one chain. */
export function unionOf(desk: string, sources: readonly DeskSource[]): DeskUnion {
  const lines = new Map<number, DeskLine[]>();
  const take = (line: DeskLine) => {
    const there = lines.get(line.n);
    if (!there) lines.set(line.n, [line]);
    else if (!there.some(({ hash }) => hash === line.hash)) there.push(line);
  };
  for (const { journal, loose } of sources) {
    for (const entry of journal?.entries ?? []) take(lineOf(entry));
    for (const line of loose?.lines ?? []) if (line.desk === desk) take(line);
  }

  const entries: Entry[] = [];
  let endMark = firstPrev;
  let newer: DeskRead['newer'];
  const faults: Fault[] = [];
  for (let n = 1; ; n++) {
    const [line, second] = lines.get(n) ?? [];
    if (!line || second) break;
    if (line.prev !== endMark) faults.push({ line: n, cause: 'wrong-prev', problems: [] });
    else if (line.read.is === 'fault') faults.push({ line: n, cause: line.read.cause, problems: line.read.problems });
    else if (line.read.is === 'newer') newer = { line: n, format: line.read.format };
    else {
      entries.push(line.read.entry);
      endMark = line.hash;
      continue;
    }
    break;
  }

  const damagedCopies: { name: string; line: number }[] = [];
  const failing = new Set<number>();
  for (const { name, main, loose } of sources)
    for (const { desk: of, line, cause, problems } of loose?.bad ?? []) {
      if (of !== desk) continue;
      if (!main && lines.has(line)) damagedCopies.push({ name, line });
      else {
        faults.push({ line, cause, problems });
        failing.add(line);
      }
    }
  const fault = faults.sort((a, b) => a.line - b.line)[0];
  if (fault && fault.line <= entries.length) {
    entries.length = fault.line - 1;
    endMark = entries.at(-1)?.hash ?? firstPrev;
  }

  const cut = fault || newer ? null : cutImport(entries);
  const cutLines = entries.slice(cut ?? entries.length);
  if (cut !== null) {
    entries.length = cut;
    endMark = entries.at(-1)?.hash ?? firstPrev;
  }

  const here = [...lines.keys()].sort((a, b) => a - b);
  const missing = missingIn(here, failing);
  const forked = here.find((n) => (lines.get(n)?.length ?? 0) > 1);
  const torn = sources
    .map(({ journal, loose }) => journal?.torn ?? (loose?.torn?.desk === desk ? loose.torn : undefined))
    .filter((tail) => tail !== undefined && !lines.has(tail.line))
    .sort((a, b) => (b?.line ?? 0) - (a?.line ?? 0))[0];
  const tail =
    cut === null
      ? torn
      : { line: cut + 1, bytes: Buffer.byteLength(cutLines.map((entry) => `${canonicalText(entry)}\n`).join('')) };

  return {
    desk: {
      desk,
      entries,
      endMark,
      ...(fault ? { fault } : {}),
      ...(newer && !fault ? { newer } : {}),
      ...(tail && !fault ? { torn: { line: tail.line, bytes: tail.bytes } } : {}),
      ...((here.at(-1) ?? 0) > entries.length ? { last: here.at(-1)! } : {}),
      ...(missing.length > 0 ? { missing } : {}),
      ...(forked === undefined ? {} : { fork: { line: forked, branches: branchesAt(forked, lines) } }),
    },
    lines,
    damagedCopies,
  };
}
