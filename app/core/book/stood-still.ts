/**
 * What stood still in a period: places whose stock nothing was put to and nothing was taken from while it lasted, as sealed and untouched flasks are.
 * A drawing to scale leaves them off, or they would be nearly all of it. What stood there before the book and was entered in the period did not move
 * by that. A place with less than nothing in it is never counted here: it has to be seen.
 */
import { type Measured, RunningTotal } from '../measured.ts';
import { type Period, wasThere } from './account.ts';
import type { Book } from './book.ts';
import { type Movement, stocksAt } from './movements/gathering.ts';
import { inPeriod } from './period.ts';
import { isStock, outside } from './places.ts';

export interface StoodStill {
  readonly place: string;
  /** As it stands at the end of the period, and stood at its beginning. */
  readonly mercury: Measured;
  /** What it came by, oldest first. */
  readonly movements: readonly Movement[];
}

/** Places that stood still in the period, by their names, with what is in them. */
export function stoodStill(book: Book, period: Period): ReadonlyMap<string, StoodStill> {
  const { all } = book.movements;
  const here = wasThere(book);
  const entered = (m: Movement) => m.from === outside && here.has(m.entry) && m.basis !== 'invoice-against-weighed';
  const touched = new Set<string>();
  for (const m of all) {
    if (m.from === m.to || m.mercury.ug === 0 || !inPeriod(m.at, period) || entered(m)) continue;
    touched.add(m.from);
    touched.add(m.to);
  }
  const still = new Map<string, StoodStill & { readonly movements: Movement[] }>();
  for (const [place, mercury] of stocksAt(all, period.to))
    if (isStock(place) && mercury.ug > 0 && !touched.has(place)) still.set(place, { place, mercury, movements: [] });
  for (const m of all)
    if (m.from !== m.to && m.mercury.ug !== 0) for (const place of [m.from, m.to]) still.get(place)?.movements.push(m);
  return still;
}

/** All of it together. */
export const allOf = (still: Iterable<StoodStill>): Measured => {
  const sum = new RunningTotal();
  for (const { mercury } of still) sum.add(mercury);
  return { ug: sum.ug, parts: sum.parts };
};
