/**
 * Locks of one installation: who holds a daybook open for writing. A lock names its process and host; it is stale when that process is gone.
 * Two processes must never both believe they hold one. A lock is never broken while its process may still live.
 */
import { randomBytes } from 'node:crypto';
import { closeSync, linkSync, openSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { bad, good, problem, type Result } from '../../app/core/result.ts';
import { z } from '../../app/core/zod.ts';
import { diskProblem, errorCode } from './disk.ts';

const holder = z.object({ pid: z.number().int(), host: z.string(), started: z.string().nullable() });
type Holder = z.infer<typeof holder>;

export interface Lock {
  readonly release: () => void;
}

/** Locks this very process holds: a lock file with our own pid that is not among them was left by an earlier process of the same number. */
const ours = new Set<string>();

/** When a process started, as the kernel counts it (Linux, /proc); null where it is not told. Tells a process from a later one of the same number. */
function startedOf(pid: number): string | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? null;
  } catch {
    return null;
  }
}

function lives({ pid, host, started }: Holder, path: string): boolean {
  // from here nothing can be told about a process of another host
  if (host !== hostname()) return true;
  if (pid === process.pid) return ours.has(path);
  try {
    process.kill(pid, 0);
  } catch (error) {
    if (errorCode(error) === 'ESRCH') return false;
  }
  const now = startedOf(pid);
  return now === null || started === null || now === started;
}

function holderAt(path: string): { text: string; holder: Holder | null } | null {
  try {
    const text = readFileSync(path, 'utf8');
    try {
      const got = holder.safeParse(JSON.parse(text));
      return { text, holder: got.success ? got.data : null };
    } catch {
      return { text, holder: null };
    }
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return null;
    throw error;
  }
}

/** Puts the lock there whole, or not at all: false when one is there already. */
function place(path: string, text: string, aside: string): boolean {
  writeFileSync(aside, text, { flag: 'wx', mode: 0o600 });
  try {
    linkSync(aside, path);
    return true;
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return false;
    // a file system without links: the exclusive open decides instead
    try {
      const fd = openSync(path, 'wx', 0o600);
      writeFileSync(fd, text);
      closeSync(fd);
      return true;
    } catch (second) {
      if (errorCode(second) === 'EEXIST') return false;
      throw second;
    }
  } finally {
    rmSync(aside, { force: true });
  }
}

/** Takes a lock that was found stale out of the way; when somebody was quicker, puts theirs back. */
function clear(path: string, stale: string, aside: string): void {
  try {
    renameSync(path, aside);
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return;
    throw error;
  }
  if (readFileSync(aside, 'utf8') !== stale) linkSync(aside, path);
  rmSync(aside, { force: true });
}

/** Takes the lock at `path`, or tells which process holds it (`elsewhere-open`, with its pid and host). */
export function takeLock(path: string): Result<Lock> {
  const text = `${JSON.stringify({ pid: process.pid, host: hostname(), started: startedOf(process.pid) })}\n`;
  const aside = `${path}.${process.pid}.${randomBytes(6).toString('hex')}`;
  try {
    for (let round = 0; round < 3; round++) {
      if (place(path, text, aside)) {
        ours.add(path);
        const release = () => {
          if (!ours.delete(path)) return;
          if (holderAt(path)?.text === text) rmSync(path, { force: true });
        };
        return good({ release });
      }
      const there = holderAt(path);
      if (there?.holder && lives(there.holder, path))
        return bad(problem('elsewhere-open', '', { pid: there.holder.pid, host: there.holder.host }));
      if (there) clear(path, there.text, aside);
    }
    return bad(problem('lock-contended', '', { path }));
  } catch (error) {
    return bad(diskProblem(error, path));
  }
}
