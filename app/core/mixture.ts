/**
 * Several substances in one air: the sum of each over its own limit, for substances that add up in what they do to people. It is a sum and no verdict; whether
 * these add up at all is for people licensed for it to say. Source: 29 CFR 1910.1000(d)(2)(i).
 */
import type { Decimal } from './decimal.ts';
import { asRatio, over, type Ratio, sumRatio } from './ratio.ts';

/** One substance: its mean over the time of its limit, and that limit, both in one unit. */
export interface InMixture {
  readonly amount: Decimal;
  readonly limit: Decimal;
}

/** Each over its limit, and their sum; null where a limit is not above zero or nothing is given. Amounts are not below zero. */
export function mixtureOf(parts: readonly InMixture[]): { readonly shares: readonly Ratio[]; readonly sum: Ratio } | null {
  const shares = parts.flatMap(({ amount, limit }) => over(asRatio(amount), asRatio(limit)) ?? []);
  return shares.length === parts.length && shares.length > 0 ? { shares, sum: sumRatio(shares) } : null;
}
