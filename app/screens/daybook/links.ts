/**
 * Which entries name which: worked out once for a book by reading every id in every body. An entry that names a part of another (a lot, by
 * "<entry>/<key>") names that other. Nothing here decides anything; it is for finding one's way.
 */
import type { Book } from '../../core/book/book.ts';
import type { Reading } from '../../core/book/current.ts';
import type { Entry } from '../../core/entry.ts';
import type { Body } from '../../core/kinds/index.ts';

const indexes = new WeakMap<Book, ReadonlyMap<string, readonly string[]>>();

function idsIn(value: unknown, known: ReadonlySet<string>, found: Set<string>): void {
  if (typeof value === 'string') {
    // prose is long and never an id
    if (value.length > 500) return;
    const head = value.split('/', 1)[0] ?? '';
    if (known.has(head)) found.add(head);
  } else if (Array.isArray(value)) for (const item of value) idsIn(item, known, found);
  else if (value !== null && typeof value === 'object') for (const item of Object.values(value)) idsIn(item, known, found);
}

/** For every entry the ids of the entries whose bodies, as first written or as they read now, name it. In the order of the book. */
export function namedBy(book: Book): ReadonlyMap<string, readonly string[]> {
  const before = indexes.get(book);
  if (before) return before;
  const known = new Set(book.entries.map((e) => e.id));
  const index = new Map<string, string[]>();
  for (const entry of book.entries) {
    const found = new Set<string>();
    idsIn(entry.body, known, found);
    found.delete(entry.id);
    for (const id of found) {
      const list = index.get(id);
      if (list) list.push(entry.id);
      else index.set(id, [entry.id]);
    }
  }
  indexes.set(book, index);
  return index;
}

/** An entry of the book by its id, whatever its kind. */
export const entryOf = (book: Book, id: string): Entry | undefined =>
  book.current.byId.get(id)?.entry ?? book.current.notUnderstood.find((e) => e.id === id);

/** The reading a correction is about in the end; the reading itself when it is no correction. Undefined when the trail breaks. */
export function rootReading(book: Book, reading: Reading): Reading | undefined {
  const seen = new Set<string>();
  let at: Reading | undefined = reading;
  while (at?.kind === 'correction') {
    if (seen.has(at.id)) return undefined;
    seen.add(at.id);
    at = book.current.byId.get((at.body as Body<'correction'>).corrects);
  }
  return at;
}

/** All corrections of a reading, struck ones too, oldest first. */
export function allCorrections(book: Book, root: Reading): readonly Reading<'correction'>[] {
  const index = namedBy(book);
  const found = new Set<string>();
  const follow = (id: string): void => {
    for (const by of index.get(id) ?? []) {
      const reading = book.current.byId.get(by);
      if (reading?.kind !== 'correction' || found.has(by)) continue;
      if ((reading.body as Body<'correction'>).corrects !== id) continue;
      found.add(by);
      follow(by);
    }
  };
  follow(root.id);
  return [...book.current.byId.values()].filter((r): r is Reading<'correction'> => found.has(r.id));
}

/** The entries before and after this one on its desk. */
export function neighbours(book: Book, entry: Entry): { readonly before: Entry | undefined; readonly after: Entry | undefined } {
  const on = book.entries.filter((e) => e.desk === entry.desk && (e.n === entry.n - 1 || e.n === entry.n + 1));
  return { before: on.find((e) => e.n < entry.n), after: on.find((e) => e.n > entry.n) };
}
