/**
 * Writing that survives a power cut, and what the disk says when it fails, as problems. Nothing here writes over a file in place: a new content
 * is written aside, flushed, renamed, and the folder flushed.
 */
import { randomBytes } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fdatasyncSync,
  fsyncSync,
  mkdirSync,
  openSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { bad, good, type Problem, problem, type Result } from '../../app/core/result.ts';

const codes: Readonly<Record<string, string>> = {
  ENOSPC: 'disk-full',
  EDQUOT: 'disk-full',
  EFBIG: 'disk-full',
  EACCES: 'no-permission',
  EPERM: 'no-permission',
  EROFS: 'no-permission',
  ENOENT: 'file-gone',
  ENOTDIR: 'not-a-folder',
  EISDIR: 'not-a-file',
  ELOOP: 'not-a-file',
  EEXIST: 'already-there',
  EMFILE: 'too-many-open',
  ENFILE: 'too-many-open',
};

/** The system's own code of an error ("ENOSPC"), or the error's name where it has none. Never its message: that may carry paths. */
export function errorCode(error: unknown): string {
  if (!(error instanceof Error)) return 'unknown';
  const code = (error as NodeJS.ErrnoException).code;
  return typeof code === 'string' ? code : error.name;
}

/** What the disk said, as a problem; `path` is named so that a person knows where to look. */
export const diskProblem = (error: unknown, path: string): Problem => {
  const detail = errorCode(error);
  return problem(codes[detail] ?? 'disk-error', '', { path, detail });
};

/** Runs something that touches the disk and turns what it throws into a problem about `path`. */
export function onDisk<T>(path: string, act: () => T): Result<T> {
  try {
    return good(act());
  } catch (error) {
    return bad(diskProblem(error, path));
  }
}

/**
 * Makes a folder and those above it that are missing. One by one: Node's own recursive way never returns where the system answers that a folder
 * is missing although its parent is there (tried: /proc, Node 20).
 */
export function makeFolder(folder: string, mode = 0o777): void {
  if (existsSync(folder)) {
    if (!statSync(folder).isDirectory()) throw Object.assign(new Error('not a folder'), { code: 'ENOTDIR' });
    return;
  }
  if (dirname(folder) !== folder) makeFolder(dirname(folder), mode);
  try {
    mkdirSync(folder, { mode });
  } catch (error) {
    if (errorCode(error) !== 'EEXIST') throw error;
    return;
  }
  // what is flushed inside it later is found only if the folder itself is; one that may not be listed cannot be flushed by us
  onDisk(folder, () => flushFolder(dirname(folder)));
}

/** Writes all of `bytes` at the end of an open file. Throws when the disk does. */
export function writeAll(fd: number, bytes: Uint8Array): void {
  for (let done = 0; done < bytes.length; ) done += writeSync(fd, bytes, done, bytes.length - done, null);
}

/** Flushes a folder, so that a new or renamed file in it is found after a power cut. Windows does this by itself and refuses the call. */
export function flushFolder(folder: string): void {
  if (process.platform === 'win32') return;
  const fd = openSync(folder, 'r');
  try {
    fsyncSync(fd);
  } finally {
    closeSync(fd);
  }
}

/** Writes a file that is new or replaces an old one whole. Throws when the disk does; then the old file stands as it was. `mode` for who may read it. */
export function writeWhole(path: string, bytes: Uint8Array | string, mode = 0o666): void {
  const aside = join(dirname(path), `.${basename(path)}.${randomBytes(6).toString('hex')}.part`);
  try {
    const fd = openSync(aside, 'wx', mode);
    try {
      writeAll(fd, typeof bytes === 'string' ? Buffer.from(bytes, 'utf8') : bytes);
      fdatasyncSync(fd);
    } finally {
      closeSync(fd);
    }
    renameSync(aside, path);
  } catch (error) {
    rmSync(aside, { force: true });
    throw error;
  }
  flushFolder(dirname(path));
}
