/**
 * What a vessel holds by the book at a moment, and whether more is about to be taken out of it. A book can be wrong, so this refuses nothing: it is
 * asked before keeping, and what was kept all the same is flagged (`vessel-empty`).
 */
import { less, type Measured, nothing, uOf } from '../measured.ts';
import type { Weight } from '../shapes.ts';
import type { Book } from './book.ts';
import { mercuryIn } from './gold.ts';
import { stocksAt } from './movements/gathering.ts';
import { vesselPlace } from './places.ts';
import { stateAt } from './registers.ts';
import { weighedFrom } from './weights.ts';

/** Mercury in a vessel after everything up to and with `at` (a moment); nothing where none ever went in or out. */
export const vesselStock = (book: Book, vessel: string, at: string): Measured =>
  stocksAt(book.movements.all, at).get(vesselPlace(vessel)) ?? nothing;

/** Mercury taken out of a vessel and what the book has there, where the first is the more. */
export interface OverStock {
  readonly takenUg: number;
  readonly heldUg: number;
}

/**
 * Whether a weight of mercury is more than its vessel holds by the book at that moment, by more than the two can be out (twice the standard
 * uncertainty of their difference; what is not known counts as none). Null: it is not.
 */
export function overStock(book: Book, { vessel, weight, at }: { vessel: string; weight: Weight; at: string }): OverStock | null {
  const thing = book.registers.vessel.get(vessel);
  if (!thing) return null;
  const { net } = weighedFrom(weight, { entry: 'taken', path: 'weight', at }, book.registers);
  const taken = mercuryIn(net, stateAt(thing, at).body.mercury);
  const held = vesselStock(book, vessel, at);
  const over = less(taken, held);
  return over.ug > Math.max(1, 2 * uOf(over)) ? { takenUg: Math.round(taken.ug), heldUg: Math.round(held.ug) } : null;
}
