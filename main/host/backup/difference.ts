/**
 * What would change if a backup took the place of the open daybook: entries of every desk that are in one and not in the other, by their hashes,
 * where the end marks stand, and the files beside the journals. Reads only, and decides nothing.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { BackupDifference } from '../../../app/contract.ts';
import type { Entry } from '../../../app/core/entry.ts';
import type { Result } from '../../../app/core/result.ts';
import { good } from '../../../app/core/result.ts';
import { type Daybook, readDaybook } from '../daybook-folder.ts';
import { onDisk } from '../disk.ts';
import type { Manifest } from './manifest.ts';
import { measured } from './snapshot.ts';

const hashesByDesk = (entries: readonly Entry[]): Map<string, Set<string>> => {
  const desks = new Map<string, Set<string>>();
  for (const { desk, hash } of entries) {
    const hashes = desks.get(desk) ?? new Set();
    desks.set(desk, hashes.add(hash));
  }
  return desks;
};

const lacking = (some: ReadonlySet<string> = new Set(), others: ReadonlySet<string> = new Set()): number =>
  [...some].filter((hash) => !others.has(hash)).length;

function desksOf(here: Daybook, there: Daybook): BackupDifference['desks'] {
  const [ours, theirs] = [hashesByDesk(here.entries), hashesByDesk(there.entries)];
  const markOf = (book: Daybook, desk: string) => book.desks.find((d) => d.desk === desk)?.endMark ?? '';
  return [...new Set([...ours.keys(), ...theirs.keys()])].sort().map((desk) => ({
    desk,
    here: ours.get(desk)?.size ?? 0,
    backup: theirs.get(desk)?.size ?? 0,
    onlyHere: lacking(ours.get(desk), theirs.get(desk)),
    onlyBackup: lacking(theirs.get(desk), ours.get(desk)),
    endMarkHere: markOf(here, desk),
    endMarkBackup: markOf(there, desk),
  }));
}

/** Files of a folder beside the journals: by name, and by content where a name may stand for another. */
function filesHere(folder: string, below: string): Map<string, string> {
  const files = new Map<string, string>();
  const listed = onDisk(folder, () => readdirSync(join(folder, below), { withFileTypes: true }));
  for (const one of listed.ok ? listed.value : []) {
    if (!one.isFile() || one.name.startsWith('.')) continue;
    // evidence is named by its content
    const sum = below === 'evidence' ? one.name : onDisk(folder, () => measured(join(folder, below, one.name)).sha256);
    files.set(one.name, typeof sum === 'string' ? sum : sum.ok ? sum.value : '');
  }
  return files;
}

function filesOf(folder: string, about: Manifest, below: 'evidence' | 'closings'): BackupDifference['evidence'] {
  const here = filesHere(folder, below);
  const backup = new Map(
    about.files
      .filter(({ path }) => path.startsWith(`${below}/`))
      .map(({ path, sha256 }) => [path.slice(below.length + 1), below === 'evidence' ? path.slice(below.length + 1) : sha256]),
  );
  const only = (some: ReadonlyMap<string, string>, others: ReadonlyMap<string, string>) =>
    [...some.keys()].filter((name) => !others.has(name)).length;
  const differ = [...here].filter(([name, sum]) => backup.has(name) && backup.get(name) !== sum).length;
  return { onlyHere: only(here, backup), onlyBackup: only(backup, here), differ };
}

/** Compares the open daybook in `here` with a backup whose journals lie in `there`. Problems: those of `readDaybook`. */
export function differenceOf(here: string, there: string, about: Manifest): Result<BackupDifference> {
  const [ours, theirs] = [readDaybook(here), readDaybook(there)];
  if (!ours.ok) return ours;
  if (!theirs.ok) return theirs;
  const same = ours.value.info.id === theirs.value.info.id;
  return good({
    same,
    name: ours.value.info.name,
    desks: same ? desksOf(ours.value, theirs.value) : [],
    evidence: filesOf(here, about, 'evidence'),
    closings: filesOf(here, about, 'closings'),
  });
}
