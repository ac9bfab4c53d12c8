/**
 * Signs a desk's end mark: one signature covers every line up to it, since each line carries the hash of the one before. Only the installation that is the
 * desk signs, when a period is closed and before a backup is packed. A mark that is signed already is not signed again.
 */
import { sign } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { good, type Result } from '../../app/core/result.ts';
import { canonicalText } from './canonical.ts';
import { makeFolder, onDisk, writeWhole } from './disk.ts';
import { keyMade, keyOfDesk } from './sign-key.ts';
import { readSignatures, type SignedMark, signaturesFolder, signaturesPath, signedBytes } from './sign-lines.ts';

/** The end mark of one desk in one daybook: the hash of its last line, and how many lines there are. */
export interface EndMark {
  /** The daybook's id. */
  readonly daybook: string;
  readonly desk: string;
  readonly entries: number;
  readonly endMark: string;
}

/** Appends a line: the file is written whole and renamed in. A tail without its end was never a signature and goes. */
function append(folder: string, mark: SignedMark): void {
  const path = signaturesPath(folder, mark.desk);
  makeFolder(signaturesFolder(folder));
  const there = existsSync(path) ? readFileSync(path, 'utf8') : '';
  writeWhole(path, `${there.slice(0, there.lastIndexOf('\n') + 1)}${canonicalText(mark)}\n`);
}

/**
 * Signs the end mark of this installation's own desk and puts the signature into the daybook's folder, flushed.
 * @param home the installation's state folder, where the key lies and is made on first use
 * @param folder the daybook's folder
 * @param now a moment with offset
 * @returns the signature that stands for this mark now; null for a desk without an entry. Problems: `key-unreadable`, those of the disk.
 */
export function signEndMark(home: string, folder: string, end: EndMark, now: string): Result<SignedMark | null> {
  if (end.entries === 0) return good(null);
  const key = keyOfDesk(home, end.desk);
  if (!key.ok) return key;
  return onDisk(signaturesPath(folder, end.desk), () => {
    const before = readSignatures(folder).get(end.desk)?.lines ?? [];
    const same = before.find(({ mark }) => mark?.end_mark === end.endMark && mark.key === key.value.key)?.mark;
    if (same) return same;
    const { daybook, desk, entries, endMark } = end;
    const said = { format: 1 as const, daybook, desk, entries, end_mark: endMark, signed: now, key: key.value.key };
    const mark = { ...said, signature: sign(null, signedBytes({ ...said, signature: '' }), key.value.secret).toString('base64') };
    append(folder, mark);
    return mark;
  });
}

/** Whether this installation holds the key that the desk signed with before; true where it has signed nothing yet. */
export function holdsKeyOf(home: string, folder: string, desk: string): boolean {
  const before = onDisk(
    folder,
    () =>
      readSignatures(folder)
        .get(desk)
        ?.lines.findLast(({ mark }) => mark !== null)?.mark,
  );
  if (!before.ok || !before.value) return true;
  const key = keyMade(home, desk);
  return key.ok && key.value?.key === before.value.key;
}
