/** What a walk writes into its daybook beforehand, and what it finds on the disk afterwards. Everything in it is invented. */
import { type Book, readBook } from '../../app/core/book/book.ts';
import type { Draft } from '../../app/core/entry.ts';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import type { WalkedWindow } from './window.ts';

/** The moment so many days before now. */
export const day = (daysAgo: number): string => `${new Date(Date.now() - daysAgo * 86_400_000).toISOString().slice(0, 16)}+00:00`;

/** Makes drafts of one person. */
export const draftsBy =
  (by: string) =>
  (id: string, kind: string, body: Record<string, unknown>, daysAgo: number): Draft => ({
    id,
    happened: day(daysAgo),
    by,
    kind,
    body,
  });

/** The book as it lies on the disk now. */
export function bookOnDisk({ folder }: Pick<WalkedWindow, 'folder'>): Book {
  const read = readDaybook(folder);
  if (!read.ok) throw new Error('the book on the disk cannot be read');
  return readBook(read.value.entries);
}
