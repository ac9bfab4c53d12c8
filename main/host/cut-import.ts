/** Whether a journal ends in the middle of an import. Its entries were written together and flushed once, so what is left of it was never answered. */
import type { Entry } from '../../app/core/entry.ts';

/** How many entries stand before an import whose last lines are not there; null where the last import, if any, is whole. */
export function cutImport(entries: readonly Entry[]): number | null {
  const last = entries.at(-1)?.imported;
  if (!last || last.n === last.of) return null;
  const first = entries.length - last.n;
  const own = entries
    .slice(Math.max(first, 0))
    .every(({ imported }, i) => imported?.batch === last.batch && imported.n === i + 1);
  // anything else was not written by an import of this program, and counts as the lines it is
  return first >= 0 && own ? first : null;
}
