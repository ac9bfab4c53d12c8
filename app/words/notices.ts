/** What a person must know about the record that is open, in plain words: what was found, what it means, what to do. */
import type { Notice } from '../contract.ts';
import { lineCauseText } from './line-causes.ts';

const where = ({ desk, line }: Notice): string =>
  [desk === undefined ? '' : `desk ${desk}`, line === undefined ? '' : `line ${line}`].filter(Boolean).join(', ');

const texts: Readonly<Record<Notice['code'], (notice: Notice) => string>> = {
  'torn-line': (n) =>
    `The last line of a journal was cut off (${where(n)}), as happens when power fails in the middle of writing. Everything before it is whole. See whether the last thing written at that desk is in the book; if not, write it up again.`,
  'broken-chain': (n) =>
    `The record does not verify (${where(n)}): ${lineCauseText(n.detail ?? '')}. Entries of that desk are shown up to this line, and nothing can be kept. Keep the folder as it is and compare it with a backup.`,
  'newer-format': (n) =>
    `A newer version of this program wrote in this daybook${where(n) === '' ? '' : ` (${where(n)})`}. What can be read is shown, and nothing can be kept: use the newer version.`,
  fork: (n) =>
    `Two different lines carry the same number (${where(n)}), as happens when a backup was written on. That desk is shown up to the last line both have, and neither is chosen.`,
  'not-writable': (n) => {
    const why: Readonly<Record<string, string>> = {
      'no-permission': ' This program may not write in its folder.',
      'disk-full': ' The disk is full.',
    };
    return `This daybook is open for reading only.${why[n.detail ?? ''] ?? (n.detail ? ` The reason: ${n.detail}.` : '')}`;
  },
  'elsewhere-open': (n) => {
    const [pid = '?', host = '?'] = (n.detail ?? '').split(' ');
    return `Another window of this program has this daybook open for writing (process ${pid} on ${host}). It is open for reading only here: close it there, then open it here again.`;
  },
  'conflict-copy': (n) =>
    `${n.detail ?? 'A file'} is not a journal of this daybook and is left out, most likely a copy that a synchronising program made. Compare it with the journal before removing it: it may hold lines the journal lacks.`,
};

export const noticeText = (notice: Notice): string => texts[notice.code](notice);
