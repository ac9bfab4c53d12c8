/**
 * Whether dist/ is still what the sources would build. Times and sizes answer in milliseconds; only where they differ are contents read, so
 * a fresh checkout of the same sources is not built again.
 */
import { createHash } from 'node:crypto';
import { existsSync, lstatSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { dist, root } from './paths.mjs';

const stampFile = join(dist, 'built.json');

/** What goes into the build. Tests do not. */
const sources = ['app', 'main', 'assets', 'package.json', 'package-lock.json'];

function list(path, found) {
  const at = join(root, path);
  if (!existsSync(at)) return found;
  const stat = lstatSync(at);
  if (!stat.isDirectory()) found.push([path, stat.size, stat.mtimeMs]);
  else for (const name of readdirSync(at).sort()) if (!name.startsWith('.')) list(`${path}/${name}`, found);
  return found;
}

/** The sources as they lie now: `times` is quick to compare, `contents()` is exact. */
export function look() {
  const files = sources.flatMap((path) => list(path, []));
  const contents = () => {
    const sum = createHash('sha256');
    for (const [path] of files)
      sum
        .update(`${path}\0`)
        .update(readFileSync(join(root, path)))
        .update('\0');
    return sum.digest('hex');
  };
  return { times: JSON.stringify(files), contents };
}

/** Writes what the build was made from, so that the next start can skip it. */
export function stamp(times, contents, files) {
  const aside = `${stampFile}.${process.pid}`;
  mkdirSync(dirname(stampFile), { recursive: true });
  writeFileSync(aside, JSON.stringify({ times, contents, files }));
  renameSync(aside, stampFile);
}

/** The stamp of the build that lies in dist/, or null. */
function lastStamp() {
  try {
    const last = JSON.parse(readFileSync(stampFile, 'utf8'));
    return last.files.every((file) => existsSync(join(dist, file))) ? last : null;
  } catch {
    return null;
  }
}

/** True where dist/ is complete and made from the sources as they are now. */
export function upToDate() {
  const last = lastStamp();
  if (last === null) return false;
  const now = look();
  if (last.times === now.times) return true;
  if (last.contents !== now.contents()) return false;
  try {
    stamp(now.times, last.contents, last.files);
  } catch {
    // a read-only tree: still up to date, only slower to see
  }
  return true;
}
