/** A period from the options of a call: whole days, as they stood on the wall where each entry was written. */
import type { Period } from '../../app/core/book/account.ts';
import { bad, good, type Problem, problem, type Result } from '../../app/core/result.ts';
import { isDay } from '../../app/core/time.ts';

/** From the start of `from` to the end of `to`; open where one is left out. */
export function periodFrom(options: Readonly<{ [name: string]: string | undefined }>): Result<Period> {
  const { from, to } = options;
  const problems: Problem[] = [];
  for (const [name, day] of [
    ['--from', from],
    ['--to', to],
  ] as const)
    if (day !== undefined && !isDay(day)) problems.push(problem('not-a-day', name));
  if (problems.length === 0 && from !== undefined && to !== undefined && to < from)
    problems.push(problem('period-reversed', '--to', { from, to }));
  return problems.length > 0 ? bad(...problems) : good({ from: from ?? null, to: to ?? null });
}
