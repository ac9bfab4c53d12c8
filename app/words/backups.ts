/** Texts of the pages about backups: where they go, how they are sealed, what was found in one, and the way back. */
import type { BackupDifference, BackupsState } from '../contract.ts';
import { momentText } from './dates.ts';
import { problemText } from './problems.ts';

/** What a file brought to the window is called where something is told of it. */
export const broughtName = 'the chosen file';

/** The folder a restored daybook goes into. */
export const restoredName = (daybook: string, day: string): string => `${daybook} restored ${day}`;

const counted = (n: number, one: string, many: string): string => (n === 1 ? `1 ${one}` : `${n} ${many}`);
const entries = (n: number): string => counted(n, 'entry', 'entries');
const files = (n: number): string => counted(n, 'file', 'files');

/** A size as people read it: kB and MB of a thousand. */
export const sizeText = (bytes: number): string =>
  bytes < 1000 ? `${bytes} bytes` : bytes < 1_000_000 ? `${Math.round(bytes / 1000)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;

const why: Readonly<Record<string, string>> = { daily: 'the day’s own', closing: 'after a closing', asked: 'asked for' };
const steps: Readonly<Record<NonNullable<BackupsState['running']>['what'], string>> = {
  backup: 'A backup is being made',
  look: 'The backup is being read',
  restore: 'The backup is being restored',
  rehearse: 'Restoring is being rehearsed',
};

export const backupWords = {
  name: 'Backups',
  says: 'A copy in a second place, after each closing and once a day; and the way back from one.',
  title: 'Backups',
  intro:
    'After each closing, and once on every day the window is open, the whole folder of this daybook is copied to a second place. A copy counts only when it was read back and its chains fit what is kept here.',
  back: 'Back to Site',
  how: 'How it stands',
  none: 'No backup of this daybook has been made from here.',
  noPlace: 'No place is picked yet, so no backup is made.',
  last: (at: string, reason: string, n: number, bytes: number): string =>
    `Last verified: ${momentText(at)}, ${why[reason] ?? reason}, ${entries(n)}, ${sizeText(bytes)}.`,
  failedAt: (at: string): string => `The backup of ${momentText(at)} failed`,
  failedSays: 'Nothing of the record is lost, and the earlier backups are as they were. It is tried again every few minutes.',
  leftOut: (names: readonly string[]): string =>
    `Left out, because no other machine could take them as they are: ${names.slice(0, 8).join(', ')}${names.length > 8 ? ` and ${names.length - 8} more` : ''}.`,
  rotation: 'An older backup that should have gone is still there.',
  running: (what: NonNullable<BackupsState['running']>['what'], done: number, of: number): string =>
    `${steps[what]} … ${of > 0 ? `${Math.min(100, Math.floor((100 * done) / of))} %` : ''}`.trim(),
  now: 'Make a backup now',
  made: 'The backup was made and verified.',
  readOnly: 'This daybook is open for reading only here: whoever writes it makes its backups.',
  place: {
    title: 'The place',
    is: (path: string): string => `Backups go to ${path}.`,
    gone: 'It is not there now. Put the drive in, or pick another place.',
    sameDisk: 'It lies on the same disk as the daybook: when that disk fails, both are gone. Pick another drive if there is one.',
    offered: 'Places that stand ready',
    sameDiskShort: 'same disk as the daybook',
    pick: 'Use this place',
    picked: 'in use',
    nothing: 'No drive was found and no folder was named.',
    other:
      'A page cannot name a folder. In the desktop window: menu Daybook, “Place for backups…”. In a browser: put a drive in and look again, or start the program with DAYBOOK_BACKUPS=folder.',
    again: 'Look again',
    rule: 'Kept are the ten newest, the last of each of thirty days, and the last of each month for ever. One goes only after a newer one was verified; the one verified last never goes.',
  },
  seal: {
    title: 'Sealing',
    label: 'Backups from now on',
    none: 'Not sealed',
    noneHint: 'Whoever has the drive can read everything.',
    recipient: 'Sealed to a key',
    recipientHint: 'Only the secret key opens them, and it is not on this machine.',
    passphrase: 'Sealed with a passphrase',
    passphraseHint: 'Kept on this machine, so that the day’s backup needs nobody.',
    key: 'Public key to seal to',
    keyHint: 'It begins with age1. The format is open: any program for age files opens the backup with the secret key.',
    newPair: 'Make a new pair of keys',
    pairSays:
      'This is the secret key. It is shown now and kept nowhere: save it, print it, and lay it where neither this machine nor the drive is. Without it a sealed backup cannot be opened by anybody.',
    saveKey: 'Save the secret key as a file',
    keyFile: 'backup-secret-key.txt',
    phrase: 'Passphrase',
    phraseHint: 'Ten characters at least; several words are better. Without it a sealed backup cannot be opened by anybody.',
    phraseAgain: 'The passphrase once more',
    phraseDiffers: 'The two are not the same: type it again.',
    set: 'Seal backups this way',
    done: 'From the next backup on they are made this way. Those that are there stay as they are.',
    says: 'A seal guards the backup where it is carried. It does not guard this machine: who can read this folder can read the daybook, and the passphrase kept beside it. Use the system’s own disk encryption for that.',
  },
  list: {
    title: 'Backups in this place',
    empty: 'None yet.',
    when: 'Made',
    why: 'Why',
    size: 'Size',
    sealed: 'Sealed',
    file: 'File',
    yes: 'yes',
    no: 'no',
    whyOf: (reason: string): string => why[reason] ?? reason,
  },
  rehearse: {
    title: 'Rehearsal',
    says: 'Restores the newest backup aside, looks at every chain, every piece of evidence and every closing in it, says what it found, and removes it again. Nothing here is touched.',
    begin: 'Rehearse restoring the newest backup',
    clean: 'Everything in it fits.',
    found: (n: number): string => (n === 1 ? 'One thing in it does not fit:' : `${n} things in it do not fit:`),
    held: (file: string, n: number, desks: number, evidence: number, closings: number): string =>
      `${file}: ${entries(n)} of ${counted(desks, 'desk', 'desks')}, ${counted(evidence, 'piece', 'pieces')} of evidence, ${files(closings)} of closings. It was restored aside and removed.`,
  },
  restore: {
    title: 'Restore from a backup',
    says: 'A backup is restored into a new folder, as a new desk. Nothing that is there is written over. First the page shows what it holds and what would change.',
    choose: 'Which backup',
    listed: 'One that was found',
    listedHint: 'In the place, or on a drive that stands ready.',
    nothing: 'No backup was found here. Put the drive in and look again, or choose a file.',
    file: 'Or a file',
    fileHint: 'A .tar or .tar.age file, up to 500 MB. A larger one: lay it back into its folder on the drive, and it is found.',
    brought: (name: string): string => `Chosen: ${name}.`,
    phrase: 'Its passphrase',
    key: 'Its secret key',
    keyHint: 'The text of the key file, with AGE-SECRET-KEY-1 in it. It is used here and kept nowhere.',
    look: 'Look into it',
    holds: 'What it holds',
    holdsSays: (name: string, made: string, program: string): string =>
      `“${name}”, made ${momentText(made)} by version ${program} of this program.`,
    counts: (n: number, desks: number, evidence: number, bytes: number): string =>
      `${entries(n)} of ${counted(desks, 'desk', 'desks')}, ${counted(evidence, 'piece', 'pieces')} of evidence, ${sizeText(bytes)} in all. Its chains were verified.`,
    changes: 'Against the open daybook',
    other: (name: string): string => `It is a backup of another daybook than “${name}”, so nothing is compared.`,
    same: 'Both hold the same entries, evidence and closings.',
    desk: 'Desk',
    here: 'Here',
    backup: 'In the backup',
    onlyHere: 'Only here',
    onlyBackup: 'Only in the backup',
    mark: 'End mark here · in the backup',
    filesOf: (what: 'evidence' | 'closings', d: BackupDifference['evidence']): string =>
      `${what === 'evidence' ? 'Evidence' : 'Files of closings'}: ${d.onlyHere} only here, ${d.onlyBackup} only in the backup, ${d.differ} with another content.`,
    lost: (n: number): string =>
      `${n === 1 ? 'One entry' : `${n} entries`} of the open daybook would not be in the restored one. The open one stays where it is, and “daybook join” brings its entries over.`,
    into: (folder: string): string => `It goes into ${folder}.`,
    after:
      'After that go on in one of the two folders only: entries written in both can be joined, but nobody sees the other’s meanwhile.',
    begin: 'Restore into the new folder and open it',
    leave: 'Leave it',
  },
  /** The line of the Today room. */
  today: {
    none: 'No backups are made of this daybook: pick a place for them.',
    failed: (first: string): string => `The last backup failed: ${first}`,
    open: 'Backups',
  },
} as const;

/** The first thing that is wrong with the last backup, in words; null while nothing is. */
export const failureText = ({ failed }: Pick<BackupsState, 'failed'>): string | null =>
  failed === null ? null : failed.problems.map((one) => problemText(one)).join(' ');
