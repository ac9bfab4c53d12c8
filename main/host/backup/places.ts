/**
 * Places a backup can go to. A page never names a path: it picks one that the host found or was given. Found are drives that stand ready; given is
 * the folder named when the program was started, or picked in the desktop's own dialog.
 */
import { readdirSync, realpathSync, statSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { bad, good, type Problem, problem, type Result } from '../../../app/core/result.ts';
import { sha256 } from '../canonical.ts';
import { makeFolder, onDisk } from '../disk.ts';
import { backupsFolderName, isBackupsFolder, newestFirst, readBackupName } from './names.ts';

const foldersIn = (folder: string): string[] => {
  const got = onDisk(folder, () => readdirSync(folder, { withFileTypes: true }));
  return got.ok
    ? got.value.filter((one) => one.isDirectory() && !one.name.startsWith('.')).map((one) => join(folder, one.name))
    : [];
};

/** Drives that people put in, where the platform shows them: below /media and /run/media (Linux), /Volumes (macOS), letters (Windows). */
export function drivesHere(platform: string = process.platform, user = process.env.USER ?? ''): readonly string[] {
  if (platform === 'win32')
    return [...'DEFGHIJKLMNOPQRSTUVWXYZ'].map((letter) => `${letter}:\\`).filter((root) => onDisk(root, () => statSync(root)).ok);
  if (platform === 'darwin') return foldersIn('/Volumes');
  return user === '' ? [] : [...foldersIn(join('/media', user)), ...foldersIn(join('/run/media', user))];
}

/** What a page knows a path by. */
export const keyOf = (path: string): string => sha256(path).slice(0, 16);

const inside = (path: string, folder: string): boolean => {
  const way = relative(folder, path);
  return way === '' || (!way.startsWith(`..${sep}`) && way !== '..' && resolve(folder, way) === path);
};

/** Why a folder cannot be the place for backups of the daybook in `daybookFolder`; null when nothing speaks against it. */
export function unfitPlace(place: string, daybookFolder: string): Problem | null {
  const real = onDisk(place, () => [realpathSync(place), realpathSync(daybookFolder)] as const);
  if (!real.ok) return problem('backup-place-missing', 'place', { path: place });
  return inside(real.value[0], real.value[1]) ? problem('backup-place-inside', 'place', { path: place }) : null;
}

/** Makes the folder in the place that this daybook's backups go into, and answers it. */
export function takePlace(place: string, name: string, daybookId: string): Result<string> {
  const folder = join(place, backupsFolderName(name, daybookId));
  const made = onDisk(place, () => makeFolder(folder));
  if (made.ok) return good(folder);
  const code = made.problems[0]?.code;
  const told =
    code === 'no-permission' ? 'backup-place-read-only' : code === 'disk-full' ? 'backup-place-full' : 'backup-place-missing';
  return bad(problem(told, 'place', { path: place }));
}

/** Whether two paths lie on one disk, as far as the system tells: a second copy there dies with the first. */
export function onOneDisk(one: string, other: string): boolean {
  const devices = onDisk(one, () => [statSync(one).dev, statSync(other).dev] as const);
  return devices.ok && devices.value[0] === devices.value[1];
}

/** A backup that lies in a place. `of` is its folder's name, which tells whose it is. */
export interface FoundBackup {
  readonly path: string;
  readonly file: string;
  readonly of: string;
  readonly at: string;
  readonly again: number;
  readonly why: string;
  readonly sealed: boolean;
  readonly bytes: number;
}

/** Every backup in a place, newest first; of one daybook where it is named. What cannot be read is not there. */
export function backupsIn(place: string, daybookId?: string): FoundBackup[] {
  const found = foldersIn(place)
    .map((folder) => ({ folder, of: folder.slice(place.length).replace(/^[/\\]/, '') }))
    .filter(({ of }) => isBackupsFolder(of, daybookId))
    .flatMap(({ folder, of }) => {
      const names = onDisk(folder, () => readdirSync(folder));
      return (names.ok ? names.value : []).flatMap((file) => {
        const name = readBackupName(file);
        const path = join(folder, file);
        const stat = onDisk(path, () => statSync(path));
        return name && stat.ok && stat.value.isFile() ? [{ ...name, path, of, bytes: stat.value.size }] : [];
      });
    });
  return found.sort(newestFirst);
}
