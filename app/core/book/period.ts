/** A period as somebody writes it: whole days, as they stood on the wall where each entry was written, or moments where it must be to the minute. */
import { bad, good, type Problem, problem, type Result } from '../result.ts';
import { compareMoments, compareWithBound, isDay, isMoment } from '../time.ts';

/**
 * A period: from the first moment or day (inside) to the last (inside); null where it is open. A day is the day on the wall of each entry. Between two
 * counts it begins after the first one: then `from` itself lies outside, so that neighbouring periods hold every moment exactly once.
 */
export interface Period {
  readonly from: string | null;
  readonly to: string | null;
  readonly after?: true;
}

/** Whether it lies before the period begins. */
export function isBefore(at: string, { from, after }: Period): boolean {
  if (from === null) return false;
  const side = compareWithBound(at, from);
  return after === true ? side <= 0 : side < 0;
}

/** Whether the moment lies inside the period. */
export const inPeriod = (at: string, period: Period): boolean => !isBefore(at, period) && upToEnd(at, period);

/** Whether it lies in the period or before it. */
export const upToEnd = (at: string, { to }: Period): boolean => to === null || compareWithBound(at, to) <= 0;

const isReversed = (from: string, to: string): boolean =>
  from.length > 10 && to.length > 10 ? compareMoments(from, to) > 0 : to.slice(0, 10) < from.slice(0, 10);

/**
 * The period from `from` to `to`, each a day ("2026-03-14") or a moment, both inside; left out: open. Problems: `not-a-day` where one is neither,
 * `period-reversed` where it ends before it begins.
 */
export function periodFrom({
  from,
  to,
}: {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}): Result<Period> {
  const problems: Problem[] = [];
  for (const [field, end] of [
    ['from', from],
    ['to', to],
  ] as const)
    if (end !== undefined && !isDay(end) && !isMoment(end)) problems.push(problem('not-a-day', field));
  if (problems.length === 0 && from !== undefined && to !== undefined && isReversed(from, to))
    problems.push(problem('period-reversed', 'to', { from, to }));
  return problems.length > 0 ? bad(...problems) : good({ from: from ?? null, to: to ?? null });
}
