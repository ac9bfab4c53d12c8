/** A period from the options of a call: whole days, as they stood on the wall where each entry was written, or moments, as those of counts. */
import type { Period } from '../../app/core/book/account.ts';
import { periodFrom as periodOf } from '../../app/core/book/period.ts';
import { bad, type Result } from '../../app/core/result.ts';

/** From the start of `from` to the end of `to`; open where one is left out. Problems name the options. */
export function periodFrom({ from, to }: Readonly<{ [name: string]: string | undefined }>): Result<Period> {
  const period = periodOf({ from, to });
  return period.ok ? period : bad(...period.problems.map((p) => ({ ...p, field: `--${p.field}` })));
}
