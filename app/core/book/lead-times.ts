/** How long before its day a thing is told of: as the site set it, else the program's own thirty days (common practice, no source). */
import { type DueThing, dueThings } from '../kinds/site-says.ts';
import { dayFrom, dayNumber, dayOf } from '../time.ts';
import type { Current } from './current.ts';
import { lastSaid } from './site-says.ts';

/** Days before its day, where the site set none. */
export const usualLeadDays = 30;

/** The days of each thing by the site's last word at that moment; of two for one thing the later counts. */
export function leadDaysAt(current: Current, at: string): Readonly<Record<DueThing, number>> {
  const said = new Map(lastSaid(current, 'lead-times', at)?.body.leads.map(({ of, days }) => [of, days]));
  return Object.fromEntries(dueThings.map((thing) => [thing, said.get(thing) ?? usualLeadDays])) as Record<DueThing, number>;
}

/** The day by which the whole is to be counted again: so many days, as the site set, after the last count of the whole, or after it said so. Null: it set none. */
export function nextCount(
  current: Current,
  at: string,
): { readonly day: string; readonly everyDays: number; readonly last: string | null } | null {
  const said = lastSaid(current, 'lead-times', at);
  const everyDays = said?.body.countEvery;
  if (!said || everyDays === undefined) return null;
  const last = current
    .of('stock-take')
    .findLast((reading) => reading.body.scope === 'whole' && dayOf(reading.happened) <= dayOf(at));
  const from = dayNumber(dayOf((last ?? said).happened)) ?? 0;
  return { day: dayFrom(from + everyDays), everyDays, last: last ? dayOf(last.happened) : null };
}
