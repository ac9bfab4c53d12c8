/** A period as somebody writes it: whole days, as they stood on the wall where each entry was written, or moments where it must be to the minute. */
import { bad, good, type Problem, problem, type Result } from '../result.ts';
import { compareMoments, compareWithBound, isDay, isMoment } from '../time.ts';
import type { Period } from './account.ts';

/** Whether the moment lies inside the period; both its ends are inside. */
export const inPeriod = (at: string, { from, to }: Period): boolean =>
  (from === null || compareWithBound(at, from) >= 0) && (to === null || compareWithBound(at, to) <= 0);

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
