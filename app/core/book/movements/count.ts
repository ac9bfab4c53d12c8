/**
 * Stock-takes: what a count finds in a place against what the book says. The first time a place is counted with nothing booked in it, what is found
 * was there before the book; after that the difference is unaccounted for. A seal that stands changes nothing.
 */
import { less } from '../../measured.ts';
import { compareMoments } from '../../time.ts';
import { lossPlace, outside, placeParts } from '../places.ts';
import { estimated } from './estimates.ts';
import { type Gathering, type Movement, stocksAt } from './gathering.ts';

export function countMovements(g: Gathering): void {
  const counts = [...g.current.of('stock-take')].sort((a, b) => compareMoments(a.happened, b.happened));
  for (const reading of counts) {
    const stocks = stocksAt(g.movements, reading.happened);
    const booked = new Set(g.movements.filter((m) => compareMoments(m.at, reading.happened) <= 0).flatMap((m) => [m.from, m.to]));
    const found: Movement[] = [];
    for (const [i, line] of reading.body.lines.entries()) {
      if (line.how === 'sealed' || line.how === 'unanswered') continue;
      const { kind, of } = placeParts(line.place);
      const counted =
        line.how === 'estimated'
          ? estimated(line.estimate, `estimate:${reading.id}:${i}`)
          : kind === 'vessel'
            ? g.inVessel(g.weigh(line.weight, reading, `lines[${i}].weight`).net, of, reading.happened)
            : g.weigh(line.weight, reading, `lines[${i}].weight`).net;
      const book = stocks.get(line.place);
      const gain = book ? less(counted, book) : counted;
      const from = booked.has(line.place) ? lossPlace('unaccounted') : outside;
      found.push({
        at: reading.happened,
        from,
        to: line.place,
        mercury: { ug: Math.round(gain.ug), parts: gain.parts },
        entry: reading.id,
        basis: 'counted',
      });
    }
    g.movements.push(...found);
  }
}
