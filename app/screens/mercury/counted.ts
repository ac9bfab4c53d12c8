/**
 * The counted periods an account is chosen from, newest first, each named by its two counts and whether it is closed; and what stands out for the
 * safety officer to do next.
 */
import type { Book } from '../../core/book/book.ts';
import { closingsOf } from '../../core/book/closings.ts';
import { type CountedPeriod, periodsOf } from '../../core/book/periods.ts';
import { dayText } from '../../words/dates.ts';
import { mercuryRoom as words } from '../../words/screens-mercury.ts';
import { type Days, daysOf } from './address.ts';

export interface CountedChoice {
  readonly key: string;
  readonly days: Days;
  readonly label: string;
  /** Version of its closing; null where it is not closed. */
  readonly version: number | null;
  readonly counted: CountedPeriod;
}

/** "count of 3 May 2026 → count of 2 June 2026", the whole of a period by its counts. */
export const countedLabel = ({ period, closing }: Pick<CountedPeriod, 'period' | 'closing'>): string =>
  words.counted(period.from === null ? null : dayText(period.from), dayText(closing.happened));

/** Every counted period, newest first. */
export function countedChoices(book: Book): readonly CountedChoice[] {
  const closings = closingsOf(book);
  return periodsOf(book)
    .map((counted): CountedChoice => {
      const closed = closings.find(
        (c) => c.body.closing === counted.closing.id && (c.body.opening ?? '') === (counted.opening?.id ?? ''),
      );
      const version = closed?.body.version ?? null;
      return {
        key: counted.key,
        days: daysOf(counted.period),
        label: `${countedLabel(counted)} (${version === null ? words.notClosed : words.closed(version)})`,
        version,
        counted,
      };
    })
    .reverse();
}
