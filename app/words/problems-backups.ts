/** What can be wrong with a backup, its place, its seal, or a file that somebody wants restored. */
import { lineCauseText } from './line-causes.ts';
import type { ProblemTexts } from './problems.ts';

const kept = 'Nothing of the record is lost, and the earlier backups are as they were.';
const mb = (bytes: unknown): string => `${(Number(bytes) / 1_000_000).toFixed(1)} MB`;
const hostile: Readonly<Record<string, string>> = {
  link: 'is a link',
  kind: 'is no plain file',
  path: 'is not among the files it says it holds',
  size: 'has another size than it says',
  twice: 'stands in it twice',
};

export const backupProblems: ProblemTexts = {
  'backup-no-place': () => 'No place for backups is picked yet: pick one on the page Backups.',
  'backup-place-unknown': () => 'This place does not stand ready any more: look again and pick another.',
  'backup-place-missing': (d) =>
    `The place for backups is not there (${d.path}). ${kept} Put the drive in, or pick another place.`,
  'backup-place-inside': (d) =>
    `${d.path} lies inside the daybook’s own folder, so a copy there would go with it: pick a place outside.`,
  'backup-place-full': (d) =>
    `The place for backups is full (${d.path})${d.need === undefined ? '' : `: ${mb(d.need)} are needed and ${mb(d.free)} are free`}. ${kept} Make room there, or pick another place.`,
  'backup-place-read-only': (d) =>
    `This program may not write at the place for backups (${d.path}). ${kept} See whether the drive is locked, or pick another place.`,
  'backup-place-lost': (d) =>
    `The place for backups stopped answering (${d.path}, ${d.detail}). ${kept} See whether the drive was pulled out.`,
  'backup-source': (d) =>
    `A file of the daybook could not be read for the backup (${d.path}, ${d.detail}). ${kept} See whether its disk is sound.`,
  'backup-changed-meanwhile': () => `A file of the daybook changed while it was copied. ${kept} It is tried again by itself.`,
  'backup-not-read-back': (d) =>
    `The backup did not read back as it was written (${d.cause}), so it was thrown away. ${kept} The drive may be failing: try another one.`,
  'backup-chain': (d) =>
    `The record itself does not verify (desk ${d.desk}, line ${d.line}: ${lineCauseText(String(d.cause))}), so no backup takes the place of the earlier ones. Keep those, and compare.`,
  'backup-none': () => 'No backup lies in the place: make one first.',
  'backup-gone': () => 'This backup is not there any more: look again.',
  'backup-not-ours': (d) =>
    `${d.file} is not a backup that this program made, and nothing was taken from it: choose another file.`,
  'backup-newer': (d) => `${d.file} was made by a newer version of this program: restore it with that one.`,
  'backup-damaged': (d) =>
    `${d.file} is damaged (${d.where === 'seal' ? 'its seal does not close' : d.where}), so nothing was taken from it: choose another backup.`,
  'backup-hostile': (d) =>
    `${d.file} holds something no backup of this program holds: “${d.name}” ${hostile[String(d.what)] ?? 'does not belong there'}. Nothing was taken from it.`,
  'backup-armored': (d) =>
    `${d.file} is written out as text: turn it back into a plain age file first (age -d, then seal it again without -a), or open it with age itself.`,
  'backup-needs-passphrase': () => 'This backup is sealed with a passphrase: type it.',
  'backup-needs-key': () => 'This backup is sealed to a key: give the secret key.',
  'backup-wrong-key': (d) =>
    d.how === 'key'
      ? 'This secret key does not open the backup: give another.'
      : 'This passphrase does not open the backup: type it again.',
  'backup-recipient': () =>
    'This is not a public key of the kind that backups are sealed to (62 characters, beginning with age1): copy it again, whole.',
  'backup-identity': () => 'There is no secret key in this text (it begins with AGE-SECRET-KEY-1): copy it again, whole.',
  'backup-passphrase-short': (d) => `This passphrase is too short to guard anything: take ${d.least} characters at least.`,
  'backup-look-gone': () => 'The backup was looked into too long ago: look into it again, then restore it.',
  'backup-changed': (d) => `${d.file} is not what it was when it was looked into, and nothing was restored: look into it again.`,
  'backup-mark': (d) => `The end mark of desk ${d.desk} at ${d.entries} entries, where the backup was made, is not in its chain.`,
  'backup-failed': (d) => `The work on the backup ended before it was done (${d.detail}). ${kept} Try again.`,
  'evidence-gone': (d) => `The evidence file ${d.file} is named by an entry and is not there.`,
};
