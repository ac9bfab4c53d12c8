/**
 * Which entries the metal of a lot or of a charge came from: back through splits, cleanings and squeezings to the clean-up, the plate work or the dirty
 * amalgam of the circuit, by weight. Its parts make the weight again. Source: design.md 4.
 */
import type { Book } from './book.ts';
import type { Reading } from './current.ts';
import { weighedFrom } from './weights.ts';

/** So much of a weight, and the entry that made it. */
export interface Portion {
  readonly maker: string;
  readonly ug: number;
}

/** A lot back to the entries that made what went into it. Lots made by cleaning or squeezing count for the clean-ups their inputs came from. */
export function trace(book: Book, lotId: string, ug: number, seen = new Set<string>()): Portion[] {
  const lot = book.lots.all.get(lotId);
  if (!lot || seen.has(lotId)) return [];
  seen.add(lotId);
  if (lot.parent !== null) return trace(book, lot.parent, ug, seen);
  const maker = book.current.byId.get(lot.madeBy);
  if (maker?.kind !== 'cleaning' && maker?.kind !== 'squeeze') return [{ maker: lot.madeBy, ug }];
  const { lots, dirty } = (maker as Reading<'cleaning'>).body;
  const inputs = (lots ?? []).flatMap((id) => book.lots.all.get(id) ?? []);
  // dirty amalgam straight from the circuit is the cleaning's own
  const own = dirty
    ? weighedFrom(dirty.weight, { entry: maker.id, path: 'dirty.weight', at: maker.happened }, book.registers).net.ug
    : 0;
  const whole = inputs.reduce((s, input) => s + input.net.ug, own);
  if (inputs.length === 0 || !(whole > 0)) return [{ maker: lot.madeBy, ug }];
  return [
    ...inputs.flatMap((input) => trace(book, input.id, (ug * input.net.ug) / whole, seen)),
    ...(own > 0 ? [{ maker: lot.madeBy, ug: (ug * own) / whole }] : []),
  ];
}

/** Weight of the lots of each maker in a charge. */
export function portionsOf(book: Book, charge: string): Portion[] {
  const rows = book.charges.all.get(charge)?.rows ?? [];
  return rows.flatMap((row) => (row.lot && row.charged ? trace(book, row.lot.id, row.charged.net.ug) : []));
}
