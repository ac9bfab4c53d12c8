/**
 * The book: everything the entries say, worked out. It is a function of the entries alone, whatever order they came in or were written up in, and
 * can be thrown away and read again at any time. It never changes an entry and never asks the clock.
 */
import type { Entry } from '../entry.ts';
import { airFlags } from './air-flags.ts';
import { barsOf } from './bars.ts';
import { type Charges, readCharges } from './charges.ts';
import { inSiteWords, workCheckFlags } from './check-lists.ts';
import { type Condenser, readCondensers } from './condenser.ts';
import { type Current, readCurrent } from './current.ts';
import { type Flag, flag } from './flags.ts';
import { authorityFlags } from './gold-authorities.ts';
import { type Lots, readLots } from './lots.ts';
import { type Movements, readMovements } from './movements.ts';
import { outTurnsOf } from './out-turns.ts';
import { type Registers, readRegisters } from './registers.ts';
import { type Run, readRuns, runsByCharge } from './runs.ts';
import { settlementsOf } from './settlements.ts';
import { standingFlags } from './site.ts';
import { yearFlags } from './year-flags.ts';

export interface Book {
  readonly entries: readonly Entry[];
  readonly current: Current;
  readonly registers: Registers;
  readonly lots: Lots;
  readonly charges: Charges;
  readonly runs: readonly Run[];
  readonly condensers: ReadonlyMap<string, Condenser>;
  readonly movements: Movements;
  /** All flags, by the entry they concern. */
  readonly flags: ReadonlyMap<string, readonly Flag[]>;
}

/** Reads a book from its entries, which have passed their schemas. */
export function readBook(entries: readonly Entry[]): Book {
  const current = readCurrent(entries);
  const registers = readRegisters(current);
  const lots = readLots(current, registers);
  const charges = readCharges(current, registers, lots);
  return bookOf(entries, current, registers, lots, charges);
}

/** The rest of a book, from its readings, registers, lots and charges. */
export function bookOf(entries: readonly Entry[], current: Current, registers: Registers, lots: Lots, charges: Charges): Book {
  const { runs, flags } = readRuns(charges, registers);
  const condensers = readCondensers(runs, registers);
  const movements = readMovements({ current, registers, lots, charges, runs, condensers });
  const contested: Flag[] = [];
  for (const r of current.byId.values()) if (r.contested) contested.push(flag('contested', r.id));
  const ofTheYear = yearFlags({ current, registers, lots, runs, movements });
  const all = [
    ...lots.flags,
    ...charges.flags,
    ...flags,
    ...contested,
    ...standingFlags(current),
    ...movements.flags,
    ...ofTheYear,
    ...barsOf({ current, registers }).flags,
    ...settlementsOf({ current, registers }).flags,
    ...outTurnsOf({ current, registers }).flags,
    ...authorityFlags({ current, registers }),
    ...airFlags({ current, registers }),
    ...workCheckFlags(current),
  ].map((f) => inSiteWords(current, f));
  const byEntry = new Map<string, Flag[]>();
  for (const f of all) {
    const list = byEntry.get(f.entry);
    if (list) list.push(f);
    else byEntry.set(f.entry, [f]);
  }
  return { entries, current, registers, lots, charges, runs, condensers, movements, flags: byEntry };
}

/** The run a charge belongs to. */
export const runOf = (book: Book, charge: string): Run | undefined => runsByCharge(book.runs).get(charge);

/** All flags of a run: of its charges, firings and the lots in them. */
export function flagsOfRun(book: Book, run: Run): readonly Flag[] {
  const ids = new Set<string>();
  for (const charge of run.charges) {
    ids.add(charge.id);
    for (const firing of charge.firings) ids.add(firing.id);
    for (const row of charge.rows) if (row.lot) ids.add(row.lot.madeBy);
  }
  return [...ids].flatMap((id) => book.flags.get(id) ?? []);
}
