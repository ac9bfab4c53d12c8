/** One movement of mercury, where movements are gathered, and what the places hold after them: the ground that every kind of movement stands on. */
import { type Measured, RunningTotal, whole } from '../../measured.ts';
import { compareWithBound } from '../../time.ts';
import type { Charges } from '../charges.ts';
import type { Condenser } from '../condenser.ts';
import type { Current, Reading } from '../current.ts';
import type { Flag } from '../flags.ts';
import type { Lots } from '../lots.ts';
import { isStock } from '../places.ts';
import type { Registers } from '../registers.ts';
import type { Run } from '../runs.ts';
import type { LotMercury, RunMercury } from '../shares.ts';
import type { Weighed } from '../weights.ts';

/** How the amount of a movement is known. */
export type Basis =
  | 'weighed'
  | 'stated'
  | 'estimated'
  | 'trued'
  | 'allotted'
  | 'sibling'
  | 'difference'
  | 'counted'
  /** What a flask that came under seal was short or over when it was first weighed: the supplier's figure, not a loss. */
  | 'invoice-against-weighed';

export interface Movement {
  readonly at: string;
  readonly from: string;
  readonly to: string;
  /** Mercury in micrograms; below nothing where more came out than went in. */
  readonly mercury: Measured;
  readonly entry: string;
  readonly basis: Basis;
}

/** Bounds of a loss that the weighings cannot pin down: between `lowUg` and `highUg`, of which the movements post `lowUg`. */
export interface Bound {
  readonly path: string;
  readonly entry: string;
  readonly at: string;
  readonly lowUg: number;
  readonly highUg: number;
}

/** What working out movements needs, and where they are gathered. */
export interface Gathering {
  readonly current: Current;
  readonly registers: Registers;
  readonly lots: Lots;
  readonly charges: Charges;
  readonly runs: readonly Run[];
  readonly condensers: ReadonlyMap<string, Condenser>;
  readonly runMercuries: ReadonlyMap<string, RunMercury>;
  readonly lotMercuries: ReadonlyMap<string, LotMercury>;
  readonly movements: Movement[];
  readonly bounds: Bound[];
  /** What is awkward about what was gathered. */
  readonly flags: Flag[];
  readonly weigh: (weight: Weighed['as'], reading: Reading, path: string) => Weighed;
  /** Mercury in so much of what a vessel holds at that moment: less the gold in it where its class carries gold. */
  readonly inVessel: (net: Measured, vessel: string, at: string) => Measured;
}

/** The running total of a place, made where there is none. */
export const totalAt = (stocks: Map<string, RunningTotal>, place: string): RunningTotal => {
  const known = stocks.get(place);
  if (known) return known;
  const made = new RunningTotal();
  stocks.set(place, made);
  return made;
};

/** Books one movement into the stocks of its two places. */
export function bookInto(stocks: Map<string, RunningTotal>, { from, to, mercury }: Movement): void {
  totalAt(stocks, from).add(mercury, -1);
  totalAt(stocks, to).add(mercury);
}

/** The same for places that hold stock only: what is outside or lost grows long and is not asked for. */
export function bookStock(stocks: Map<string, RunningTotal>, { from, to, mercury }: Movement): void {
  if (isStock(from)) totalAt(stocks, from).add(mercury, -1);
  if (isStock(to)) totalAt(stocks, to).add(mercury);
}

/** What stands in each place after all movements up to and with this moment or day; null: all of them. */
export function stocksAt(movements: readonly Movement[], upTo: string | null): ReadonlyMap<string, Measured> {
  const stocks = new Map<string, RunningTotal>();
  for (const m of movements) if (upTo === null || compareWithBound(m.at, upTo) <= 0) bookInto(stocks, m);
  return stocks;
}

/** How an amount is known by its weight: somebody's figure, or a scale or a measure of volume read here. */
export const readOrStated = (weight: Weighed['as']): 'stated' | 'weighed' => (weight.how === 'stated' ? 'stated' : 'weighed');

/** Moves mercury: a line for one entry. */
export function move(
  g: Gathering,
  reading: Reading,
  from: string,
  to: string,
  mercury: Measured,
  basis: Basis,
  at: string = reading.happened,
): void {
  g.movements.push({ at, from, to, mercury: whole(mercury), entry: reading.id, basis });
}
