/**
 * Whether a weight and the weight expected of it stand to each other as two units that are taken for one another. It accuses nobody: it asks.
 * Factors: practice.md, the table of failure signs (1.097 troy and avoirdupois ounce, 1.215 avoirdupois and troy pound, 1.12 the tons, about 12.4
 * a fluid ounce of mercury read as a troy ounce). The first three are exact quotients of the units; the last moves with the temperature and with
 * whose fluid ounce it was.
 */
import { compare, type Decimal, zero } from './decimal.ts';
import { gramsPer } from './mass.ts';
import { quotient } from './ratio.ts';

export type Slip = 'ounces' | 'pounds' | 'tons' | 'fluid';

/** Factor, and how far from it, as a share, two weighings of the same thing may still lie. */
const factors: readonly { readonly slip: Slip; readonly factor: number; readonly within: number }[] = [
  { slip: 'ounces', factor: quotient(gramsPer.ozt, gramsPer['oz-av']), within: 0.008 },
  { slip: 'pounds', factor: quotient(gramsPer.lb, gramsPer.lbt), within: 0.012 },
  { slip: 'tons', factor: quotient(gramsPer['long-ton'], gramsPer['short-ton']), within: 0.008 },
  { slip: 'fluid', factor: 12.4, within: 0.045 },
];

/** The slip the two weights look like, with their quotient (the larger over the smaller); null when they look like none, or one is nothing. */
export function unitSlip(grams: Decimal, expected: Decimal): { readonly slip: Slip; readonly quotient: number } | null {
  if (compare(grams, zero) <= 0 || compare(expected, zero) <= 0) return null;
  const apart = compare(grams, expected) >= 0 ? quotient(grams, expected) : quotient(expected, grams);
  const near = factors.find(({ factor, within }) => Math.abs(apart / factor - 1) <= within);
  return near ? { slip: near.slip, quotient: apart } : null;
}
