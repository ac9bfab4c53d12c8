/**
 * The work that takes time, as orders and answers of plain data, so that it can be done in a thread: making a backup, looking into one, restoring
 * one beside everything else, rehearsing that. Each has a folder of its own below the installation's, and leaves nothing in it.
 */
import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, rmSync, statfsSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { BackupDifference, BackupFindings, BackupHolds } from '../../../app/contract.ts';
import { bad, good, problem, type Result } from '../../../app/core/result.ts';
import { sha256 } from '../canonical.ts';
import { readDaybook } from '../daybook-folder.ts';
import { makeFolder, onDisk } from '../disk.ts';
import { differenceOf } from './difference.ts';
import { findingsOf } from './findings.ts';
import type { Manifest } from './manifest.ts';
import type { Opener } from './seal.ts';
import { headOf, type Progress, readBackup, sealOf } from './unpack.ts';
import { type BackupMade, type BackupOrder, writeBackup } from './write.ts';

/** A backup file, what people call it, and what opens it. */
export interface Source {
  readonly path: string;
  readonly file: string;
  readonly opener: Opener;
}

export interface Jobs {
  readonly backup: { order: Omit<BackupOrder, 'aside'>; done: BackupMade };
  /** `here`: the open daybook's folder to compare with. */
  readonly look: {
    order: Source & { readonly here: string | null };
    done: { readonly holds: BackupHolds; readonly difference: BackupDifference | null; readonly mark: string };
  };
  /** Unpacks beside `target`, which must not be there, and answers where: whoever asked gives it its name. `mark` is what a look answered. */
  readonly restore: {
    order: Source & { readonly target: string; readonly mark: string };
    done: { readonly unpacked: string; readonly findings: BackupFindings; readonly daybookId: string };
  };
  readonly rehearse: { order: Source; done: BackupFindings };
}
export type JobName = keyof Jobs;
/** An order by name; `asides` is the installation's folder for what is only there for a while. */
export type Job = {
  readonly [J in JobName]: { readonly job: J; readonly asides: string; readonly order: Jobs[J]['order'] };
}[JobName];

/** Tells one state of a backup from another of the same name. */
const markOf = (about: Manifest): string => sha256(JSON.stringify(about));

const asideName = /^(\d+)-[0-9a-f]{12}$/;
const lives = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code !== 'ESRCH';
  }
};

/** A new empty folder of this process; those of processes that are gone are removed. */
export function makeAside(asides: string): Result<string> {
  return onDisk(asides, () => {
    makeFolder(asides, 0o700);
    for (const name of readdirSync(asides)) {
      const pid = asideName.exec(name)?.[1];
      if (pid !== undefined && !lives(Number(pid))) rmSync(join(asides, name), { recursive: true, force: true });
    }
    const aside = join(asides, `${process.pid}-${randomBytes(6).toString('hex')}`);
    mkdirSync(aside, { mode: 0o700 });
    return aside;
  });
}

/** Runs `act` with a folder that is gone afterwards, whatever happened. */
async function withAside<T>(asides: string, act: (aside: string) => Promise<Result<T>>): Promise<Result<T>> {
  const aside = makeAside(asides);
  if (!aside.ok) return aside;
  try {
    return await act(aside.value);
  } finally {
    onDisk(asides, () => rmSync(aside.value, { recursive: true, force: true }));
  }
}

async function look(
  { path, file, opener, here }: Jobs['look']['order'],
  aside: string,
  progress: Progress,
): Promise<Result<Jobs['look']['done']>> {
  const how = sealOf(path);
  if (!how.ok) return how;
  const only = (name: string) => name === 'daybook.json' || name.startsWith('desks/');
  const about = await readBackup(path, file, opener, { folder: aside, only }, progress);
  if (!about.ok) return about;
  const there = readDaybook(aside);
  if (!there.ok) return bad(problem('backup-damaged', 'from', { file, where: 'daybook.json' }));
  const { info, desks, entries } = there.value;
  if (info.id !== about.value.daybook.id) return bad(problem('backup-damaged', 'from', { file, where: 'daybook.json' }));
  const holds: BackupHolds = {
    file,
    name: info.name,
    made: about.value.made,
    program: about.value.program,
    sealed: how.value !== 'none',
    entries: entries.length,
    desks: desks.map(({ desk, entries: n, endMark }) => ({ desk, entries: n, endMark })),
    evidence: about.value.files.filter(({ path: name }) => name.startsWith('evidence/')).length,
    files: about.value.files.length,
    bytes: about.value.files.reduce((sum, { bytes }) => sum + bytes, 0),
    faults: desks.flatMap(({ desk, fault }) =>
      fault ? [problem('chain-broken', '', { desk, line: fault.line, cause: fault.cause })] : [],
    ),
  };
  const difference = here === null ? null : differenceOf(here, aside, about.value);
  if (difference && !difference.ok) return difference;
  return good({ holds, difference: difference?.value ?? null, mark: markOf(about.value) });
}

/** The empty folders a daybook has besides its files. */
const inner = ['desks', 'evidence', 'closings'];

async function unpackInto(folder: string, source: Source, progress: Progress): Promise<Result<Manifest>> {
  const made = onDisk(folder, () => {
    mkdirSync(folder);
    for (const name of inner) mkdirSync(join(folder, name));
  });
  return made.ok ? readBackup(source.path, source.file, source.opener, { folder }, progress) : made;
}

async function restore(order: Jobs['restore']['order'], progress: Progress): Promise<Result<Jobs['restore']['done']>> {
  const { target, mark } = order;
  if (existsSync(target)) return bad(problem('already-there', '', { path: target }));
  const room = onDisk(dirname(target), () => ({ free: statfsSync(dirname(target)), need: headOf(order.path).bytes }));
  if (!room.ok) return room;
  if (room.value.free.bavail * room.value.free.bsize < room.value.need)
    return bad(problem('disk-full', '', { path: dirname(target) }));
  const unpacked = join(dirname(target), `.${basename(target)}.${randomBytes(6).toString('hex')}.part`);
  const about = await unpackInto(unpacked, order, progress);
  const done = about.ok && markOf(about.value) === mark ? findingsOf(unpacked, about.value) : null;
  if (about.ok && done?.ok) return good({ unpacked, findings: done.value, daybookId: about.value.daybook.id });
  onDisk(unpacked, () => rmSync(unpacked, { recursive: true, force: true }));
  if (!about.ok) return about;
  return done && !done.ok ? done : bad(problem('backup-changed', 'look', { file: order.file }));
}

/** Does one job. Problems are those of the functions it stands on. */
export async function runJob(job: Job, progress: Progress = () => {}): Promise<Result<unknown>> {
  switch (job.job) {
    case 'backup':
      return withAside(job.asides, (aside) => writeBackup({ ...job.order, aside }, progress));
    case 'look':
      return withAside(job.asides, (aside) => look(job.order, aside, progress));
    case 'restore':
      return restore(job.order, progress);
    case 'rehearse':
      return withAside(job.asides, async (aside) => {
        const folder = join(aside, 'book');
        const about = await unpackInto(folder, job.order, progress);
        return about.ok ? findingsOf(folder, about.value) : about;
      });
  }
}
