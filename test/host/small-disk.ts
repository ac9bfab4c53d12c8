/**
 * A real small file system for a test: kept in memory, or in a file where that cannot be had. Only the superuser may mount one: elsewhere there is
 * none, and the test says so aloud. Gone when the test file is done.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

export interface SmallDisk {
  readonly folder: string;
  /** Fills it until no more than `leaveBytes` are free; `free` gives the room back. */
  readonly fill: (leaveBytes?: number) => void;
  readonly free: () => void;
  /** Mounts it anew for reading only, or for writing again. */
  readonly readOnly: (on: boolean) => void;
}

const run = (command: string, ...args: string[]): boolean => spawnSync(command, args, { encoding: 'utf8' }).status === 0;

/** Mounts a disk of so many KiB; null where this machine does not let us. */
export function smallDisk(kib: number): SmallDisk | null {
  const place = mkdtempSync(join(tmpdir(), 'small-disk-'));
  const folder = join(place, 'disk');
  mkdirSync(folder);
  const memory = () => run('mount', '-t', 'tmpfs', '-o', `size=${kib}k`, 'tmpfs', folder);
  const file = () => {
    const image = join(place, 'image');
    return (
      run('truncate', '-s', `${Math.max(kib, 1024)}K`, image) &&
      run('mkfs.ext4', '-q', '-F', '-m', '0', image) &&
      run('mount', '-o', 'loop', image, folder)
    );
  };
  if (process.platform !== 'linux' || !(memory() || file())) {
    rmSync(place, { recursive: true, force: true });
    return null;
  }
  afterAll(() => {
    if (run('umount', folder) || run('umount', '-l', folder)) rmSync(place, { recursive: true, force: true });
  });
  const filler = join(folder, 'filler');
  return {
    folder,
    fill: (leaveBytes = 0) => {
      const { bavail, bsize } = statfsSync(folder);
      const bytes = Math.max(0, bavail * bsize - leaveBytes);
      try {
        writeFileSync(filler, Buffer.alloc(bytes, 1), { flag: 'a' });
        while (leaveBytes === 0) writeFileSync(filler, Buffer.alloc(512, 1), { flag: 'a' });
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code !== 'ENOSPC') throw error;
      }
    },
    free: () => rmSync(filler, { force: true }),
    readOnly: (on) => {
      if (!run('mount', '-o', `remount,${on ? 'ro' : 'rw'}`, folder)) throw new Error('the disk was not mounted anew');
    },
  };
}

/** A disk for the tests of a file, or null with a word on standard error why its tests are skipped. */
export function smallDiskOrSay(kib: number, what: string): SmallDisk | null {
  const disk = smallDisk(kib);
  if (disk === null)
    process.stderr.write(`SKIPPED: ${what}: this machine lets no test mount a file system. A limit on file size stands in.\n`);
  return disk;
}
