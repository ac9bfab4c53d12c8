/**
 * Gains: more came out, was counted or was made than went in. Mercury does not grow, so every gain is something that was not written down or was
 * weighed wrongly; none is set back to nothing (practice.md 3). A gain within twice its standard uncertainty is none.
 */
import { RunningTotal, uOf } from '../../measured.ts';
import { compareMoments } from '../../time.ts';
import type { Book } from '../book.ts';
import { periodsOf } from '../periods.ts';
import { foundPlace, isStock, lossPlace, outside } from '../places.ts';
import { runAt } from '../runs.ts';
import { fromFlags, type OutOfStep, ofEntry } from './item.ts';

const isGain = (ug: number, u: number): boolean => Math.round(ug) > 0 && ug > 2 * u;

const spill = lossPlace('spill');
/** A way of losing that no weighing pins down: what lies there at the end of a period is what its account misses. */
const isMissing = (place: string): boolean => !isStock(place) && place !== outside && place !== foundPlace && place !== spill;

/** Periods that close with more than came in: all of them in one walk through the movements, for a long book has many. */
function periodGains(book: Book): OutOfStep[] {
  const { all } = book.movements;
  let at = 0;
  return periodsOf(book).flatMap(({ period, closing }) => {
    const missing = new RunningTotal();
    for (let m = all[at]; m && compareMoments(m.at, closing.happened) <= 0; m = all[++at]) {
      if (isMissing(m.to)) missing.add(m.mercury);
      if (isMissing(m.from)) missing.add(m.mercury, -1);
    }
    return isGain(-missing.ug, uOf(missing))
      ? [ofEntry('gains', 'period-gain', closing.id, closing.happened, { ug: -missing.ug, from: period.from ?? '' })]
      : [];
  });
}

export const gainsOutOfStep = (book: Book): OutOfStep[] => [
  ...book.runs.flatMap((run) =>
    run.awaits.length === 0 && run.last?.figures?.findings.includes('more-out-than-in')
      ? [ofEntry('gains', 'run-gain', run.last.firing.id, runAt(run), { ug: run.last.gap ? -run.last.gap.net.ug : 0 })]
      : [],
  ),
  ...book.movements.all.flatMap((m) => {
    const reading = book.current.byId.get(m.entry);
    const byCount = m.basis === 'counted' && m.from === lossPlace('unaccounted') && reading?.kind === 'stock-take';
    return byCount && isGain(m.mercury.ug, uOf(m.mercury))
      ? [ofEntry('gains', 'count-gain', m.entry, m.at, { place: m.to, ug: m.mercury.ug })]
      : [];
  }),
  ...periodGains(book),
  ...fromFlags(book, 'gains', ['out-over-in', 'bars-over-melt', 'sponge-over-charge', 'vessel-empty']),
  ...fromFlags(book, 'gains', ['lot-drift'], ({ data }) => Number(data.ug) > 0),
];
