/**
 * What this machine keeps of a daybook's lock, outside the daybook: after how long the window locks itself, whose passphrases are set, and how often a wrong
 * one was tried. A file that cannot be read locks for good and is never written over: otherwise spoiling it would open the book.
 */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { bad, good, problem, type Result } from '../../app/core/result.ts';
import { id } from '../../app/core/shapes.ts';
import { z } from '../../app/core/zod.ts';
import { makeFolder, onDisk, writeWhole } from './disk.ts';
import { hashed } from './passphrase-hash.ts';

const settings = z.strictObject({
  /** Null: it does not lock itself. */
  idleMinutes: z.number().int().min(1).max(240).nullable(),
  people: z.array(z.strictObject({ person: id, name: z.string().max(200), passphrase: hashed })).max(200),
  /** Wrong passphrases since the last right one, and when the last was tried, in milliseconds since 1970. */
  wrong: z.strictObject({ times: z.number().int().min(0), at: z.number() }),
});
export type LockSettings = z.infer<typeof settings>;

export const noLock: LockSettings = { idleMinutes: null, people: [], wrong: { times: 0, at: 0 } };

/** Where it lies. A daybook's id has the shape of an id, so it names a file in that folder and nowhere else. */
export const lockSettingsPath = (home: string, daybookId: string): string => join(home, 'passphrases', `${daybookId}.json`);

/** Reads it; `noLock` where there is none. Problems: `lock-unreadable`, those of the disk. */
export function readLockSettings(home: string, daybookId: string): Result<LockSettings> {
  const path = lockSettingsPath(home, daybookId);
  if (!existsSync(path)) return good(noLock);
  const text = onDisk(path, () => readFileSync(path, 'utf8'));
  if (!text.ok) return text;
  try {
    return good(settings.parse(JSON.parse(text.value)));
  } catch {
    return bad(problem('lock-unreadable', '', { path }));
  }
}

/** Writes it whole, for its user alone. */
export const writeLockSettings = (home: string, daybookId: string, next: LockSettings): Result<null> => {
  const path = lockSettingsPath(home, daybookId);
  return onDisk(path, () => {
    makeFolder(dirname(path), 0o700);
    writeWhole(path, `${JSON.stringify(next)}\n`, 0o600);
    return null;
  });
};
