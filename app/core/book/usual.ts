/**
 * The site's own usual rate, from its earlier counted periods and never the one under test, and what a period lost beyond it. The rate is known no
 * better than those periods were weighed and than they agree with one another. Usual is not acceptable. Method: methods.md 1.1 and WE-4.
 */
import { added, type Measured, measured, scaled, total } from '../measured.ts';
import { dayNumber, minutesOf } from '../time.ts';
import { type Account, oreOf } from './account.ts';
import type { Book } from './book.ts';
import { inPeriod, isBefore, type Period } from './period.ts';
import { type CountedPeriod, periodsOf } from './periods.ts';
import { runAt } from './runs.ts';
import { unaccountedIn } from './unaccounted.ts';

/** What the rate is counted by: tonnes of ore, runs of the retort where there was no ore, months where there were no runs either. */
export type RateBasis = 'tonne' | 'run' | 'month';

export interface UsualRate {
  readonly basis: RateBasis;
  /** Micrograms for one tonne, run or month. */
  readonly rate: Measured;
  /** The periods it comes from, oldest first. */
  readonly periods: readonly CountedPeriod[];
}

export interface Excess {
  readonly usual: UsualRate;
  /** Tonnes, runs or months of the period under test. */
  readonly amount: number;
  readonly expected: Measured;
  readonly excess: Measured;
}

/** Why there is none: the period has no beginning to be earlier than, too few periods were counted before it, or nothing is there to count by. */
export type NoUsual = { readonly why: 'no-start' | 'too-few-periods' | 'nothing-to-count-by'; readonly earlier: number };

/** Fewest earlier periods that make a usual rate: one alone has no scatter. */
export const leastPeriods = 2;

/** Days of a mean month of the Gregorian calendar. */
const monthDays = 365.2425 / 12;

const daysAt = (bound: string, end: boolean): number =>
  bound.length > 10 ? (minutesOf(bound) ?? 0) / 1440 : (dayNumber(bound) ?? 0) + (end ? 1 : 0);

function monthsOf(book: Book, { from, to }: Period): number {
  const last = to ?? book.movements.all.at(-1)?.at ?? from;
  return from === null || last === null ? 0 : (daysAt(last, true) - daysAt(from, false)) / monthDays;
}

/** How much of it the period had: a number with its error, in whole units of the basis. */
function amountOf(book: Book, period: Period, basis: RateBasis): Measured {
  if (basis === 'tonne') return scaled(oreOf(book, period) ?? measured(0, []), 1e-12);
  if (basis === 'month') return measured(monthsOf(book, period), []);
  return measured(book.runs.filter((run) => run.awaits.length === 0 && inPeriod(runAt(run), period)).length, []);
}

/** a / b to first order in the errors of both, which may share sources. */
const over = (a: Measured, b: Measured): Measured => {
  const value = a.ug / b.ug;
  return { ug: value, parts: total([scaled(a, 1 / b.ug), scaled(b, -value / b.ug)]).parts };
};

/** a · b to first order in the errors of both. */
const by = (a: Measured, b: Measured): Measured => ({
  ug: a.ug * b.ug,
  parts: total([scaled(a, b.ug), scaled(b, a.ug)]).parts,
});

/**
 * The rate over several periods: all they lost by all they had. Its error holds the periods' own errors and, as one source more, the standard error
 * of their weighted mean as their scatter shows it; part of the scatter is those same errors, so it is rather too wide than too narrow.
 */
export function rateOf(losses: readonly Measured[], amounts: readonly Measured[], name: string): Measured {
  const whole = total(amounts);
  const rate = over(total(losses), whole);
  const squares = losses.reduce((s, loss, i) => {
    const amount = amounts[i]?.ug ?? 0;
    return s + amount * (loss.ug / amount - rate.ug) ** 2;
  }, 0);
  return added(rate, measured(0, [[name, Math.sqrt(squares / ((losses.length - 1) * whole.ug))]]));
}

/** The usual rate before a period, and the amount it is to be held against; or why there is none. */
export function usualBefore(book: Book, period: Period): { readonly usual: UsualRate; readonly amount: Measured } | NoUsual {
  if (period.from === null) return { why: 'no-start', earlier: 0 };
  const earlier = periodsOf(book).filter((p) => p.opening !== null && isBefore(p.closing.happened, period));
  if (earlier.length < leastPeriods) return { why: 'too-few-periods', earlier: earlier.length };
  for (const basis of ['tonne', 'run', 'month'] as const) {
    const amount = amountOf(book, period, basis);
    const rows = earlier.map((p) => ({ p, amount: amountOf(book, p.period, basis) })).filter((row) => row.amount.ug > 0);
    if (!(amount.ug > 0) || rows.length < leastPeriods) continue;
    const losses = unaccountedIn(
      book,
      rows.map((row) => row.p.period),
    );
    const name = `usual rate:${rows.map((row) => row.p.key).join(' ')}`;
    const rate = rateOf(
      losses,
      rows.map((row) => row.amount),
      name,
    );
    return { usual: { basis, rate, periods: rows.map((row) => row.p) }, amount };
  }
  return { why: 'nothing-to-count-by', earlier: earlier.length };
}

/** What the account's period lost beyond the usual. What it shares with the periods before it (a count, a scale) cancels or adds as it must. */
export function excessOf(book: Book, account: Pick<Account, 'period' | 'unaccounted'>): Excess | NoUsual {
  const got = usualBefore(book, account.period);
  if ('why' in got) return got;
  const expected = by(got.usual.rate, got.amount);
  const excess = total([account.unaccounted, scaled(expected, -1)]);
  return { usual: got.usual, amount: got.amount.ug, expected, excess };
}
