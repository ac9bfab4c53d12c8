/** Who wrote an entry, and when, in words. */

import type { Book } from '../../core/book/book.ts';
import { nameOf, stateAt } from '../../core/book/registers.ts';
import type { Entry } from '../../core/entry.ts';
import { momentText } from '../../words/dates.ts';
import { retortRun } from '../../words/retort-run.ts';

/** What a person was called then; "nobody named" where the entry names none. */
export function personName(book: Book, id: string | null, at: string): string {
  const person = id === null ? undefined : book.registers.person.get(id);
  return person ? stateAt(person, at).body.name : retortRun.nobody;
}

/** "written by Keeper, 14 March 2026, 17:02". */
export const writtenBy = (book: Book, entry: Entry): string =>
  retortRun.writtenBy(personName(book, entry.by, entry.written), momentText(entry.written));

/** Puts the name of a registered thing or a lot in the place of its id; a moment as people read it; anything else as it is. */
export function toldValue(book: Book, text: string): string {
  const lot = book.lots.all.get(text);
  if (lot) return lot.label;
  for (const register of [book.registers.scale, book.registers.vessel, book.registers.retort, book.registers.person]) {
    const last = register.get(text)?.states.at(-1);
    if (last) return nameOf(last.body as { label?: string; name?: string });
  }
  return /^\d{4}-\d{2}-\d{2}T/.test(text) ? momentText(text) : text;
}
