/**
 * What is not accounted for in periods, straight from the movements: what went into the ways of losing it less what came back, without the spills that
 * were weighed. It is the same sum as the account's, taken once for many periods. Nothing is clipped, and shared errors keep their signs.
 */
import { type Measured, RunningTotal } from '../measured.ts';
import type { Book } from './book.ts';
import { inPeriod, type Period } from './period.ts';
import { lossPlace, placeParts } from './places.ts';

const spill = lossPlace('spill');
const lost = (place: string): boolean => place !== spill && placeParts(place).kind === 'loss';

/** Not accounted for in each period, as the book stands now. Micrograms. */
export function unaccountedIn(book: Pick<Book, 'movements'>, periods: readonly Period[]): readonly Measured[] {
  const losses = book.movements.all.filter((m) => lost(m.to) || lost(m.from));
  return periods.map((period) => {
    const sum = new RunningTotal();
    for (const m of losses) {
      if (!inPeriod(m.at, period)) continue;
      if (lost(m.to)) sum.add(m.mercury);
      if (lost(m.from)) sum.add(m.mercury, -1);
    }
    return sum;
  });
}
