/** What the host can say is wrong, in plain words: the disk, the record, the daybook that is open, and how it was asked. */
import { lineCauseText } from './line-causes.ts';
import { closingHostProblems } from './problems-closing.ts';
import { lockProblems } from './screens-lock.ts';
import { signatureProblems } from './signatures.ts';

type Data = Readonly<Record<string, string | number>>;
type Texts = Readonly<Record<string, (data: Data) => string>>;

const nothingWritten = 'Nothing was written.';

const disk: Texts = {
  'disk-full': (d) =>
    `The disk is full, or the space allowed on it is used up (${d.path}). ${nothingWritten} Make room and try again.`,
  'no-permission': (d) =>
    `This program may not write at ${d.path}. ${nothingWritten} Ask whoever looks after the machine, or move the daybook to a folder of your own.`,
  'file-gone': (d) =>
    `${d.path} is not there. See whether the folder was moved or the drive taken out, then open the daybook again.`,
  'not-a-folder': (d) => `A folder is needed at ${d.path}, and something else stands there: choose another place.`,
  'not-a-file': (d) => `A plain file is needed at ${d.path}, and something else stands there: look at it before going on.`,
  'already-there': (d) => `${d.path} is there already and is not written over: choose another name.`,
  'too-many-open': () => 'The machine has too many files open just now: close other programs and try again.',
  'disk-error': (d) =>
    `The disk answered with an error (${d.detail}) at ${d.path}. ${nothingWritten} Check the drive and its cable before keeping more.`,
};

const record: Texts = {
  'chain-broken': (d) =>
    `The record does not verify: desk ${d.desk}, line ${d.line}: ${lineCauseText(String(d.cause))}. It opens for reading only. Keep this folder as it is, and compare it with a backup.`,
  'newer-format': (d) =>
    `A newer version of this program wrote in this daybook (format ${d.format}). It opens for reading only here: use the newer version.`,
  'journal-changed': (d) =>
    `Something else changed ${d.path} while it was open here. ${nothingWritten} Close the daybook and open it again, so that it is verified.`,
  'journal-unsure': (d) =>
    `A write to ${d.path} failed and could not be taken back for certain. Nothing more is kept until the daybook is closed, opened and so verified again.`,
  'journal-closed': () => `The daybook was closed before this could be kept. ${nothingWritten} Open it again.`,
  'join-broken': (d) =>
    `The record in ${d.path} does not verify: desk ${d.desk}, line ${d.line}: ${lineCauseText(String(d.cause))}. ${nothingWritten} Keep both folders as they are, and compare with a backup.`,
  'join-itself': (d) => `${d.path} is this daybook itself: name the other folder.`,
  'join-other-daybook': (d) =>
    `${d.path} holds another daybook (“${d.other}”, id ${d.otherId}) than this one (“${d.name}”, id ${d.id}), and two daybooks are never put into one. ${nothingWritten}`,
  'folder-not-empty': (d) =>
    `There is something in ${d.path} already, and a new daybook needs an empty folder: choose another name.`,
  'not-a-daybook': (d) => `There is no daybook in ${d.path}: choose the folder that holds daybook.json, or make a new one.`,
  'daybook-unreadable': (d) =>
    `${d.path} cannot be read as a daybook’s title page. Its journals are untouched: put the file back from a backup.`,
};

const open: Texts = {
  'elsewhere-open': (d) =>
    `This daybook is open for writing in another window of this program (process ${d.pid} on ${d.host}). Close it there, then open it here again.`,
  'lock-contended': (d) =>
    `Another window is opening this daybook at the same moment (${d.path}): wait a little and open it again.`,
  'desk-unreadable': (d) =>
    `${d.path}, which says which desk this installation is, cannot be read. Put it back from a backup; or move it away, and this installation becomes a new desk.`,
  'no-daybook-open': () => 'No daybook is open: open one, or make a new one.',
  'unknown-recent': () => 'This daybook is not on the list of recent ones any more: open it by its folder.',
  'recent-missing': (d) => `The daybook is no longer at ${d.path}: put the folder or drive back, or open it where it is now.`,
  'no-folder-name': () => 'No folder can be named after this: use some letters or digits.',
  'not-writable': () => 'This daybook is open for reading only, so nothing can be kept in it.',
};

const evidence: Texts = {
  'evidence-kind': () =>
    'Only pictures (PNG, JPEG) and PDF documents are kept as evidence, judged by their content: save it as one of these.',
  'evidence-missing': (d) => `The evidence file ${d.file} is not in this daybook: add the file first, then keep the entry.`,
  'evidence-changed': (d) =>
    `The evidence file ${d.file} is not what it was when it was kept, so it is not shown. Compare it with a backup.`,
};

const asking: Texts = {
  'not-json': () => 'What was sent is not readable as JSON text.',
  'body-type': (d) => `What was sent must be marked as ${d.wanted}.`,
  'body-too-large': (d) => `This is larger than is taken at once (${Number(d.most) / 1_000_000} MB): make it smaller.`,
  'body-cut': () => `What was sent broke off before its end. ${nothingWritten} Try again.`,
  'foreign-origin': () => 'The question did not come from the daybook’s own window and was not answered.',
  'no-session': () => 'This window is no longer let in: start the program again and use the new address it prints.',
  'no-such-question': () => 'The program was asked something it does not know: close the window and open it again.',
  'host-failed': (d) =>
    `Something went wrong inside the program (${d.detail}). What was kept before is on disk. Try again; if it happens again, start the program again.`,
  'host-closed': () => 'The program is closing and takes nothing more.',
  'port-taken': (d) => `Port ${d.port} is in use on this machine or not allowed: leave the port out, or choose another.`,
};

export const hostProblems: Texts = {
  ...disk,
  ...record,
  ...open,
  ...evidence,
  ...closingHostProblems,
  ...signatureProblems,
  ...lockProblems,
  ...asking,
};
