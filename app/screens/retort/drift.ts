/**
 * Whether a lot's weight at charging has moved further from its label than drying usually takes. The same bounds as the book's flag
 * (core/book/lots.ts): above a share of the label weight, and above what the two weighings can be apart by chance.
 */
import { type Measured, uOf } from '../../core/measured.ts';

const share = 0.005;

export const driftIsLarge = (drift: Measured, label: Measured, uKnown: boolean): boolean => {
  const size = Math.abs(drift.ug);
  return size > share * label.ug && (!uKnown || size > 2 * uOf(drift));
};
