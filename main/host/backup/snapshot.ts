/**
 * A daybook's folder as it stands at one moment, for a backup. Every plain file in it goes along, whatever it is called: signatures or papers laid
 * beside the journals travel with them. Links, hidden files and names that no other machine could take are left out and told. Reads only.
 */
import { createHash } from 'node:crypto';
import { closeSync, openSync, readdirSync, readFileSync, readSync } from 'node:fs';
import { basename, join } from 'node:path';
import { sha256 } from '../canonical.ts';
import { isPlainPath, type Manifest, manifestName } from './manifest.ts';

export interface SnapshotFile {
  /** Below the daybook's folder, with strokes. */
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
  /** The bytes, where they were held because the file may grow meanwhile. */
  readonly held: Uint8Array | null;
}

export interface Snapshot {
  readonly files: readonly SnapshotFile[];
  /** What lies in the folder and does not go along. */
  readonly leftOut: readonly string[];
}

const part = 1 << 20;

/** Hands the bytes of a file on, part by part, and answers their hash. Throws when the disk does. */
export function* partsOf(path: string): Generator<Uint8Array, void> {
  const fd = openSync(path, 'r');
  try {
    for (;;) {
      const bytes = new Uint8Array(part);
      const read = readSync(fd, bytes, 0, part, null);
      if (read === 0) return;
      yield bytes.subarray(0, read);
    }
  } finally {
    closeSync(fd);
  }
}

/** Size and SHA-256 of a file. Throws when the disk does. */
export function measured(path: string): { bytes: number; sha256: string } {
  const sum = createHash('sha256');
  let bytes = 0;
  for (const some of partsOf(path)) {
    sum.update(some);
    bytes += some.length;
  }
  return { bytes, sha256: sum.digest('hex') };
}

/** Our own journal may be growing: a line that is only half there belongs to the next backup. */
const wholeLines = (bytes: Buffer): Buffer => bytes.subarray(0, bytes.lastIndexOf(0x0a) + 1);

function pathsIn(folder: string): { paths: string[]; leftOut: string[] } {
  const paths: string[] = [];
  const leftOut: string[] = [];
  const names = new Set<string>();
  const walk = (below: string) => {
    const found = readdirSync(join(folder, below), { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
    for (const one of found) {
      const path = below === '' ? one.name : `${below}/${one.name}`;
      if (one.name.startsWith('.')) continue;
      // two names that differ in capitals alone would be one file on some disks
      const same = path.normalize('NFC').toLowerCase();
      if (!isPlainPath(path) || path === manifestName || names.has(same) || !(one.isFile() || one.isDirectory()))
        leftOut.push(path);
      else if (one.isDirectory()) walk(path);
      else {
        names.add(same);
        paths.push(path);
      }
    }
  };
  walk('');
  return { paths, leftOut };
}

/** Reads the folder. `ownDesk` is the desk that may be writing meanwhile. Throws when the disk does. */
export function snapshotOf(folder: string, ownDesk: string): Snapshot {
  // journals before all else: what their lines name was there before the lines
  const held = new Map<string, Buffer>();
  for (const path of ['daybook.json', ...pathsIn(folder).paths.filter((one) => one.startsWith('desks/'))]) {
    const bytes = readFileSync(join(folder, path));
    held.set(path, basename(path) === `${ownDesk}.jsonl` ? wholeLines(bytes) : bytes);
  }
  const { paths, leftOut } = pathsIn(folder);
  const files = paths
    .filter((path) => held.has(path) || !path.startsWith('desks/'))
    .map((path): SnapshotFile => {
      const bytes = held.get(path);
      return bytes
        ? { path, bytes: bytes.length, sha256: sha256(bytes), held: bytes }
        : { path, ...measured(join(folder, path)), held: null };
    });
  return { files, leftOut };
}

/** The files as the manifest names them. */
export const listed = ({ files }: Snapshot): Manifest['files'] =>
  files.map(({ path, bytes, sha256: sum }) => ({ path, bytes, sha256: sum }));
