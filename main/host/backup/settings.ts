/**
 * What this installation knows of the backups of one daybook, outside it: the place, how they are sealed, and how the last ones went. A passphrase
 * lies here readable by this user of the machine alone: it guards the backup where it is carried, and nothing on this machine.
 */
import { randomBytes } from 'node:crypto';
import { existsSync, readFileSync, renameSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Result } from '../../../app/core/result.ts';
import { moment } from '../../../app/core/shapes.ts';
import { z } from '../../../app/core/zod.ts';
import { makeFolder, onDisk, writeWhole } from '../disk.ts';
import { whyMade } from './names.ts';

const sealing = z.discriminatedUnion('how', [
  z.strictObject({ how: z.literal('none') }),
  z.strictObject({ how: z.literal('recipient'), recipient: z.string() }),
  z.strictObject({ how: z.literal('passphrase'), passphrase: z.string() }),
]);
const told = z.object({
  code: z.string(),
  field: z.string(),
  data: z.record(z.string(), z.union([z.string(), z.number()])).optional(),
});
const settings = z.object({
  /** The folder somebody picked; null while none is. */
  place: z.string().nullable(),
  sealing,
  /** The last that was verified, and its own name for rotation. */
  last: z
    .object({
      file: z.string(),
      at: moment,
      why: whyMade,
      bytes: z.number(),
      entries: z.number(),
      program: z.string(),
      leftOut: z.array(z.string()),
      rotation: told.nullable(),
    })
    .nullable(),
  /** The last try, where it failed. */
  failed: z.object({ at: moment, problems: z.array(told) }).nullable(),
});
export type BackupSettings = z.infer<typeof settings>;

export const noSettings: BackupSettings = { place: null, sealing: { how: 'none' }, last: null, failed: null };

const pathOf = (home: string, daybookId: string): string => join(home, 'backups', `${daybookId}.json`);

/** Reads them; none where there are none. A file that cannot be understood is kept under another name. Problems are those of the disk. */
export function readSettings(home: string, daybookId: string): Result<BackupSettings> {
  const path = pathOf(home, daybookId);
  return onDisk(path, () => {
    if (!existsSync(path)) return noSettings;
    try {
      return settings.parse(JSON.parse(readFileSync(path, 'utf8')));
    } catch (error) {
      if (!(error instanceof SyntaxError || error instanceof z.ZodError)) throw error;
      renameSync(path, `${path}.unreadable-${randomBytes(4).toString('hex')}`);
      return noSettings;
    }
  });
}

/** Writes them whole, for this user alone. Problems are those of the disk. */
export function writeSettings(home: string, daybookId: string, value: BackupSettings): Result<null> {
  const path = pathOf(home, daybookId);
  return onDisk(path, () => {
    makeFolder(dirname(path), 0o700);
    writeWhole(path, `${JSON.stringify(value, null, 1)}\n`, 0o600);
    return null;
  });
}
