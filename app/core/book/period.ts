/**
 * A period as somebody writes it: days, or moments where it must be to the minute. A day begins and ends by the clock on the wall of the site,
 * which the entries themselves tell: the offset of the first entry on or after that day, else of the last one before it.
 */
import type { Entry } from '../entry.ts';
import { bad, good, type Problem, problem, type Result } from '../result.ts';
import { compareMoments, dayOf, isDay, isMoment } from '../time.ts';
import type { Period } from './account.ts';

const offsetOf = (moment: string): string => moment.slice(-6);

function offsetAt(entries: readonly Pick<Entry, 'happened'>[], day: string): string {
  let after: string | null = null;
  let before: string | null = null;
  for (const { happened } of entries) {
    if (dayOf(happened) >= day) after = after === null || compareMoments(happened, after) < 0 ? happened : after;
    else before = before === null || compareMoments(happened, before) > 0 ? happened : before;
  }
  const nearest = after ?? before;
  return nearest === null ? '+00:00' : offsetOf(nearest);
}

/**
 * The period from `from` to `to`, each a day ("2026-03-14", both inside) or a moment; left out: open. Problems: `period-unread` where one is
 * neither, `period-backwards` where it ends before it begins.
 */
export function periodFrom(
  entries: readonly Pick<Entry, 'happened'>[],
  ends: { readonly from?: string | undefined; readonly to?: string | undefined },
): Result<Period> {
  const problems: Problem[] = [];
  const end = (field: 'from' | 'to', clock: string): string | null => {
    const text = ends[field];
    if (text === undefined) return null;
    if (isMoment(text)) return text;
    if (isDay(text)) return `${text}T${clock}${offsetAt(entries, text)}`;
    problems.push(problem('period-unread', field, { read: text.slice(0, 60) }));
    return null;
  };
  const from = end('from', '00:00');
  const to = end('to', '23:59:59.999');
  if (from !== null && to !== null && compareMoments(from, to) > 0)
    problems.push(problem('period-backwards', 'to', { from: dayOf(from), to: dayOf(to) }));
  return problems.length > 0 ? bad(...problems) : good({ from, to });
}
