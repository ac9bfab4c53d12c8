/** Why a period cannot be closed as asked, and what a closing that no longer agrees says. A closing is a statement, nothing more: it judges nobody. */
import { decimalFromText } from '../core/decimal.ts';
import { dayText } from './dates.ts';
import { massText } from './figures.ts';

type Data = Readonly<Record<string, string | number>>;
type Texts = Readonly<Record<string, (data: Data) => string>>;

const closed = (d: Data): string => `The closing of the period to ${dayText(String(d.to))}, version ${d.version}`;

/** What differs, as the host wrote it: grams, thousands apart by narrow spaces. */
const differs = ({ g }: Data): string => {
  const grams = decimalFromText(String(g).replaceAll('\u202f', ''));
  return grams ? massText(grams, grams.places) : `${g}\u00a0g`;
};

export const closingProblems: Texts = {
  'not-grams': () => 'This is not an exact amount of grams with six decimals: close the period from its page instead.',
  'closing-no-count': () =>
    'A period ends, and begins, with a stock-take of the whole site: count every place first, then close the period.',
  'closing-reversed': () => 'The stock-take it should begin after is not earlier than the one it ends with: pick the two again.',
  'closing-overlaps': (d) =>
    `A part of this period is closed already (to ${dayText(String(d.to))}, version ${d.version}): issue the next version of that closing, or pick the period after it.`,
  'closing-version': (d) => `The next version here is ${d.wanted}, not ${d.version}: look at the list of closings again.`,
  'closing-replaced': () => 'A later version of this closing has been issued: issue the next version of that one.',
  'closing-corrected': () =>
    'A closing is not corrected, because what was issued stays as it was issued: issue its next version and say why.',
  'closing-why': () => 'A next version says why it is issued: write it into the remark.',
  'mark-unknown': (d) =>
    `The end mark given for desk ${d.desk} at entry ${d.entries} is not one of this book: read the book again, then close.`,
  'mark-twice': (d) => `Desk ${d.desk} stands here twice: each desk has one end mark.`,
  'mark-too-early': (d) =>
    `The end marks stop before the stock-take (desk ${d.desk}), so the closing would rest on a count it does not hold.`,
};

/** What the host says when it closes a period, and what `check` finds. */
export const closingHostProblems: Texts = {
  'closing-by-itself': () =>
    'A closing is kept together with its statement and its paper: close the period from its page in the room Mercury.',
  'no-such-closing': () => 'No closing of this number is on the book: look at the list of closings again.',
  'closing-empty': () => 'There is nothing on the book yet that could be closed.',
  'closing-strange': (d) =>
    `A newer program wrote an entry of the kind “${d.kind}”, which may have moved mercury: close the period with that program.`,
  'closing-gone': (d) =>
    `${closed(d)}, has lost its ${d.what === 'paper' ? 'paper (PDF)' : 'statement (JSON)'}, which belongs in the folder “closings”: put it back from a backup.`,
  'closing-changed': (d) =>
    `${closed(d)}: the file ${d.file} is not the one that was issued. Keep it as it is and compare it with a backup or with the signed paper.`,
  'closing-cut': (d) =>
    `${closed(d)}, rests on entry ${d.entries} of desk ${d.desk}, and the journal no longer has it with that end mark: its tail was cut off or written anew. Compare the folder with a backup.`,
  'closing-disagrees': (d) =>
    `${closed(d)}, no longer agrees with the entries it rests on (${d.lines}; it was made by version ${d.program} of this program).`,
  'closing-unsaid': (d) =>
    `The statement ${d.file} rests on entry ${d.entries} of desk ${d.desk}, which the journal no longer has with that end mark: its tail was cut off or written anew. Compare the folder with a backup.`,
};

const steps = (d: Data): string => (d.steps === '' ? '' : ` (${d.steps})`);
const where = 'It stands as an adjustment in the period after it until its next version is issued';

/** Notices of `check` about closings: nothing is wrong with the record, and a person should know. */
const closingNotices: Texts = {
  adjusted: (d) =>
    `${closed(d)}, was touched by later entries${steps(d)}: on today’s knowledge ${differs(d)} less is not accounted for than it says. ${where}.`,
  'adjusted-more': (d) =>
    `${closed(d)}, was touched by later entries${steps(d)}: on today’s knowledge ${differs(d)} more is not accounted for than it says. ${where}.`,
  'adjusted-lines': (d) =>
    `${closed(d)}, was touched by later entries${steps(d)}: other lines of it read differently now, and as much is not accounted for as it says.`,
  orphan: (d) =>
    `${d.file} in the folder “closings” belongs to no closing on this book: the closing could not be kept, or its entry is not here yet.`,
  struck: (d) => `${closed(d)}, was struck: its files are kept, and its period counts as not closed.`,
  unread: (d) => `${d.file} in the folder “closings” is no statement that this program can read, and was not looked at.`,
  twice: (d) => `${closed(d)}, overlaps another closing, as happens when two desks close one period apart: both are kept.`,
};

export const closingNotice = (code: string, data: Data): string => closingNotices[code]?.(data) ?? code;
