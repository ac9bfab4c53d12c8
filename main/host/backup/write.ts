/**
 * Writes a backup: aside, flushed, read back from the disk and held against the chain, renamed, the folder flushed; and only then the ones that are
 * out of the rotation go. Until the new one has its name, no earlier one is touched; what fails leaves nothing but them.
 */
import { randomBytes } from 'node:crypto';
import { closeSync, existsSync, fdatasyncSync, openSync, readdirSync, renameSync, rmSync, statfsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { createTarPacker } from 'modern-tar';
import { holdsMark } from '../../../app/core/book/closings.ts';
import { bad, good, type Problem, problem, type Result } from '../../../app/core/result.ts';
import { readDaybook } from '../daybook-folder.ts';
import { diskProblem, errorCode, flushFolder, onDisk, writeAll } from '../disk.ts';
import { backupFormat, type Manifest, manifestName } from './manifest.ts';
import { backupFileName, isUnfinished, outOfRotation, type WhyMade } from './names.ts';
import { type Opener, type Sealing, sealed } from './seal.ts';
import { listed, partsOf, type Snapshot, snapshotOf } from './snapshot.ts';
import { type Progress, readBackup } from './unpack.ts';

export interface BackupOrder {
  /** The daybook's folder, and what the host has of it in memory: the backup must hold at least that. */
  readonly folder: string;
  readonly daybook: Manifest['daybook'];
  readonly ownDesk: string;
  readonly desks: Manifest['desks'];
  /** The folder in the place that holds this daybook's backups. It must be there: a mount point without its disk has none. */
  readonly into: string;
  readonly sealing: Sealing;
  readonly now: string;
  readonly why: WhyMade;
  readonly program: string;
  /** An empty folder of our own for reading back. */
  readonly aside: string;
  /** Work of a passphrase; left out, what the library holds right. */
  readonly logN?: number;
}

export interface BackupMade {
  readonly file: string;
  readonly bytes: number;
  readonly entries: number;
  readonly desks: Manifest['desks'];
  readonly files: number;
  readonly leftOut: readonly string[];
  readonly removed: readonly string[];
  /** Why an earlier one that should have gone is still there. */
  readonly rotation: Problem | null;
}

const full: readonly string[] = ['ENOSPC', 'EDQUOT', 'EFBIG'];
const locked: readonly string[] = ['EROFS', 'EACCES', 'EPERM'];

/** What failed at the place, in terms of the place: full, not to be written, or gone. */
function placeProblem(error: unknown, path: string): Problem {
  const detail = errorCode(error);
  if (full.includes(detail)) return problem('backup-place-full', '', { path });
  return locked.includes(detail)
    ? problem('backup-place-read-only', '', { path })
    : problem('backup-place-lost', '', { path, detail });
}

/** The folder flushed; some file systems on sticks and shares know no such call. */
function flushPlace(folder: string): void {
  try {
    flushFolder(folder);
  } catch (error) {
    if (!['EINVAL', 'ENOTSUP', 'EOPNOTSUPP'].includes(errorCode(error))) throw error;
  }
}

/** What a tar of these files takes: a block before each, each filled up to blocks, two at the end. */
const tarBytes = (sizes: readonly number[]): number =>
  sizes.reduce((sum, size) => sum + 1024 + Math.ceil(size / 512) * 512, 2048);

/** The tar as a stream. It breaks off with `backup-changed-meanwhile` where a file is no longer what it was. */
function packed(folder: string, about: Manifest, { files }: Snapshot): ReadableStream<Uint8Array> {
  const { readable, controller } = createTarPacker();
  const mtime = new Date(about.made);
  const head = Buffer.from(`${JSON.stringify(about, null, 1)}\n`, 'utf8');
  const add = async (name: string, size: number, parts: Iterable<Uint8Array>) => {
    const writer = controller.add({ name, size, type: 'file', mode: 0o600, mtime }).getWriter();
    for (const some of parts) await writer.write(some);
    await writer.close();
  };
  const all = async () => {
    await add(manifestName, head.length, [head]);
    for (const { path, bytes, held } of files) await add(path, bytes, held ? [held] : partsOf(join(folder, path)));
    controller.finalize();
  };
  all().catch((error: unknown) => controller.error(error));
  return readable;
}

async function pour(stream: ReadableStream<Uint8Array>, path: string): Promise<number> {
  const fd = openSync(path, 'wx', 0o600);
  let bytes = 0;
  try {
    for await (const some of stream) {
      try {
        writeAll(fd, some);
      } catch (error) {
        throw new AtPlace(error);
      }
      bytes += some.length;
    }
    try {
      fdatasyncSync(fd);
    } catch (error) {
      throw new AtPlace(error);
    }
  } finally {
    closeSync(fd);
  }
  return bytes;
}

/** An error of the place, told apart from one of the daybook's own disk. */
class AtPlace extends Error {
  readonly of: unknown;
  constructor(of: unknown) {
    super('at the place');
    this.of = of;
  }
}

/** Reads the file back and holds it against the chain and against what the host has in memory. */
async function verify(
  path: string,
  file: string,
  opener: Opener,
  order: BackupOrder,
  progress: Progress,
): Promise<Result<number>> {
  const only = (name: string) => name === 'daybook.json' || name.startsWith('desks/');
  const read = await readBackup(path, file, opener, { folder: order.aside, only }, progress);
  if (!read.ok) return bad(problem('backup-not-read-back', '', { file, cause: read.problems[0]?.code ?? '' }));
  const again = readDaybook(order.aside);
  if (!again.ok) return bad(problem('backup-not-read-back', '', { file, cause: again.problems[0]?.code ?? '' }));
  const { desks, entries, info } = again.value;
  const broken = desks.find(({ fault }) => fault);
  if (broken?.fault)
    return bad(problem('backup-chain', '', { desk: broken.desk, line: broken.fault.line, cause: broken.fault.cause }));
  const unmet = order.desks.find((mark) => mark.entries > 0 && !holdsMark(entries, mark));
  if (unmet || info.id !== order.daybook.id)
    return bad(problem('backup-not-read-back', '', { file, cause: unmet?.desk ?? 'daybook.json' }));
  return good(entries.length);
}

/** Removes what is out of the rotation, and what earlier ones left unfinished. */
function rotate(into: string, verified: string): Pick<BackupMade, 'removed' | 'rotation'> {
  const removed: string[] = [];
  const done = onDisk(into, () => {
    const names = readdirSync(into);
    for (const file of [...outOfRotation(names, verified), ...names.filter(isUnfinished)]) {
      rmSync(join(into, file), { force: true });
      if (!isUnfinished(file)) removed.push(file);
    }
    if (removed.length > 0) flushPlace(into);
  });
  return { removed, rotation: done.ok ? null : (done.problems[0] ?? null) };
}

/**
 * Makes a backup and answers it once it is verified, named and flushed. Problems: `backup-place-missing`, `backup-place-full`,
 * `backup-place-read-only`, `backup-place-lost`, `backup-source`, `backup-changed-meanwhile`, `backup-not-read-back`, `backup-chain`.
 */
export async function writeBackup(order: BackupOrder, progress: Progress = () => {}): Promise<Result<BackupMade>> {
  const { folder, into, sealing, now, why } = order;
  if (!onDiskIs(into)) return bad(problem('backup-place-missing', '', { path: into }));
  const taken = onDisk(folder, () => snapshotOf(folder, order.ownDesk));
  if (!taken.ok) return bad(...taken.problems.map(({ data }) => problem('backup-source', '', data)));
  const snapshot = taken.value;
  const about: Manifest = {
    backup: backupFormat,
    program: order.program,
    made: now,
    why,
    daybook: order.daybook,
    desks: order.desks.map(({ desk, entries, endMark }) => ({ desk, entries, endMark })),
    files: listed(snapshot),
  };
  const need = tarBytes([...about.files.map(({ bytes }) => bytes), JSON.stringify(about).length]);
  const room = onDisk(into, () => statfsSync(into)).ok ? statfsSync(into) : null;
  if (room && room.bavail * room.bsize < need)
    return bad(problem('backup-place-full', '', { path: into, need, free: room.bavail * room.bsize }));
  let file = backupFileName(now, why, sealing.how !== 'none');
  for (let again = 1; existsSync(join(into, file)); again++) file = backupFileName(now, why, sealing.how !== 'none', again);
  const aside = join(into, `.${file}.${randomBytes(6).toString('hex')}.part`);
  const failed = (told: Problem): Result<never> => {
    onDisk(aside, () => rmSync(aside, { force: true }));
    return bad(told);
  };
  let opener: Opener;
  let bytes: number;
  try {
    let done = 0;
    const counted = packed(folder, about, snapshot).pipeThrough(
      new TransformStream<Uint8Array, Uint8Array>({
        transform(some, out) {
          done += some.length;
          progress(done, 2 * need);
          out.enqueue(some);
        },
      }),
    );
    const seal = await sealed(counted, sealing, order.logN);
    opener = seal.opener;
    bytes = await pour(seal.stream, aside);
  } catch (error) {
    if (error instanceof AtPlace) return failed(placeProblem(error.of, into));
    const { path = '' } = error as NodeJS.ErrnoException;
    if (path.startsWith(into)) return failed(placeProblem(error, into));
    if (typeof (error as NodeJS.ErrnoException).code === 'string')
      return failed({ ...diskProblem(error, path), code: 'backup-source' });
    // the packer refuses a file that is shorter or longer than it was a moment before
    return failed(problem('backup-changed-meanwhile', ''));
  }
  const entries = await verify(aside, file, opener, order, (read, of) =>
    progress(need + (read * need) / Math.max(1, of), 2 * need),
  );
  if (!entries.ok) return failed(entries.problems[0]!);
  try {
    renameSync(aside, join(into, file));
    flushPlace(into);
  } catch (error) {
    return failed(placeProblem(error, into));
  }
  const { desks } = about;
  const { removed, rotation } = rotate(into, file);
  return good({
    file,
    bytes,
    entries: entries.value,
    desks,
    files: about.files.length,
    leftOut: snapshot.leftOut,
    removed,
    rotation,
  });
}

const onDiskIs = (folder: string): boolean => {
  const is = onDisk(folder, () => statSync(folder, { throwIfNoEntry: false })?.isDirectory() ?? false);
  return is.ok && is.value;
};
