/** What a person must know about the record that is open, in plain words: what was found, what it means, what to do. */
import type { Notice } from '../contract.ts';
import { momentText } from './dates.ts';
import { lineCauseText } from './line-causes.ts';

const where = ({ desk, line }: Notice): string =>
  [desk === undefined ? '' : `desk ${desk}`, line === undefined ? '' : `line ${line}`].filter(Boolean).join(', ');

const count = (lines = 0): string => (lines === 1 ? '1 line' : `${lines} lines`);

const texts: Readonly<Record<Notice['code'], (notice: Notice) => string>> = {
  'torn-line': (n) =>
    `The last line of a journal is cut off (${where(n)}): it was not delivered whole yet, or power failed in the middle of writing. Everything before it is whole. See whether the last thing written at that desk comes into the book; if not, write it up again.`,
  'broken-chain': (n) =>
    `The record does not verify (${where(n)}): ${lineCauseText(n.detail ?? '')}. Entries of that desk are shown up to this line, and nothing can be kept. Keep the folder as it is and compare it with a backup.`,
  'newer-format': (n) =>
    `A newer version of this program wrote in this daybook${where(n) === '' ? '' : ` (${where(n)})`}. What can be read is shown, and nothing can be kept: use the newer version.`,
  fork: (n) =>
    `Two different lines carry the same number (${where(n)}), as happens when a backup or a copy of a disk was written on. That desk counts up to the last line both have; what comes after is shown here and neither is chosen. Write up what should count as new entries.`,
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
    `${n.detail ?? 'A file'} holds no line of a journal that can be read and is left out. Look at it before removing it.`,
  'copy-read': (n) =>
    `${n.detail ?? 'A file'} is a copy of a journal (${where(n)}), most likely made by a synchronising program, and was read with it. ${
      (n.lines ?? 0) === 0
        ? 'It holds nothing that is not in another file as well.'
        : `${count(n.lines)} in it ${n.lines === 1 ? 'is' : 'are'} in no other file: keep the copy.`
    }`,
  'copy-damaged': (n) =>
    `A line of the copy ${n.detail ?? ''} does not verify (${where(n)}). The same line is whole in another file, which counts.`,
  'lines-missing': (n) =>
    `Lines of a desk are not here: not delivered yet, or removed (${n.desk === undefined ? '' : `desk ${n.desk}, `}waiting for line ${n.detail ?? n.line ?? '?'}). The lines before them count; later ones count once these are here.`,
  'lines-gone': (n) =>
    `${count(n.lines)} that ${n.lines === 1 ? 'was' : 'were'} here before ${n.lines === 1 ? 'is' : 'are'} gone (from ${where(n)} on): the end of a journal was cut off, or an older copy was put in its place. Look for the newer copy and join it; they come in again from there.`,
  'lines-differ': (n) =>
    `A line is not the one that was here before (${where(n)}): a journal was written anew or replaced. Compare the folder with a backup or with end marks written down elsewhere.`,
  'new-desk': (n) => {
    const why: Readonly<Record<string, string>> = {
      fork: 'two different lines carry the same number in its journal',
      shorter: 'its journal is shorter than it was',
      differs: 'its journal is not the one this machine wrote',
      elsewhere: 'another machine wrote in its journal',
      'state-lost': 'what this machine remembers of this daybook cannot be read',
      'key-lost': 'the key its earlier lines were signed with is not on this machine',
    };
    return `This machine now writes in this daybook as a new desk, because ${why[n.detail ?? ''] ?? 'its journal cannot be gone on with'}${n.desk === undefined ? '' : ` (desk ${n.desk} until now)`}. What the old desk wrote stays as it is; lines of it that turn up later come in as well.`;
  },
  'clock-back': (n) =>
    `The clock of this machine is behind an entry it wrote before (${where(n)}${n.detail === undefined ? '' : `, written ${momentText(n.detail)}`}). Entries are kept in the order they are written; set the clock right.`,
  'not-signed': (n) =>
    `The last closing or backup could not be signed (${where(n)}): ${n.detail === 'key-unreadable' ? 'the key of this desk cannot be read' : n.detail === 'disk-full' ? 'the disk is full' : (n.detail ?? '')}. Nothing that was kept is lost. Put that right; the next closing or backup signs every line before it.`,
};

/** What figures worked out over a desk leave out, on papers, in the account and beside what the command prints. */
export const leftOutTexts = {
  fork: (desk: string, line: number) =>
    `Two different lines carry the number ${line} at desk ${desk}: what is worked out here counts that desk up to line ${line - 1} only, and neither way on from there.`,
  missing: (desk: string, ranges: string, from: number) =>
    `Lines of desk ${desk} are not here, not delivered yet or removed (${ranges}): what is worked out here counts that desk up to line ${from - 1} only, and not what comes later.`,
  torn: (desk: string, line: number) =>
    `The last line of desk ${desk} is cut off (line ${line}): what is worked out here counts that desk up to line ${line - 1} only.`,
  newer: (desk: string, line: number) =>
    `A newer version of this program wrote from line ${line} of desk ${desk} on: what is worked out here counts that desk up to line ${line - 1} only.`,
} as const;

export const noticeText = (notice: Notice): string => texts[notice.code](notice);
