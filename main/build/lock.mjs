/** One builder at a time: a lock that names its process, and is taken over when that process is gone. */
import { linkSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { cache } from './paths.mjs';

const lockFile = join(cache, 'build.lock');

/** True while a process of this number runs. */
function runs(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}

/** Runs `work` while holding the lock. Waits for a builder that is at it; calls `waiting` once when it has to. */
export async function alone(work, waiting = () => {}) {
  mkdirSync(cache, { recursive: true });
  const mine = join(cache, `lock-${process.pid}`);
  writeFileSync(mine, String(process.pid));
  try {
    for (let told = false; ; await wait(100)) {
      try {
        // a link appears with its content: nobody ever reads an empty lock
        linkSync(mine, lockFile);
        break;
      } catch (error) {
        if (error.code !== 'EEXIST') throw error;
      }
      let holder = Number.NaN;
      try {
        holder = Number(readFileSync(lockFile, 'utf8'));
      } catch {
        continue;
      }
      if (!runs(holder)) rmSync(lockFile, { force: true });
      else if (!told) {
        told = true;
        waiting();
      }
    }
    return await work();
  } finally {
    rmSync(mine, { force: true });
    try {
      if (Number(readFileSync(lockFile, 'utf8')) === process.pid) rmSync(lockFile, { force: true });
    } catch {
      // nothing held
    }
  }
}
