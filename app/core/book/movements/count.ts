/**
 * Stock-takes: what a count finds in a place against what the book says. The first time a place is counted with nothing booked in it, what is found
 * was there before the book; after that the difference is unaccounted for. A seal that stands changes nothing, and neither does what could not be
 * counted. A flask weighed for the first time since it came under seal differs from the supplier's figure, not by a loss of this site (cases.md 9), also
 * where it was poured from before, as long as what was poured was weighed.
 */
import type { CountLine } from '../../kinds/stock-take.ts';
import { less, type Measured, measured, nothing, type RunningTotal, scaled, total } from '../../measured.ts';
import type { Weight } from '../../shapes.ts';
import { compareMoments, minutesOf } from '../../time.ts';
import { firedAt } from '../charges.ts';
import type { Lot } from '../lots.ts';
import { lossPlace, outside, placeParts } from '../places.ts';
import { type LotMercury, priorShare } from '../shares.ts';
import { estimated } from './estimates.ts';
import { poured, restsOn } from './first-weighing.ts';
import { bookInto, type Gathering, type Movement } from './gathering.ts';

/** What reading a line of a count needs. */
export interface Counting {
  readonly lots: ReadonlyMap<string, Lot>;
  readonly lotMercuries: ReadonlyMap<string, LotMercury>;
  readonly weigh: (weight: Weight) => Measured;
  readonly inVessel: (net: Measured, vessel: string) => Measured;
  /** The name of this estimate's own error. */
  readonly source: string;
}

/** Mercury a line says is there; null where it counts nothing and the book's amount stands: a seal, a thing seen untouched, no answer. */
export function countedMercury(line: CountLine, booked: Measured, c: Counting): Measured | null {
  switch (line.how) {
    case 'sealed':
    case 'seen':
    case 'unanswered':
      return null;
    case 'not-found':
      return nothing;
    case 'estimated':
      return estimated(line.estimate, c.source);
    case 'weighed': {
      const net = c.weigh(line.weight);
      const { kind, of } = placeParts(line.place);
      if (kind === 'vessel') return c.inVessel(net, of);
      const lot = kind === 'lot' ? c.lots.get(of) : undefined;
      return lot ? inLot(net, lot, booked, c.lotMercuries.get(of)) : net;
    }
  }
}

/** A ball weighs gold and mercury: what its weight changed by changes its mercury in the share that the book gives it. */
function inLot(net: Measured, lot: Lot, booked: Measured, mercury: LotMercury | undefined): Measured {
  const change = less(net, lot.net);
  const share = mercury && lot.net.ug > 0 ? mercury.mercury.ug / lot.net.ug : priorShare.middle;
  const own = measured(0, [[`lot share:${lot.id}`, change.ug * priorShare.u]]);
  return total([booked, scaled(change, share), own]);
}

/** When what was counted here is next settled by the work itself: a lot is taken, a charge fired, a sponge melted, a condenser brushed out. */
function settledBy(g: Gathering, place: string, after: string): { readonly at: string; readonly entry: string } | null {
  const { kind, of } = placeParts(place);
  const later = (found: readonly { at: string; entry: string }[]) =>
    found.filter((f) => compareMoments(f.at, after) > 0).sort((a, b) => compareMoments(a.at, b.at))[0] ?? null;
  if (kind === 'lot' || kind === 'sponge' || kind === 'work' || kind === 'condenser')
    return later(g.movements.filter((m) => m.from === place && m.basis !== 'counted' && m.basis !== 'difference'));
  if (kind !== 'charge') return null;
  const run = g.runs.find((r) => r.id === of);
  const last = run?.charges.flatMap((c) => c.firings).sort((a, b) => compareMoments(firedAt(a), firedAt(b)))[0];
  return run && last && g.runMercuries.has(run.id) ? later([{ at: firedAt(last), entry: last.id }]) : null;
}

/** What the places hold as the counts are read in order: each movement is booked once, when its moment has come, so that many counts cost one pass. */
class Holding {
  readonly stocks = new Map<string, RunningTotal>();
  #waiting: { readonly at: number; readonly m: Movement }[];
  #next = 0;
  #later: Movement[] = [];

  constructor(movements: readonly Movement[]) {
    this.#waiting = movements.map((m) => ({ at: minutesOf(m.at) ?? 0, m })).sort((a, b) => a.at - b.at);
  }

  /** A movement that a count made: at that count or after it. */
  add(m: Movement): void {
    this.#later.push(m);
  }

  /** Books everything up to and with this moment. */
  upTo(moment: string): ReadonlyMap<string, Measured> {
    const until = minutesOf(moment) ?? 0;
    for (let next = this.#waiting[this.#next]; next && next.at <= until; next = this.#waiting[this.#next]) {
      bookInto(this.stocks, next.m);
      this.#next += 1;
    }
    const due = this.#later.filter((m) => compareMoments(m.at, moment) <= 0);
    if (due.length > 0) this.#later = this.#later.filter((m) => compareMoments(m.at, moment) > 0);
    for (const m of due) bookInto(this.stocks, m);
    return this.stocks;
  }
}

export function countMovements(g: Gathering): void {
  const counts = [...g.current.of('stock-take')].sort((a, b) => compareMoments(a.happened, b.happened));
  // counts are read in order: what was opened once stays opened
  const opened = new Set<string>();
  const holding = counts.length > 0 ? new Holding(g.movements) : null;
  for (const reading of counts) {
    const stocks: ReadonlyMap<string, Measured> = holding?.upTo(reading.happened) ?? new Map();
    const found: Movement[] = [];
    for (const [i, line] of reading.body.lines.entries()) {
      const { kind, of } = placeParts(line.place);
      const book = stocks.get(line.place) ?? nothing;
      const counted = countedMercury(line, book, {
        lots: g.lots.all,
        lotMercuries: g.lotMercuries,
        weigh: (weight) => g.weigh(weight, reading, `lines[${i}].weight`).net,
        inVessel: (net, vessel) => g.inVessel(net, vessel, reading.happened),
        source: `estimate:${reading.id}:${i}`,
      });
      if (counted === null) continue;
      const gain = less(counted, book);
      const first = line.how === 'weighed' && kind === 'vessel' && !opened.has(of);
      const rests = first ? restsOn(g, line.place, of, reading.happened) : null;
      const invoiced = rests === 'supplier';
      if (rests === 'mixed') g.flags.push(poured(g, reading.id, line.place, gain));
      if (first) opened.add(of);
      const from = invoiced || !stocks.has(line.place) ? outside : lossPlace('unaccounted');
      const movement = (at: string, entry: string, value: Measured): Movement => ({
        at,
        from,
        to: line.place,
        mercury: { ug: Math.round(value.ug), parts: value.parts },
        entry,
        basis: invoiced ? 'invoice-against-weighed' : 'counted',
      });
      found.push(movement(reading.happened, reading.id, gain));
      // the work trues the place up by what was weighed then: what the count changed is taken back, or it would stay in an empty place for good
      const settled = settledBy(g, line.place, reading.happened);
      if (settled) found.push(movement(settled.at, settled.entry, scaled(gain, -1)));
    }
    g.movements.push(...found);
    for (const m of found) holding?.add(m);
  }
}
