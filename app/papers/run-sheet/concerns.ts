/** Which entries a run rests on: its charges and firings, the clean-ups its lots came from, the states of scales and retort it was read under. */
import type { Book } from '../../core/book/book.ts';
import type { Reading } from '../../core/book/current.ts';
import type { Lot } from '../../core/book/lots.ts';
import type { Run } from '../../core/book/runs.ts';
import type { Entry } from '../../core/entry.ts';
import type { Body } from '../../core/kinds/index.ts';
import { notUnderstoodNaming } from '../doubts.ts';
import { firingsOf } from './firings.ts';

/** The lot first made, of which this one is a part. */
export function wholeLot(book: Book, lot: Lot): Lot {
  const parent = lot.parent === null ? undefined : book.lots.all.get(lot.parent);
  return parent ? wholeLot(book, parent) : lot;
}

/** Ids of the lots named in a run's charges, as written. */
const lotsNamed = (run: Run): Set<string> =>
  new Set(run.charges.flatMap(({ reading }) => reading.body.rows.flatMap((row) => (row.take === 'unwritten' ? [] : [row.lot]))));

/** Entries the run's figures come from, in order of reading. */
export function entriesOf(book: Book, run: Run, scaleStates: readonly string[]): Reading[] {
  const ids = new Set<string>();
  for (const { rows } of run.charges) for (const { lot } of rows) if (lot) ids.add(wholeLot(book, lot).madeBy);
  for (const { id } of run.charges) ids.add(id);
  for (const { id } of firingsOf(run)) ids.add(id);
  for (const id of scaleStates) ids.add(id);
  for (const state of book.registers.retort.get(run.retort)?.states ?? []) ids.add(state.entry);
  return [...ids].flatMap((id) => book.current.byId.get(id) ?? []);
}

/** An entry of a kind this program does not know that names something of the run: what it says of it cannot be left out. */
export const notUnderstoodAbout = (book: Book, run: Run): Entry | undefined =>
  notUnderstoodNaming(book, [...entriesOf(book, run, []).map(({ id }) => id), ...lotsNamed(run)]);

/** Entries that were struck and would have belonged to the run: firings of its charges, charges and clean-ups of its lots. */
export function struckOf(book: Book, run: Run): Reading[] {
  const charges = new Set(run.charges.map(({ id }) => id));
  const lots = lotsNamed(run);
  return [...book.current.byId.values()].filter((reading) => {
    if (!reading.struck) return false;
    if (reading.kind === 'firing')
      return (reading.body as Body<'firing'>).heats.some(({ charge }) => charge !== undefined && charges.has(charge));
    if (reading.kind === 'charge')
      return (reading.body as Body<'charge'>).rows.some((row) => row.take !== 'unwritten' && lots.has(row.lot));
    return (
      reading.kind === 'clean-up' && (reading.body as Body<'clean-up'>).lots.some(({ key }) => lots.has(`${reading.id}/${key}`))
    );
  });
}
