/**
 * Stock-takes: what a count finds in a place against what the book says. The first time a place is counted with nothing booked in it, what is found
 * was there before the book; after that the difference is unaccounted for. A seal that stands changes nothing, and neither does what could not be
 * counted. A flask weighed for the first time since it came under seal differs from the supplier's figure, not by a loss of this site (cases.md 9), also
 * where it was poured from before, as long as what was poured was weighed.
 */
import type { CountLine } from '../../kinds/stock-take.ts';
import { less, type Measured, measuredBy, nothing, type RunningTotal, scaled, total, whole } from '../../measured.ts';
import type { Weight } from '../../shapes.ts';
import { compareMoments, minutesOf } from '../../time.ts';
import { firedAt } from '../charges.ts';
import type { Lot } from '../lots.ts';
import { lossPlace, outside, placeParts } from '../places.ts';
import { type LotMercury, priorShare } from '../shares.ts';
import { differs } from './count-differs.ts';
import { estimated } from './estimates.ts';
import { poured, restsOn } from './first-weighing.ts';
import { type Gathering, type Movement, totalAt } from './gathering.ts';

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
    case 'empty':
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
  const own = measuredBy(0, `lot share:${lot.id}`, change.ug * priorShare.u);
  return total([booked, scaled(change, share), own]);
}

/** When what was counted here is next settled by the work itself: a lot is taken, a charge fired, a sponge melted, a condenser brushed out. */
function settledBy(
  g: Gathering,
  place: string,
  after: string,
  worked: readonly Movement[],
): { readonly at: string; readonly entry: string } | null {
  const { kind, of } = placeParts(place);
  const later = (found: readonly { at: string; entry: string }[]) => found.find((f) => compareMoments(f.at, after) > 0) ?? null;
  if (kind === 'lot' || kind === 'sponge' || kind === 'work' || kind === 'condenser') return later(worked);
  if (kind !== 'charge') return null;
  const run = g.runs.find((r) => r.id === of);
  const last = run?.charges.flatMap((c) => c.firings).sort((a, b) => compareMoments(firedAt(a), firedAt(b)))[0];
  return run && last && g.runMercuries.has(run.id) ? later([{ at: firedAt(last), entry: last.id }]) : null;
}

/** What the work took out of each of these places, in order of happening. What a count itself moves comes from none of them. */
function workedFrom(movements: readonly Movement[], places: ReadonlySet<string>): ReadonlyMap<string, readonly Movement[]> {
  const found = new Map([...places].map((place) => [place, [] as Movement[]]));
  for (const m of movements) if (m.basis !== 'counted' && m.basis !== 'difference') found.get(m.from)?.push(m);
  return found;
}

/**
 * What the places that are counted hold as the counts are read in order: each movement is booked once, when its moment has come, so that many counts
 * cost one pass.
 */
class Holding {
  readonly stocks = new Map<string, RunningTotal>();
  readonly #places: ReadonlySet<string>;
  readonly #waiting: readonly Movement[];
  readonly #moments: readonly number[];
  #next = 0;
  #later: Movement[] = [];

  /** The movements in order of happening, each with its moment in minutes. */
  constructor(movements: readonly Movement[], moments: readonly number[], places: ReadonlySet<string>) {
    this.#waiting = movements;
    this.#moments = moments;
    this.#places = places;
  }

  #book({ from, to, mercury }: Movement): void {
    if (this.#places.has(from)) totalAt(this.stocks, from).add(mercury, -1);
    if (this.#places.has(to)) totalAt(this.stocks, to).add(mercury);
  }

  /** A movement that a count made: at that count or after it. */
  add(m: Movement): void {
    this.#later.push(m);
  }

  /** Books everything up to and with this moment. */
  upTo(moment: string): ReadonlyMap<string, Measured> {
    const until = minutesOf(moment) ?? 0;
    for (
      let next = this.#waiting[this.#next];
      next && (this.#moments[this.#next] ?? 0) <= until;
      next = this.#waiting[this.#next]
    ) {
      this.#book(next);
      this.#next += 1;
    }
    const due = this.#later.filter((m) => compareMoments(m.at, moment) <= 0);
    if (due.length > 0) this.#later = this.#later.filter((m) => compareMoments(m.at, moment) > 0);
    for (const m of due) this.#book(m);
    return this.stocks;
  }
}

/** The movements of all counts. `moments`: those of the movements gathered so far, which stand in order of happening, in minutes. */
export function countMovements(g: Gathering, moments: readonly number[]): void {
  const counts = [...g.current.of('stock-take')].sort((a, b) => compareMoments(a.happened, b.happened));
  if (counts.length === 0) return;
  // counts are read in order: what was opened once stays opened
  const opened = new Set<string>();
  const places = new Set(counts.flatMap((reading) => reading.body.lines.map((line) => line.place)));
  const holding = new Holding([...g.movements], moments, places);
  const worked = workedFrom(g.movements, places);
  for (const reading of counts) {
    const stocks: ReadonlyMap<string, Measured> = holding.upTo(reading.happened);
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
      const apart = invoiced || rests === 'mixed' || !stocks.has(line.place) ? null : differs(g, reading.id, line.place, gain);
      if (apart) g.flags.push(apart);
      if (first) opened.add(of);
      const from = invoiced || !stocks.has(line.place) ? outside : lossPlace('unaccounted');
      const movement = (at: string, entry: string, value: Measured): Movement => ({
        at,
        from,
        to: line.place,
        mercury: whole(value),
        entry,
        basis: invoiced ? 'invoice-against-weighed' : 'counted',
      });
      found.push(movement(reading.happened, reading.id, gain));
      // the work trues the place up by what was weighed then: what the count changed is taken back, or it would stay in an empty place for good
      const settled = settledBy(g, line.place, reading.happened, worked.get(line.place) ?? []);
      if (settled) found.push(movement(settled.at, settled.entry, scaled(gain, -1)));
    }
    g.movements.push(...found);
    for (const m of found) holding.add(m);
  }
}
