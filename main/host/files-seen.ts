/** What the journals of a daybook looked like from outside when they were last read: cheap to ask, and enough to know that another desk's came in. */
import { lstatSync, readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { desksFolder } from './journal-writer.ts';

export interface FilesSeen {
  readonly same: (other: FilesSeen) => boolean;
  /** The same, with one file as it looks now: for what we wrote ourselves. */
  readonly with: (path: string) => FilesSeen;
  readonly looks: ReadonlyMap<string, string>;
}

function lookOf(path: string): string {
  const stat = lstatSync(path, { throwIfNoEntry: false, bigint: true });
  return stat ? `${stat.size} ${stat.mtimeNs} ${stat.ino}` : 'gone';
}

const made = (looks: ReadonlyMap<string, string>): FilesSeen => ({
  looks,
  same: (other) => looks.size === other.looks.size && [...looks].every(([name, look]) => other.looks.get(name) === look),
  with: (path) => made(new Map(looks).set(basename(path), lookOf(path))),
});

/** Looks at every file in the journals' folder. A folder that cannot be read looks empty: reading it then says why. */
export function sawFiles(daybook: string): FilesSeen {
  const folder = desksFolder(daybook);
  let names: string[] = [];
  try {
    names = readdirSync(folder);
  } catch {}
  return made(new Map(names.map((name) => [name, lookOf(join(folder, name))])));
}
