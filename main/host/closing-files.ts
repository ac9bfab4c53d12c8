/** Where the two files of a closing lie: `closings/<desk>-<end day>-<short id>-v<version>`, JSON and PDF. A name is only a help: the hash decides. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Body } from '../../app/core/kinds/index.ts';
import { sha256 } from './canonical.ts';
import { makeFolder, writeWhole } from './disk.ts';

export const closingsFolder = (daybook: string): string => join(daybook, 'closings');

export type ClosingFile = 'statement' | 'paper';
const endings: Readonly<Record<ClosingFile, string>> = { statement: 'json', paper: 'pdf' };

/** Part of a name by which the entry is told from others. */
const shortId = (id: string): string => sha256(id).slice(0, 8);
const tail = (id: string, version: number, which: ClosingFile): string => `-${shortId(id)}-v${version}.${endings[which]}`;

/** The name of a closing's file. `day` is the last day of its period. */
export const closingFileName = (
  desk: string,
  day: string,
  { id, version }: { readonly id: string; readonly version: number },
  which: ClosingFile,
): string => `${desk}-${day}${tail(id, version, which)}`;

/** All names in the folder, in order; none where it is missing. */
export const closingFiles = (daybook: string): readonly string[] =>
  existsSync(closingsFolder(daybook))
    ? readdirSync(closingsFolder(daybook), { withFileTypes: true })
        .filter((file) => file.isFile() && !file.name.startsWith('.'))
        .map((file) => file.name)
        .sort()
    : [];

/** The name among these under which a kept closing's file lies, or null. */
export const nameOfClosing = (
  names: readonly string[],
  closing: { readonly desk: string; readonly id: string; readonly body: Body<'closing'> },
  which: ClosingFile,
): string | null =>
  names.find((name) => name.startsWith(`${closing.desk}-`) && name.endsWith(tail(closing.id, closing.body.version, which))) ??
  null;

/** Writes a file aside, flushes it, renames it in, flushes the folder. Throws when the disk does. */
export function writeClosingFile(daybook: string, name: string, content: Uint8Array | string): void {
  makeFolder(closingsFolder(daybook));
  writeWhole(join(closingsFolder(daybook), name), content);
}
