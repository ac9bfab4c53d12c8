/** Whether a draft can be kept beside the entries that are there: the core's rules, over a book that grows with the record. */
import { GrowingBook } from '../../app/core/book/growing-book.ts';
import { checkDraft } from '../../app/core/book/rules.ts';
import type { Draft, Entry } from '../../app/core/entry.ts';
import type { Problem } from '../../app/core/result.ts';

const books = new WeakMap<readonly Entry[], GrowingBook>();

/** Every reason the draft cannot be kept; none: it can. `entries` is a list nobody changes afterwards; `now` is a moment with offset. */
export function problemsOf(entries: readonly Entry[], draft: Draft, now: string): readonly Problem[] {
  let growing = books.get(entries);
  if (!growing) {
    growing = new GrowingBook(entries);
    books.set(entries, growing);
  }
  return checkDraft(growing.book, draft, now);
}

/** Tells that `after` is `before` with one entry more, so that what was worked out of the one serves the other. `before` is not asked again. */
export function carriedOver(before: readonly Entry[], after: readonly Entry[], entry: Entry): void {
  const growing = books.get(before);
  if (!growing) return;
  books.delete(before);
  growing.add(entry, after);
  books.set(after, growing);
}
