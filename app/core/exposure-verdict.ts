/**
 * How a day's exposure stands to a limit somebody entered: below, at or above it, or "cannot tell". It never says more than that; what the limit means is
 * for the body that set it. Compared as exact figures.
 */
import type { Decimal } from './decimal.ts';
import type { DayExposure, Range } from './exposure.ts';
import { absoluteRatio, asRatio, compareRatio, minusRatio, type Ratio, ratioFromText, timesRatio } from './ratio.ts';

export const bases = ['8h', '15min', 'ceiling'] as const;
/** What a limit is averaged over. */
export type Basis = (typeof bases)[number];
export type Verdict = 'below' | 'at' | 'above' | 'cannot tell';

const oneInAThousandMillion = ratioFromText('0.000000001');

/** Whether a value is the limit, within one part in 10⁹ of it. */
const meets = (value: Ratio, limit: Ratio): boolean =>
  compareRatio(absoluteRatio(minusRatio(value, limit)), timesRatio(oneInAThousandMillion, limit)) <= 0;

/** How a range stands to a limit. */
export const verdict = (range: Range | null, limitMgM3: Decimal): Verdict => verdictOn(range, asRatio(limitMgM3));

/** How a range stands to a limit that was worked out and is no plain decimal. */
export function verdictOn(range: Range | null, limit: Ratio): Verdict {
  if (range === null) return 'cannot tell';
  const { low, high } = range;
  if (high && meets(low, limit) && meets(high, limit)) return 'at';
  if (compareRatio(low, limit) > 0) return 'above';
  return high && compareRatio(high, limit) < 0 ? 'below' : 'cannot tell';
}

/** The range a limit of this basis is held against. */
export const rangeFor = (exposure: DayExposure, basis: Basis): Range | null =>
  basis === '8h' ? exposure.twa8h : basis === '15min' ? exposure.highest15min : exposure.ceiling;
