/** Whether a draft can be kept beside the entries that are there: the core's rules, over a book that is read once per state of the record. */
import { type Book, readBook } from '../../app/core/book/book.ts';
import { checkDraft } from '../../app/core/book/rules.ts';
import type { Draft, Entry } from '../../app/core/entry.ts';
import type { Problem } from '../../app/core/result.ts';

const books = new WeakMap<readonly Entry[], Book>();

/** Every reason the draft cannot be kept; none: it can. `entries` is a list nobody changes afterwards; `now` is a moment with offset. */
export function problemsOf(entries: readonly Entry[], draft: Draft, now: string): readonly Problem[] {
  let book = books.get(entries);
  if (!book) {
    book = readBook(entries);
    books.set(entries, book);
  }
  return checkDraft(book, draft, now);
}
