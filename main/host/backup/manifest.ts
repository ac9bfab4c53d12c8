/**
 * The first member of every backup: whose daybook it is, its end marks, and every file with its size and SHA-256. Nothing that it does not name is
 * ever unpacked, and a name that leads out of the folder, or that some file system takes for something else, is no name.
 */
import { id, label, moment } from '../../../app/core/shapes.ts';
import { z } from '../../../app/core/zod.ts';
import { whyMade } from './names.ts';

export const manifestName = 'backup.json';
/** Number of this form of backup. */
export const backupFormat = 1;
/** A manifest is never larger, in bytes: it names some hundred thousand files. */
export const mostManifestBytes = 32_000_000;

const hash = z.string().regex(/^[0-9a-f]{64}$/);
const devices = /^(con|prn|aux|nul|com\d|lpt\d)(\..*)?$/i;
const segment = /^[^\p{C}<>:"|?*\\/]{1,200}$/u;

/** Whether a path is plain enough to be unpacked below a folder on any machine: no dots, no device, no hidden name, at most six steps. */
export function isPlainPath(path: string): boolean {
  const steps = path.split('/');
  return (
    steps.length <= 6 &&
    steps.every((step) => segment.test(step) && !step.startsWith('.') && !/[. ]$/.test(step) && !devices.test(step))
  );
}

export const manifest = z.strictObject({
  backup: z.literal(backupFormat),
  program: z.string().max(40),
  made: moment,
  why: whyMade,
  daybook: z.strictObject({ id, name: label }),
  desks: z.array(z.strictObject({ desk: id, entries: z.number().int().min(0), endMark: z.string().max(64) })),
  files: z.array(
    z.strictObject({
      path: z.string().refine((path) => isPlainPath(path) && path !== manifestName),
      bytes: z.number().int().min(0),
      sha256: hash,
    }),
  ),
});
export type Manifest = z.infer<typeof manifest>;

/** A manifest that a newer program wrote. */
export const newerManifest = z.object({ backup: z.number().int().gt(backupFormat) });
