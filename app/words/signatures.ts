/** Texts of keys and signatures: what is wrong with one, what a desk signed, and what a signature can and cannot show. */
import { dayText, momentText } from './dates.ts';

type Data = Readonly<Record<string, string | number>>;

/** A fingerprint as it is read aloud: groups of four. */
export const fingerprintText = (fingerprint: string): string => fingerprint.match(/.{1,4}/gu)?.join(' ') ?? '';

const lines = (n: number | string): string => (Number(n) === 1 ? 'line 1' : `lines 1 to ${n}`);

export const signatureProblems: Readonly<Record<string, (data: Data) => string>> = {
  'key-unreadable': (d) =>
    `The key this desk signs with cannot be read (${d.path}), so nothing was signed; no entry is lost. Put the file back from a copy of the program’s own folder. Without it, move the file away: this machine then goes on as a new desk with a new key.`,
  'signature-unreadable': (d) =>
    `Line ${d.line} of signatures/${d.file} is no signature of this form: it was changed, or a newer program wrote it. Compare the file with a backup.`,
  'signature-astray': (d) =>
    `The signature in line ${d.line} of signatures/${d.file} belongs to another desk or another daybook than the file it lies in: it was put there from elsewhere.`,
  'signature-wrong': (d) =>
    `The signature of desk ${d.desk} over ${lines(d.entries ?? 0)} does not hold (line ${d.line} of signatures/${d.file}): the signature, or what it says, was changed after it was made.`,
  'signed-differs': (d) =>
    `Desk ${d.desk} signed another line ${d.entries} than the one that is here: its journal was written anew after it was signed, from there or from before.`,
  'signed-gone': (d) =>
    `Desk ${d.desk} signed ${lines(d.entries ?? 0)}, and its journal has ${d.here} here: the rest was cut off, or has not been delivered yet.`,
  'key-changed': (d) =>
    `Desk ${d.desk} signed up to line ${d.entries} with another key than before. Before: ${fingerprintText(String(d.before))}. Then: ${fingerprintText(String(d.after))}. One desk has one key for all its life: compare both with what is printed on earlier papers.`,
};

export const signatureTexts = {
  doubtful: (desk: string) =>
    `A signature of desk ${desk} does not hold, or its key changed, so no key is printed for it here: run the check before relying on this paper.`,
  /** On a paper, below the end mark. */
  onPaper: (entries: number, key: string) => `signed up to entry ${entries} with the key ${fingerprintText(key)}`,
  /** In `check`. */
  signed: (desk: string, entries: number, of: number, day: string, key: string) =>
    `${desk}  signed ${entries === of ? 'up to its end mark' : `up to line ${entries} of ${of}`} on ${dayText(day)}, key ${fingerprintText(key)}`,
  fault: (what: string) => `FAULT  ${what}`,
  allHold: (n: number) => (n === 1 ? 'The one signature holds.' : `All ${n} signatures hold.`),
  torn: (desk: string) =>
    `The last line of a file of signatures of desk ${desk} is cut off: it was not delivered whole yet, or power failed. It is not counted, and the next signature takes its place.`,
} as const;

/** The page of keys in the room Site. */
export const keysWords = {
  name: 'Keys and signatures',
  says: 'With which key each desk signs its end mark, and how far it has',
  title: 'Keys and signatures',
  note: 'Made by this program, checked by anybody',
  intro:
    'At every closing of a period and before every backup this machine signs its end mark. One signature covers every line before it: whoever writes the journal anew has to sign it anew, and cannot do so without the key.',
  where:
    'The key lies in the program’s own folder of this machine, outside the daybook, and never leaves it. Write the fingerprint down where others keep it, or print any paper: it stands beside the end mark. A new fingerprint for an old desk is a reason to ask.',
  cannot:
    'A signature says that this machine wrote these lines. It does not say who sat there, nor that what was written is so. Whoever has this machine and its folder has the key.',
  verify: 'How to verify a signature without this program',
  desk: 'Desk',
  here: (desk: string) => `${desk} (this machine)`,
  fingerprint: 'Fingerprint of its key (SHA-256)',
  covers: 'Signed up to',
  coversText: (entries: number, of: number) => (entries === of ? `entry ${entries}, its end mark` : `entry ${entries} of ${of}`),
  when: 'On',
  whenText: (moment: string) => momentText(moment),
  notYet: 'nothing signed yet',
  fine: (n: number) => (n === 1 ? 'The one signature in this daybook holds.' : `All ${n} signatures in this daybook hold.`),
  none: 'Nothing in this daybook is signed yet: it is at the next closing or backup.',
  faults: 'What does not hold',
  looking: 'Verifying the signatures …',
} as const;
