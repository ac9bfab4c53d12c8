/** What the site has said of itself by a moment: its check lists, stop rules, numbers, keeping periods and lead times. The last one written for that moment stands. */
import type { Work } from '../kinds/check-list.ts';
import type { NumberUse } from '../kinds/site-says.ts';
import { compareMoments, dayNumber, dayOf } from '../time.ts';
import type { Current, Reading } from './current.ts';

const lastOf = <R extends { readonly happened: string }>(readings: readonly R[], at: string): R | null =>
  readings.findLast((reading) => compareMoments(reading.happened, at) <= 0) ?? null;

/** The site's list of a work at that moment; null where it has none and the questions that come with the program are asked. */
export const checkListAt = (current: Current, work: Work, at: string): Reading<'check-list'> | null =>
  lastOf(
    current.of('check-list').filter((r) => r.body.work === work),
    at,
  );

/** A list the site keeps for itself as one whole; the one written last stands. */
export type Said = 'stop-rules' | 'site-figures' | 'site-numbers' | 'retention' | 'lead-times' | 'site-notation';
export const lastSaid = <K extends Said>(current: Current, kind: K, at: string): Reading<K> | null =>
  lastOf(current.of(kind), at);

export const stopRulesAt = (current: Current, at: string): Reading<'stop-rules'> | null => lastOf(current.of('stop-rules'), at);
export const numbersAt = (current: Current, at: string): Reading<'site-numbers'> | null => lastOf(current.of('site-numbers'), at);
export const retentionAt = (current: Current, at: string): Reading<'retention'> | null => lastOf(current.of('retention'), at);

/** Numbers that somebody at a spill looks for first. */
export const numbersWanted: readonly NumberUse[] = ['emergency', 'poison-centre', 'remover', 'authority'];

/** Which of them the site has not entered by that moment. */
export function numbersMissing(current: Current, at: string): readonly NumberUse[] {
  const there = new Set(numbersAt(current, at)?.body.numbers.map((n) => n.for));
  return numbersWanted.filter((use) => !there.has(use));
}

/** The day up to which a record of that day is kept, for so many years: the same day of that year, or the last of its month. Null: no such day. */
export function keptUntil(moment: string, years: number): string | null {
  const day = dayOf(moment);
  const year = String(Number(day.slice(0, 4)) + years).padStart(4, '0');
  for (const on of [day.slice(8), '28']) {
    const until = `${year}${day.slice(4, 8)}${on}`;
    if (dayNumber(until) !== null) return until;
  }
  return null;
}
