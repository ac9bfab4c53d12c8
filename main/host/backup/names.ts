/**
 * What backups are called where they lie, and which of them go when a new one has been verified. Kept are the ten newest, then the last of each of
 * thirty days, then the last of each month for ever; the one that has just been verified is kept whatever its name says (engineering.md 4.6).
 */
import { z } from '../../../app/core/zod.ts';
import { folderFor } from '../folder-name.ts';

/** Why a backup was made: the day's own, after a closing, or because somebody asked. */
export const whyMade = z.enum(['daily', 'closing', 'asked']);
export type WhyMade = z.infer<typeof whyMade>;

/** A backup by its name. `at` is local time without offset, as the clock stood where it was made. */
export interface BackupName {
  readonly file: string;
  readonly at: string;
  /** Which of those made within one second, from 1. */
  readonly again: number;
  readonly why: WhyMade;
  readonly sealed: boolean;
}

const named = /^(\d{4}-\d{2}-\d{2})-(\d{2})(\d{2})(\d{2})(?:-(\d{1,4}))?-(daily|closing|asked)\.tar(\.age)?$/;

/** The folder in the place that holds this daybook's backups: its name and the first eight figures of its id. */
export function backupsFolderName(daybookName: string, daybookId: string): string {
  const plain = folderFor(daybookName);
  return `${plain.ok ? plain.value : 'daybook'} ${daybookId.slice(0, 8)}`;
}

/** Whether a folder may hold backups of the daybook of this id; of any daybook where none is named. */
export const isBackupsFolder = (name: string, daybookId?: string): boolean =>
  daybookId === undefined ? / [a-z0-9-]{8}$/.test(name) : name.endsWith(` ${daybookId.slice(0, 8)}`);

/** "2026-03-14-092005-daily.tar.age". `again` tells apart what was made within one second. */
export function backupFileName(now: string, why: WhyMade, sealed: boolean, again = 0): string {
  const clock = now.slice(11, 19).replaceAll(':', '');
  return `${now.slice(0, 10)}-${clock}${again > 0 ? `-${again + 1}` : ''}-${why}.tar${sealed ? '.age' : ''}`;
}

/** What a name says; null where it is none of ours. */
export function readBackupName(file: string): BackupName | null {
  const m = named.exec(file);
  return (
    m && {
      file,
      at: `${m[1]}T${m[2]}:${m[3]}:${m[4]}`,
      again: Number(m[5] ?? 1),
      why: m[6] as WhyMade,
      sealed: m[7] !== undefined,
    }
  );
}

/** Order by which the newest come first. */
export const newestFirst = (a: Pick<BackupName, 'at' | 'again'>, b: Pick<BackupName, 'at' | 'again'>): number =>
  a.at < b.at ? 1 : a.at > b.at ? -1 : b.again - a.again;

/** A file of ours that never got its name. */
export const isUnfinished = (file: string): boolean => /^\.\d{4}-.*\.tar(\.age)?\.[0-9a-f]{12}\.part$/.test(file);

const newestKept = 10;
const daysKept = 30;

/** The names that go once `verified` stands. Names that are none of ours are never among them. */
export function outOfRotation(files: readonly string[], verified: string): string[] {
  const all = files
    .map(readBackupName)
    .filter((name): name is BackupName => name !== null)
    .sort(newestFirst);
  const kept = new Set([verified, ...all.slice(0, newestKept).map(({ file }) => file)]);
  const days = new Set<string>();
  const months = new Set<string>();
  for (const { file, at } of all) {
    const [day, month] = [at.slice(0, 10), at.slice(0, 7)];
    if (!days.has(day) && days.size < daysKept) kept.add(file);
    if (!months.has(month)) kept.add(file);
    days.add(day);
    months.add(month);
  }
  return all.map(({ file }) => file).filter((file) => !kept.has(file));
}
