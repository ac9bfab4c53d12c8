/**
 * Reads a backup: opens its seal, and takes its members one by one against its manifest. Whatever does not fit refuses the whole file: a name that
 * is not in the manifest or leads elsewhere, a link, a size that was not announced, a content of another hash, a member twice or missing. Nothing is
 * written outside the folder that was made for it, and never more bytes than the file itself has.
 */
import { createHash } from 'node:crypto';
import { closeSync, fdatasyncSync, openSync, readSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { createTarDecoder, type ParsedTarEntry } from 'modern-tar';
import { bad, good, type Problem, problem, type Result } from '../../../app/core/result.ts';
import { diskProblem, flushFolder, makeFolder, onDisk, writeAll } from '../disk.ts';
import { type Manifest, manifest, manifestName, mostManifestBytes, newerManifest } from './manifest.ts';
import { type HowSealed, howSealed, type Opener, opened } from './seal.ts';
import { partsOf } from './snapshot.ts';

/** Where the files of a backup go while it is read. */
export interface Into {
  readonly folder: string;
  /** Which files are written there; all of them are read and hashed either way. */
  readonly only?: (path: string) => boolean;
}

/** Told while a file is read: bytes of it done, and how many there are. */
export type Progress = (done: number, of: number) => void;

class Refused extends Error {
  readonly told: Problem;
  constructor(told: Problem) {
    super(told.code);
    this.told = told;
  }
}
const refuse = (told: Problem): never => {
  throw new Refused(told);
};

/** The first bytes of a file, and its size. */
export function headOf(path: string): { first: Uint8Array; bytes: number } {
  const fd = openSync(path, 'r');
  try {
    const first = new Uint8Array(512);
    return { first: first.subarray(0, readSync(fd, first, 0, 512, 0)), bytes: statSync(path).size };
  } finally {
    closeSync(fd);
  }
}

/** Whether these first bytes may begin a backup: something sealed, or a tar whose first member is the manifest. */
export const maybeBackup = (first: Uint8Array): boolean => {
  const text = (from: number, length: number) => Buffer.from(first.subarray(from, from + length)).toString('latin1');
  return howSealed(first) !== 'none' || (text(0, manifestName.length + 1) === `${manifestName}\0` && text(257, 5) === 'ustar');
};

/** How the file at `path` is sealed. Problems are those of the disk. */
export const sealOf = (path: string): Result<HowSealed> => onDisk(path, () => howSealed(headOf(path).first));

/** The file as a stream that reads on only when it is asked to. */
export function streamOf(path: string, of: number, report: Progress): ReadableStream<Uint8Array> {
  const parts = partsOf(path);
  let done = 0;
  return new ReadableStream<Uint8Array>(
    {
      pull(stream) {
        const next = parts.next();
        if (next.done) return stream.close();
        done += next.value.length;
        report(done, of);
        stream.enqueue(next.value);
      },
      cancel: () => void parts.return(),
    },
    { highWaterMark: 1 },
  );
}

async function wholeOf({ body }: ParsedTarEntry): Promise<Buffer> {
  const parts: Uint8Array[] = [];
  for await (const some of body) parts.push(some);
  return Buffer.concat(parts);
}

function manifestFrom(bytes: Buffer, file: string): Manifest {
  let value: unknown;
  try {
    value = JSON.parse(bytes.toString('utf8'));
  } catch {
    return refuse(problem('backup-not-ours', 'from', { file }));
  }
  if (newerManifest.safeParse(value).success) refuse(problem('backup-newer', 'from', { file }));
  const read = manifest.safeParse(value);
  if (!read.success) return refuse(problem('backup-damaged', 'from', { file, where: manifestName }));
  const names = new Set(read.data.files.map(({ path }) => path.normalize('NFC').toLowerCase()));
  if (names.size < read.data.files.length) refuse(problem('backup-hostile', 'from', { file, what: 'twice', name: manifestName }));
  return read.data;
}

/** Takes the bytes of one member: hashed, and written where they go. */
async function take({ body }: ParsedTarEntry, path: string | null): Promise<string> {
  const sum = createHash('sha256');
  if (path !== null) makeFolder(dirname(path));
  // a new file or none: nothing that is there is written over or followed
  const fd = path === null ? null : openSync(path, 'wx');
  try {
    for await (const some of body) {
      sum.update(some);
      if (fd !== null) writeAll(fd, some);
    }
    if (fd !== null) fdatasyncSync(fd);
  } finally {
    if (fd !== null) closeSync(fd);
  }
  return sum.digest('hex');
}

/** Members of a tar, checked one by one. Throws `Refused`. */
async function takeAll(stream: ReadableStream<Uint8Array>, file: string, most: number, into: Into | null): Promise<Manifest> {
  const hostile = (what: string, name: string) =>
    refuse(problem('backup-hostile', 'from', { file, what, name: name.replaceAll(/\p{C}/gu, '?').slice(0, 120) }));
  let about: Manifest | null = null;
  const open = new Map<string, Manifest['files'][number]>();
  for await (const member of stream.pipeThrough(createTarDecoder({ strict: true }))) {
    const { name, type, size } = member.header;
    if (about === null) {
      if (name !== manifestName || type !== 'file') refuse(problem('backup-not-ours', 'from', { file }));
      if (size > Math.min(most, mostManifestBytes)) hostile('size', name);
      about = manifestFrom(await wholeOf(member), file);
      for (const one of about.files) open.set(one.path, one);
      // a tar is never smaller than what is in it
      if (about.files.reduce((sum, one) => sum + one.bytes, 0) > most) hostile('size', manifestName);
      continue;
    }
    if (type !== 'file') hostile(type === 'link' || type === 'symlink' ? 'link' : 'kind', name);
    const announced = open.get(name);
    if (!announced) return hostile(about.files.some(({ path }) => path === name) ? 'twice' : 'path', name);
    if (size !== announced.bytes || size > most) hostile('size', name);
    open.delete(name);
    const write = into && (into.only?.(name) ?? true) ? join(into.folder, ...name.split('/')) : null;
    if ((await take(member, write)) !== announced.sha256) refuse(problem('backup-damaged', 'from', { file, where: name }));
  }
  if (about === null) return refuse(problem('backup-not-ours', 'from', { file }));
  const [missing] = open.keys();
  if (missing !== undefined) refuse(problem('backup-damaged', 'from', { file, where: missing }));
  return about;
}

/**
 * Reads the backup at `path`, called `file` where people are told of it. Problems: those of `opened`, `backup-not-ours`, `backup-newer`,
 * `backup-damaged`, `backup-hostile`, those of the disk. `into.folder` must be there and empty; what was written there before a refusal stays for
 * the asker to remove.
 */
export async function readBackup(
  path: string,
  file: string,
  opener: Opener,
  into: Into | null,
  report: Progress = () => {},
): Promise<Result<Manifest>> {
  const head = onDisk(path, () => headOf(path));
  if (!head.ok) return head;
  const { first, bytes } = head.value;
  const how = howSealed(first);
  if (!maybeBackup(first)) return bad(problem('backup-not-ours', 'from', { file }));
  const stream = await opened(streamOf(path, bytes, report), how, opener, file);
  if (!stream.ok) return stream;
  try {
    const about = await takeAll(stream.value, file, bytes, into);
    if (into) flushBelow(into.folder, about);
    return good(about);
  } catch (error) {
    if (error instanceof Refused) return bad(error.told);
    const { code, syscall } = error as NodeJS.ErrnoException;
    if (typeof code === 'string' && typeof syscall === 'string') return bad(diskProblem(error, into?.folder ?? path));
    // what the readers of seal and tar throw: a block that does not verify, a header that is none, an end that is missing
    return bad(problem('backup-damaged', 'from', { file, where: how === 'none' ? 'tar' : 'seal' }));
  }
}

/** So that every file is found after a power cut: its folders are flushed too. Throws when the disk does. */
function flushBelow(folder: string, { files }: Manifest): void {
  const folders = new Set([folder]);
  for (const { path } of files) for (let at = dirname(path); at !== '.'; at = dirname(at)) folders.add(join(folder, at));
  for (const one of folders) onDisk(one, () => flushFolder(one));
}
