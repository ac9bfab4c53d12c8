/**
 * Two laboratories and an umpire: settling on one fineness by the rule that stands in the contract between the parties. Contracts differ, so the
 * rule is always given, never assumed. Source: methods.md 5.6.
 */
import { absolute, compare, type Decimal, minus } from './decimal.ts';
import { asRatio, mean, type Ratio } from './ratio.ts';

export const settlementRules = ['nearer-mean', 'median', 'umpire-between'] as const;
/** Mean of the umpire and the nearer party; the middle one of three; the umpire alone when between the parties. */
export type SettlementRule = (typeof settlementRules)[number];
export type Party = 'site' | 'other';

export interface Dispute {
  readonly site: Decimal;
  readonly other: Decimal;
  /** A difference up to and equal to this settles at the mean. */
  readonly limit: Decimal;
  readonly umpire?: Decimal | undefined;
  readonly rule: SettlementRule;
}

export interface Settlement {
  readonly difference: Decimal;
  readonly umpireNeeded: boolean;
  /** Null: an umpire is needed and has not spoken. */
  readonly settled: Ratio | null;
  /** The party the umpire came nearer to, for `nearer-mean`; absent when exactly midway. */
  readonly nearer?: Party | undefined;
}

const meanOf = (a: Decimal, b: Decimal): Ratio | null => mean([asRatio(a), asRatio(b)]);

/** −1 when the umpire is nearer to the site, 1 when nearer to the other, 0 midway. */
const side = (umpire: Decimal, { site, other }: Dispute): -1 | 0 | 1 =>
  compare(absolute(minus(umpire, site)), absolute(minus(umpire, other)));

function withNearer(umpire: Decimal, dispute: Dispute): Ratio | null {
  const which = side(umpire, dispute);
  return which === 0 ? asRatio(umpire) : meanOf(umpire, which < 0 ? dispute.site : dispute.other);
}

function byRule(umpire: Decimal, dispute: Dispute): Ratio | null {
  const { site, other, rule } = dispute;
  if (rule === 'nearer-mean') return withNearer(umpire, dispute);
  const [low, middle, high] = [site, other, umpire].toSorted(compare);
  if (rule === 'median') return middle ? asRatio(middle) : null;
  const outside = (low && compare(umpire, low) === 0) || (high && compare(umpire, high) === 0);
  const onParty = compare(umpire, site) === 0 || compare(umpire, other) === 0;
  return outside && !onParty ? withNearer(umpire, dispute) : asRatio(umpire);
}

/** The settlement, all figures in parts per thousand. */
export function settle(dispute: Dispute): Settlement {
  const { site, other, limit, umpire, rule } = dispute;
  const difference = absolute(minus(site, other));
  const umpireNeeded = compare(difference, limit) > 0;
  if (!umpireNeeded) return { difference, umpireNeeded, settled: meanOf(site, other) };
  if (!umpire) return { difference, umpireNeeded, settled: null };
  const which = side(umpire, dispute);
  const nearer: Party = which < 0 ? 'site' : 'other';
  return {
    difference,
    umpireNeeded,
    settled: byRule(umpire, dispute),
    ...(rule === 'nearer-mean' && which !== 0 && { nearer }),
  };
}
