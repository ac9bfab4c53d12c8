/** What an entry tells that is not for everybody, and whether who writes may see it: its page then says so in place of what it says. */
import type { Book } from '../../core/book/book.ts';
import { type Hidden, maySee, rolesAt } from '../../core/book/may-see.ts';
import { withheldOf } from '../../core/book/withheld.ts';
import type { Daybook } from '../../daybook/book.svelte.ts';
import { daybookWords } from '../../words/daybook.ts';

const known = new WeakMap<Book, ReadonlyMap<string, Hidden>>();

function withheldIn(book: Book): ReadonlyMap<string, Hidden> {
  const before = known.get(book);
  if (before) return before;
  const found = withheldOf([...book.current.byId.values()].map((reading) => reading.entry));
  known.set(book, found);
  return found;
}

/** The words in place of an entry that this writer does not see; null where it is shown. */
export function hiddenHere({ book, writer, clock }: Pick<Daybook, 'book' | 'writer' | 'clock'>, id: string): string | null {
  const what = withheldIn(book).get(id);
  return what === undefined || maySee(rolesAt(book.registers, writer, clock.now()), what) ? null : daybookWords.hidden[what];
}
