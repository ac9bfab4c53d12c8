/** The marks of an entry: what a reader of the daybook has to know about it before its sentence is believed. */
import type { Book } from '../../core/book/book.ts';
import type { Reading } from '../../core/book/current.ts';
import { reservations } from '../../core/book/flags.ts';
import type { Entry } from '../../core/entry.ts';
import { daybookWords } from '../../words/daybook.ts';

export interface Mark {
  readonly text: string;
  readonly tone: 'fault' | 'warm' | 'cool' | 'plain';
}

const { marks: words } = daybookWords;

/** Its marks, the gravest first. `reading` is null for a kind not understood here. */
export function marksOf(book: Book, entry: Entry, reading: Reading | null): readonly Mark[] {
  const marks: Mark[] = [];
  if (!reading) marks.push({ text: words.notUnderstood, tone: 'warm' });
  if (reading?.struck) marks.push({ text: words.struck, tone: 'fault' });
  if (reading?.contested) marks.push({ text: words.contested, tone: 'fault' });
  if (reading && reading.corrections.length > 0) marks.push({ text: words.corrected(reading.corrections.length), tone: 'cool' });
  const flags = (book.flags.get(entry.id) ?? []).filter((f) => f.code !== 'contested');
  const grave = flags.some((f) => reservations.has(f.code));
  if (flags.length > 0 && !reading?.struck)
    marks.push({ text: `${grave ? `${words.reservation}, ` : ''}${words.flags(flags.length)}`, tone: grave ? 'fault' : 'warm' });
  if (entry.transcribed) marks.push({ text: words.transcribed, tone: 'plain' });
  if (entry.evidence && entry.evidence.length > 0) marks.push({ text: words.evidence(entry.evidence.length), tone: 'plain' });
  return marks;
}

/** A mark that asks for a look: anything but where it came from and what lies beside it. */
export const wantsALook = (marks: readonly Mark[]): boolean => marks.some((m) => m.tone !== 'plain');
