/**
 * What an installation remembers of a daybook outside it: the desk it writes there as, and of every desk how many lines it has seen verified and
 * the end mark of the last. So a cut tail shows, and an older copy put back; and nobody goes on at a place from which lines were already written.
 */
import { randomBytes } from 'node:crypto';
import { existsSync, readFileSync, renameSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Notice } from '../../app/contract.ts';
import type { Entry } from '../../app/core/entry.ts';
import type { Result } from '../../app/core/result.ts';
import { id } from '../../app/core/shapes.ts';
import { z } from '../../app/core/zod.ts';
import type { Desk } from './daybook-folder.ts';
import { makeFolder, onDisk, writeWhole } from './disk.ts';

const mark = z.object({ entries: z.number().int().min(0), endMark: z.string() });
const memoryFile = z.object({ desk: id, marks: z.record(z.string(), mark) });
/** The desk this installation writes as in a daybook, and the marks seen there by desk. */
export type DaybookMemory = z.infer<typeof memoryFile>;

export const newDeskId = (): string => `desk-${randomBytes(8).toString('hex')}`;

/**
 * Reads what is remembered of one daybook; `desk` is whom it writes as when nothing is. A file that cannot be understood is kept under another
 * name and answered as `lost`, with a new desk: whoever has forgotten how far a journal went must not go on with it.
 */
export function readMemory(path: string, desk: string): DaybookMemory & { readonly lost?: boolean } {
  if (!existsSync(path)) return { desk, marks: {} };
  try {
    return memoryFile.parse(JSON.parse(readFileSync(path, 'utf8')));
  } catch (error) {
    if (!(error instanceof SyntaxError || error instanceof z.ZodError)) throw error;
    return { desk: newDeskId(), marks: {}, lost: true };
  }
}

/** Writes what is remembered, whole. A file there that cannot be understood is moved aside first. */
export function writeMemory(path: string, memory: DaybookMemory, lost = false): Result<null> {
  return onDisk(path, () => {
    makeFolder(dirname(path), 0o700);
    if (lost && existsSync(path)) renameSync(path, `${path}.unreadable-${randomBytes(4).toString('hex')}`);
    writeWhole(path, `${JSON.stringify({ desk: memory.desk, marks: memory.marks })}\n`, 0o600);
    return null;
  });
}

/** How a desk that was seen before stands now: `gone` lines are in no file any more, or `differs` says that the remembered line is another one. */
export interface Since {
  readonly desk: string;
  /** The first line that is gone or differs. */
  readonly line: number;
  readonly gone: number;
  readonly differs: boolean;
}

/** The hash of every remembered last line that is here, by desk. One walk over the entries. */
function hashesAt(marks: DaybookMemory['marks'], entries: readonly Entry[]): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const entry of entries) if (marks[entry.desk]?.entries === entry.n) found.set(entry.desk, entry.hash);
  return found;
}

/** Compares a reading with what is remembered. A desk that is broken or forked is told of by that, and a forked one has its lines still. */
export function sinceSeen(marks: DaybookMemory['marks'], desks: readonly Desk[], entries: readonly Entry[]): readonly Since[] {
  const hashes = hashesAt(marks, entries);
  const since: Since[] = [];
  for (const [desk, seen] of Object.entries(marks)) {
    if (seen.entries === 0) continue;
    const now = desks.find((d) => d.desk === desk);
    if (now?.fault || now?.fork || now?.newer) continue;
    const verified = now?.entries ?? 0;
    if (verified < seen.entries) {
      // beyond a gap lines may lie here that do not count yet: they are not gone
      const gaps = (now?.missing ?? []).map(({ from, to }) => Math.max(0, Math.min(to, seen.entries) - from + 1));
      const last = now?.last ?? verified;
      const gone = gaps.reduce((sum, n) => sum + n, 0) + Math.max(0, seen.entries - last);
      if (gone > 0) since.push({ desk, line: verified + 1, gone, differs: false });
    } else if (hashes.get(desk) !== seen.endMark) since.push({ desk, line: seen.entries, gone: 0, differs: true });
  }
  return since;
}

export const noticesSince = (since: readonly Since[]): Notice[] =>
  since.map(({ desk, line, gone, differs }) =>
    differs ? { code: 'lines-differ', desk, line } : { code: 'lines-gone', desk, line, lines: gone },
  );

/** The marks after a reading that verified: never fewer lines than were seen, and nothing new of a desk that is broken or not what it was. */
export function marksAfter(
  marks: DaybookMemory['marks'],
  desks: readonly Pick<Desk, 'desk' | 'entries' | 'endMark' | 'fault' | 'newer'>[],
  since: readonly Since[],
): DaybookMemory['marks'] {
  const after = { ...marks };
  for (const { desk, entries, endMark, fault, newer } of desks) {
    if (fault || newer || since.some((s) => s.desk === desk) || entries <= (marks[desk]?.entries ?? 0)) continue;
    after[desk] = { entries, endMark };
  }
  return after;
}
