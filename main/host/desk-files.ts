/**
 * The files in desks/ and whose lines they hold. A file is taken by what its lines say, not by its name alone: a copy that a synchronising
 * program or a person made under any name is read with the journal it is a copy of. Reads only.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Notice } from '../../app/contract.ts';
import { readLoose } from './desk-lines.ts';
import { type DeskRead, type DeskSource, type DeskUnion, unionOf } from './desk-union.ts';
import { readJournal } from './journal.ts';
import { desksFolder } from './journal-writer.ts';

const journalName = /^([a-z0-9][a-z0-9-]{5,63})\.jsonl$/;
const tornName = /^[a-z0-9][a-z0-9-]{5,63}\.torn-\d+(-\d+)?$/;
const joinedName = /^[a-z0-9][a-z0-9-]{5,63}\.joined-[0-9a-f]+\.jsonl$/;
/** What synchronising programs call the copy they put beside a file. */
export const conflictName = /sync-conflict|conflicted copy/i;

/** The files of every desk, by desk; and what lies there that is no journal. */
interface Sorted {
  readonly sources: ReadonlyMap<string, readonly DeskSource[]>;
  readonly notices: readonly Notice[];
}

function sortFiles(daybook: string): Sorted {
  const folder = desksFolder(daybook);
  const sources = new Map<string, DeskSource[]>();
  const notices: Notice[] = [];
  const add = (desk: string, source: DeskSource) => sources.set(desk, [...(sources.get(desk) ?? []), source]);
  // a copy may have lost its empty folders
  const files = existsSync(folder) ? readdirSync(folder, { withFileTypes: true }) : [];
  for (const file of files.toSorted((a, b) => (a.name < b.name ? -1 : 1))) {
    const { name } = file;
    const left = (): void => void notices.push({ code: 'conflict-copy', detail: join('desks', name) });
    if (tornName.test(name) || (name.startsWith('.') && !conflictName.test(name))) continue;
    if (!file.isFile()) {
      left();
      continue;
    }
    const bytes = readFileSync(join(folder, name));
    const own = journalName.exec(name)?.[1];
    const journal = own === undefined ? null : readJournal(bytes, own);
    if (own !== undefined && journal && !journal.fault && !journal.newer) {
      add(own, { name, main: true, journal });
      continue;
    }
    const foreign = journal?.fault?.line === 1 && journal.fault.cause === 'wrong-desk';
    if (own !== undefined && !foreign) {
      add(own, { name, main: true, loose: readLoose(bytes, own) });
      continue;
    }
    const loose = readLoose(bytes, null);
    const desks = new Set(loose.lines.map(({ desk }) => desk));
    if (desks.size === 0) left();
    for (const desk of desks) add(desk, { name, main: false, loose });
  }
  return { sources, notices };
}

/** What to tell about the copies of a desk: how many lines stand only in each, and lines of a copy that fail. */
function copyNotices(desk: string, sources: readonly DeskSource[], { damagedCopies }: DeskUnion): Notice[] {
  const elsewhere = (name: string): Set<string> => {
    const hashes = new Set<string>();
    for (const { name: other, journal, loose } of sources) {
      if (other === name) continue;
      for (const { hash } of journal?.entries ?? []) hashes.add(hash);
      for (const { hash } of loose?.lines ?? []) hashes.add(hash);
    }
    return hashes;
  };
  const read = sources
    .filter(({ main, name }) => !main && !joinedName.test(name))
    .map(({ name, loose }): Notice => {
      const others = elsewhere(name);
      const only = new Set(loose?.lines.filter((line) => line.desk === desk && !others.has(line.hash)).map(({ hash }) => hash));
      return { code: 'copy-read', desk, detail: join('desks', name), lines: only.size };
    });
  return [
    ...read,
    ...damagedCopies.map(({ name, line }): Notice => ({ code: 'copy-damaged', desk, line, detail: join('desks', name) })),
  ];
}

/** The union of a desk that lies in one clean file is that file: nothing is looked at twice. */
const onlyFile = (sources: readonly DeskSource[]): DeskRead | null => {
  const [only, second] = sources;
  if (!only?.journal || second) return null;
  const { goodBytes: _, ...rest } = only.journal;
  return rest;
};

/** Every desk of a daybook, read over all its files, by name; and what lies in desks/ besides. Throws when the disk does. */
export function readDesks(daybook: string): { readonly desks: readonly DeskRead[]; readonly notices: readonly Notice[] } {
  const { sources, notices } = sortFiles(daybook);
  const told: Notice[] = [...notices];
  const desks = [...sources].map(([desk, files]) => {
    const only = onlyFile(files);
    if (only) return only;
    const union = unionOf(desk, files);
    told.push(...copyNotices(desk, files, union));
    return union.desk;
  });
  return { desks: desks.sort((a, b) => (a.desk < b.desk ? -1 : 1)), notices: told };
}

/** Every sound line of every desk with its own bytes, over all files: for whoever copies lines. Throws when the disk does. */
export function linesOfDesks(daybook: string): ReadonlyMap<string, DeskUnion> {
  const { sources } = sortFiles(daybook);
  const texts = new Map<string, DeskUnion>();
  for (const [desk, files] of sources) {
    const loose = files.map((file): DeskSource => {
      if (!file.journal) return file;
      const { name, main } = file;
      return { name, main, loose: readLoose(readFileSync(join(desksFolder(daybook), name)), desk) };
    });
    texts.set(desk, unionOf(desk, loose));
  }
  return texts;
}
