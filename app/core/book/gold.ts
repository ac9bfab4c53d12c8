/**
 * Gold that strained mercury carries. Published figures differ widely (0.03 to 0.17 parts in a hundred; practice.md 2.5), so it is a range, taken as
 * rectangular, and one error source: what counts as gold does not count as mercury, with the same error and the other sign.
 */
import type { MercuryClass } from '../kinds/vessel.ts';
import { exactly, less, type Measured, measured } from '../measured.ts';

/** The range as shares of the weight. */
export const goldInStrained = { from: 0.0003, to: 0.0017 } as const;

/** Mercury strained through cloth or leather carries gold; new and retorted mercury are taken as free of it; of the others nobody knows. */
const carries = (held: MercuryClass | undefined): boolean => held === 'strained';

/** Gold in so much mercury of a class, in micrograms. */
export function goldIn(weight: Measured, held: MercuryClass | undefined): Measured {
  if (!carries(held)) return exactly(0);
  const { from, to } = goldInStrained;
  const middle = Math.round((weight.ug * (from + to)) / 2);
  return measured(middle, [['gold in strained mercury', (weight.ug * (to - from)) / 2 / Math.sqrt(3)]]);
}

/** Mercury in so much of what the vessel holds: its weight less the gold in it. */
export const mercuryIn = (weight: Measured, held: MercuryClass | undefined): Measured => less(weight, goldIn(weight, held));
