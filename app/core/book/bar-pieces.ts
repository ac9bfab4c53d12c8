/** Every bar that a melt poured, by its id: the melt's entry, a stroke, the bar's key in it. What it holds is worked out in `bars.ts`. */
import type { Body } from '../kinds/index.ts';
import type { Current, Reading } from './current.ts';

export interface BarPiece {
  readonly id: string;
  /** Its stamped number or name. */
  readonly label: string;
  readonly melt: Reading<'melt'>;
  /** Its place among the bars of the melt. */
  readonly index: number;
  readonly piece: Body<'melt'>['bars'][number];
}

const known = new WeakMap<Current, ReadonlyMap<string, BarPiece>>();

/** Bars of all melts that stand, in the order they were poured. */
export function barPieces(current: Current): ReadonlyMap<string, BarPiece> {
  const before = known.get(current);
  if (before) return before;
  const found = new Map<string, BarPiece>();
  for (const melt of current.of('melt'))
    for (const [index, piece] of melt.body.bars.entries()) {
      const id = `${melt.id}/${piece.key}`;
      found.set(id, { id, label: piece.label, melt, index, piece });
    }
  known.set(current, found);
  return found;
}
