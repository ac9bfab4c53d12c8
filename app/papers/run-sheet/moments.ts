/** When things of a run happened, as they read on a paper. */
import { type Firing, firedAt } from '../../core/book/charges.ts';
import type { Reading } from '../../core/book/current.ts';
import { dayText, momentText } from '../../words/dates.ts';
import { runSheet as words } from '../../words/papers.ts';

/** When an entry happened, with how exact that is. */
export function happenedText({ happened, entry }: Pick<Reading, 'happened' | 'entry'>): string {
  if (entry.timing === 'day') return `${dayText(happened)}${words.dayOnly}`;
  return `${momentText(happened)}${entry.timing === 'about' ? words.about : ''}`;
}

/** When a firing's retort was opened, or when the firing was. */
export const openedText = (firing: Firing): string =>
  firing.reading.body.opened === undefined ? happenedText(firing.reading) : momentText(firedAt(firing));
