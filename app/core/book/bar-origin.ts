/** The way of a bar back to its ore: charges, lots, what made the lots, and the crushings that fed it. Order of writing does not count. */
import { dayOf } from '../time.ts';
import type { Bar } from './bars.ts';
import type { Book } from './book.ts';
import type { Reading } from './current.ts';
import type { Lot } from './lots.ts';

export interface BarOrigin {
  readonly charges: readonly Reading<'charge'>[];
  /** The lots that were charged and everything they were cleaned, squeezed or split out of. */
  readonly lots: readonly Lot[];
  /** The entries that made the lots: clean-ups, cleanings, squeezings, charges that split one. */
  readonly makers: readonly Reading[];
  readonly crushings: readonly Reading<'crushing'>[];
}

function lotsBehind(book: Book, id: string, found: Map<string, Lot>): void {
  const lot = book.lots.all.get(id);
  if (!lot || found.has(id)) return;
  found.set(id, lot);
  if (lot.parent !== null) lotsBehind(book, lot.parent, found);
  const maker = book.current.byId.get(lot.madeBy);
  if (maker?.kind === 'squeeze' || maker?.kind === 'cleaning')
    for (const input of (maker as Reading<'squeeze'>).body.lots ?? []) lotsBehind(book, input, found);
}

/** Crushings a clean-up stands for: those since the last clean-up of its type. It names no battery, so all of the mill are among them. */
function crushingsOf(book: Book, cleanUp: Reading<'clean-up'>): readonly Reading<'crushing'>[] {
  const before = book.current
    .of('clean-up')
    .findLast((r) => r.body.type === cleanUp.body.type && dayOf(r.happened) < dayOf(cleanUp.happened));
  return book.current
    .of('crushing')
    .filter((r) => dayOf(r.happened) <= dayOf(cleanUp.happened) && (!before || dayOf(r.happened) > dayOf(before.happened)));
}

/** All that is behind the bar's own sponges; bars it was melted from have an origin of their own. */
export function barOrigin(book: Book, bar: Bar): BarOrigin {
  const lots = new Map<string, Lot>();
  for (const charge of bar.from.charges)
    for (const row of book.charges.all.get(charge)?.rows ?? []) if (row.lot) lotsBehind(book, row.lot.id, lots);
  const makers = [...new Set([...lots.values()].map((lot) => lot.madeBy))].flatMap((id) => book.current.byId.get(id) ?? []);
  const cleanUps = makers.filter((r): r is Reading<'clean-up'> => r.kind === 'clean-up');
  return {
    charges: bar.from.charges.flatMap((id) => book.charges.all.get(id)?.reading ?? []),
    lots: [...lots.values()],
    makers,
    crushings: [...new Map(cleanUps.flatMap((r) => crushingsOf(book, r)).map((r) => [r.id, r])).values()],
  };
}
