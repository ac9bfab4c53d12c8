/**
 * What stayed where it was all through a period, in places where other mercury came or went: of each place the least that stood there at any moment.
 * That much cannot have moved by the book, whatever is poured first. It serves the drawing, which leaves it off; it is never taken out of a sum.
 */
import type { Measured, RunningTotal } from '../measured.ts';
import { minutesOf } from '../time.ts';
import { type Period, wasThere } from './account.ts';
import type { Book } from './book.ts';
import { bookInto, type Movement } from './movements/gathering.ts';
import { inPeriod, isBefore } from './period.ts';
import { isStock, outside } from './places.ts';

const copyOf = ({ ug, parts }: Measured): Measured => ({ ug, parts: new Map(parts) });

/**
 * The least stock of every place over the period, in micrograms with its uncertainty; places that held nothing at some moment are left out. Movements
 * of one moment are one step. What was there before the book and is entered in the period counts from the period's beginning.
 */
export function stayedIn(book: Book, period: Period): ReadonlyMap<string, Measured> {
  const here = wasThere(book);
  const entered = (m: Movement) => m.from === outside && here.has(m.entry) && m.basis !== 'invoice-against-weighed';
  const stocks = new Map<string, RunningTotal>();
  const steps = new Map<number, Movement[]>();
  for (const m of book.movements.all) {
    if (m.from === m.to) continue;
    if (isBefore(m.at, period) || (inPeriod(m.at, period) && entered(m))) bookInto(stocks, m);
    else if (inPeriod(m.at, period)) {
      const minute = minutesOf(m.at) ?? 0;
      const step = steps.get(minute);
      if (step) step.push(m);
      else steps.set(minute, [m]);
    }
  }
  const least = new Map<string, Measured>();
  for (const [place, stock] of stocks) if (isStock(place) && stock.ug > 0) least.set(place, copyOf(stock));
  for (const [, step] of [...steps].sort(([a], [b]) => a - b)) {
    for (const m of step) bookInto(stocks, m);
    for (const place of new Set(step.flatMap(({ from, to }) => [from, to]))) {
      const now = stocks.get(place)?.ug ?? 0;
      if (now >= (least.get(place)?.ug ?? 0)) continue;
      if (now > 0) least.set(place, copyOf(stocks.get(place) ?? { ug: 0, parts: new Map() }));
      else least.delete(place);
    }
  }
  return least;
}
