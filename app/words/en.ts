/** Texts that many pages share. What belongs to one room stands in `screens-<room>.ts`, names of answers in `labels.ts`. */
import { momentText } from './dates.ts';

export const en = {
  program: 'Retort Daybook',
  keep: 'Keep',
  keeping: 'Keeping …',
  cancel: 'Cancel',
  /** After an entry is on the disk. */
  kept: (n: number, endMark: string) => `Kept · entry ${n} · end mark ${endMark.slice(0, 4)}…`,
  keptHint: 'Kept means that the line is on the disk.',
  another: 'Write another',
  toBeKept: 'To be kept',
  writtenBy: (name: string) => `written by ${name}`,
  nobody: 'nobody named',
  themselves: 'that person',
  whoWrites: 'Who is writing this?',
  takenUp: (moment: string) => `Taken up again from the draft of ${momentText(moment)}.`,
  startAfresh: 'Throw the draft away',
  startAfreshAsk: 'Throw this draft away?',
  startAfreshSays: 'What was typed here goes. Entries that were kept stay.',
  unreadTitle: 'A draft of this form could not be read',
  unreadSays: (moment: string) =>
    `It is damaged, or another version of this program left it${moment === '' ? '' : ` (last touched ${momentText(moment)})`}. It is kept as it is, and nothing is written over it; this form begins empty.`,
  unreadHolds: 'What the draft holds',
  unreadDrop: 'Throw that draft away',
  draftLost: 'The draft cannot be saved just now: what is typed lives in this window only until it is kept.',
  draftSafe: 'What is typed is saved as a draft at once.',
  notYet: (n: number) => (n === 1 ? 'One thing is not right yet.' : `${n} things are not right yet.`),
  notYetHint: (n: number) => `${n === 1 ? 'It is told at its field.' : 'Each is told at its field.'} Nothing was kept.`,
  /** Something that belongs to no field stands in the way. */
  notKept: 'Nothing was kept.',
  when: 'When',
  particulars: 'Further particulars',
  witness: 'Seen by',
  formNumber: 'Paper form, number',
  formPage: 'Page of the form',
  transcribedBook: 'Copied from an older book: which',
  transcribedPage: 'Page of that book',
  notRecorded: 'not recorded',
} as const;
