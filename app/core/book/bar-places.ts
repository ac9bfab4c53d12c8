/**
 * Where a bar is kept, by the last entry that says so, and only while the bar is here. Who may be told is asked in `may-see.ts`, before this is shown.
 * A transfer, a melt or a stock-take says nothing of it.
 */
import { barsOf } from './bars.ts';
import type { Current, Reading } from './current.ts';
import type { Registers } from './registers.ts';

export interface BarPlace {
  readonly place: string;
  readonly seal: string | null;
  /** From when. */
  readonly from: string;
  readonly reading: Reading<'bar-kept'>;
}

/** The present place of a bar; null where nobody wrote it down since it was poured or came back, or the bar is not here. */
export function placeOfBar(book: { readonly current: Current; readonly registers: Registers }, bar: string): BarPlace | null {
  const found = barsOf(book).all.get(bar);
  if (found?.fate !== 'here') return null;
  const reading = book.current.of('bar-kept').findLast((r) => r.body.bar === bar);
  if (!reading) return null;
  // a bar that left and came back is wherever it was put since
  const back = found.moves.at(-1);
  if (back && back.happened > reading.happened) return null;
  return { place: reading.body.place, seal: reading.body.seal ?? null, from: reading.happened, reading };
}
