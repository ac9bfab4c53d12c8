/**
 * Movements: mercury from one place to another, each with its entry. The whole account is a sum over them, so nothing is ever booked on one side
 * only. What an entry moves is worked out as known today: a lot is worth what its run showed, whenever the run was.
 */
import type { Measured } from '../measured.ts';
import { compareWithBound, minutesOf } from '../time.ts';
import type { Charges } from './charges.ts';
import type { Condenser } from './condenser.ts';
import type { Current, Reading } from './current.ts';
import type { Flag } from './flags.ts';
import { mercuryIn } from './gold.ts';
import type { Lots } from './lots.ts';
import { circuitMovements } from './movements/circuit.ts';
import { countMovements } from './movements/count.ts';
import { runMovements } from './movements/retorting.ts';
import { storeMovements } from './movements/store.ts';
import { workMovements, worksOf } from './movements/work.ts';
import { isStock } from './places.ts';
import { type Registers, stateAt } from './registers.ts';
import type { Run } from './runs.ts';
import { type LotMercury, lotMercuries, type RunMercury, runMercury } from './shares.ts';
import { type Weighed, weighedFrom } from './weights.ts';

/** How the amount of a movement is known. */
export type Basis = 'weighed' | 'stated' | 'estimated' | 'trued' | 'allotted' | 'sibling' | 'difference' | 'counted';

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
  readonly weigh: (weight: Weighed['as'], reading: Reading, path: string) => Weighed;
  /** Mercury in so much of what a vessel holds at that moment: less the gold in it where its class carries gold. */
  readonly inVessel: (net: Measured, vessel: string, at: string) => Measured;
}

export interface Movements {
  /** In order of happening. */
  readonly all: readonly Movement[];
  readonly bounds: readonly Bound[];
  readonly runMercuries: ReadonlyMap<string, RunMercury>;
  readonly lotMercuries: ReadonlyMap<string, LotMercury>;
  /** What is awkward about the weights read here: each once. */
  readonly flags: readonly Flag[];
}

/** All movements of the book. */
export function readMovements(book: {
  current: Current;
  registers: Registers;
  lots: Lots;
  charges: Charges;
  runs: readonly Run[];
  condensers: ReadonlyMap<string, Condenser>;
}): Movements {
  const runMercuries = new Map(
    book.runs.flatMap((run) => (runMercury(run) ? [[run.id, runMercury(run) as RunMercury] as const] : [])),
  );
  const flags = new Map<string, Flag>();
  const weigh = (weight: Weighed['as'], reading: Reading, path: string): Weighed => {
    const got = weighedFrom(weight, { entry: reading.id, path, at: reading.happened }, book.registers);
    for (const f of got.flags) flags.set(`${f.entry} ${path} ${f.code}`, f);
    return got;
  };
  const inVessel = (net: Measured, vessel: string, at: string): Measured => {
    const thing = book.registers.vessel.get(vessel);
    return mercuryIn(net, thing ? stateAt(thing, at).body.mercury : undefined);
  };
  const works = worksOf(book.current, weigh, inVessel);
  const gathering: Gathering = {
    ...book,
    runMercuries,
    lotMercuries: lotMercuries(book.lots, book.runs, runMercuries, works),
    movements: [],
    bounds: [],
    weigh,
    inVessel,
  };
  storeMovements(gathering);
  circuitMovements(gathering);
  workMovements(gathering, works);
  runMovements(gathering);
  sortByTime(gathering.movements);
  countMovements(gathering);
  sortByTime(gathering.movements);
  return {
    all: gathering.movements.filter((m) => m.mercury.ug !== 0 || m.mercury.parts.size > 0),
    bounds: gathering.bounds,
    runMercuries,
    lotMercuries: gathering.lotMercuries,
    flags: [...flags.values()],
  };
}

/** Sorts in place; each moment is read once, not at every comparison. */
function sortByTime(movements: Movement[]): void {
  const rows = movements.map((movement) => ({ movement, at: minutesOf(movement.at) ?? 0 }));
  rows.sort((a, b) => a.at - b.at);
  for (const [i, { movement }] of rows.entries()) movements[i] = movement;
}

/** What stands in each place after all movements up to and with this moment or day; null: all of them. */
export function stocksAt(movements: readonly Movement[], upTo: string | null): ReadonlyMap<string, Measured> {
  const stocks = new Map<string, { ug: number; parts: Map<string, number> }>();
  const add = (place: string, value: Measured, sign: 1 | -1) => {
    const stock = stocks.get(place) ?? { ug: 0, parts: new Map<string, number>() };
    stock.ug += sign * value.ug;
    for (const [source, u] of value.parts) {
      const next = (stock.parts.get(source) ?? 0) + sign * u;
      if (next === 0) stock.parts.delete(source);
      else stock.parts.set(source, next);
    }
    stocks.set(place, stock);
  };
  for (const m of movements) {
    if (upTo !== null && compareWithBound(m.at, upTo) > 0) continue;
    add(m.from, m.mercury, -1);
    add(m.to, m.mercury, 1);
  }
  return stocks;
}

/** Only the places that hold stock. */
export const stockPlaces = (stocks: ReadonlyMap<string, Measured>): ReadonlyMap<string, Measured> =>
  new Map([...stocks].filter(([place]) => isStock(place)));

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
  g.movements.push({ at, from, to, mercury: { ug: Math.round(mercury.ug), parts: mercury.parts }, entry: reading.id, basis });
}
