/** The names of error sources, taken apart: which entry a source comes from, and which reading there. A value's contributions are named where they arise. */
import type { Book } from './book.ts';

/** What stands before the entry in a source's name. A reading's own scatter has nothing before it. */
const prefixes = ['scale:', 'lot share:', 'share:', 'residual:', 'usual ratio:', 'allotment:', 'estimate:', 'ore:'] as const;

/** The entry that a source comes from, and what stands behind it in the name (a path for a reading); null for one that no entry made. */
export function entryOfSource(
  book: Pick<Book, 'current'>,
  source: string,
): { readonly entry: string; readonly path: string } | null {
  const prefix = prefixes.find((p) => source.startsWith(p));
  const rest = prefix === undefined ? source : source.slice(prefix.length);
  const [head = '', ...behind] = rest.split(':');
  const [entry = ''] = head.split('/');
  return book.current.byId.has(entry) ? { entry, path: prefix === undefined ? behind.join(':') : '' } : null;
}
