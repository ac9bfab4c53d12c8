/** What things and people are called on a paper: by the register, as it stood at the time. An id that is not in the book is shown as one. */
import type { Book } from '../core/book/book.ts';
import { nameOf, type Registered, stateAt } from '../core/book/registers.ts';
import type { RegisterKind } from '../core/kinds/index.ts';
import { runSheet } from '../words/papers.ts';

export function thingName(book: Book, kind: RegisterKind, id: string, moment: string): string {
  const thing = book.registers[kind].get(id) as Registered<RegisterKind> | undefined;
  return thing ? nameOf(stateAt(thing, moment).body as { label?: string; name?: string }) : runSheet.unknownThing(id);
}

/** Who wrote or saw something; nobody where the entry names nobody. */
export const personName = (book: Book, id: string | null, moment: string): string =>
  id === null ? runSheet.nobody : thingName(book, 'person', id, moment);
