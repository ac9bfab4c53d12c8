/**
 * Gains: more came out, was counted or was made than went in. Mercury does not grow, so every gain is something that was not written down or was
 * weighed wrongly; none is set back to nothing (practice.md 3). A gain within twice its standard uncertainty is none.
 */
import { uOf } from '../../measured.ts';
import { accountOf } from '../account.ts';
import type { Book } from '../book.ts';
import { periodsOf } from '../periods.ts';
import { lossPlace } from '../places.ts';
import { runAt } from '../runs.ts';
import { fromFlags, type OutOfStep, ofEntry } from './item.ts';

const isGain = (ug: number, u: number): boolean => Math.round(ug) > 0 && ug > 2 * u;

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
  ...periodsOf(book).flatMap(({ period, closing }) => {
    const { unaccounted } = accountOf(book, period);
    return isGain(-unaccounted.ug, uOf(unaccounted))
      ? [ofEntry('gains', 'period-gain', closing.id, closing.happened, { ug: -unaccounted.ug, from: period.from ?? '' })]
      : [];
  }),
  ...fromFlags(book, 'gains', ['out-over-in', 'bars-over-melt', 'sponge-over-charge', 'vessel-empty']),
  ...fromFlags(book, 'gains', ['lot-drift'], ({ data }) => Number(data.ug) > 0),
];
