/**
 * Days and moments as text. A moment is local time with its offset from UTC ("2026-03-14T09:20+13:00"), so that what was on the clock on the
 * wall stays readable and two moments still compare. No clock is ever read here: whoever needs "now" is given it.
 */

const dayPattern = /^(\d{4})-(\d{2})-(\d{2})$/;
const momentPattern = /^(\d{4}-\d{2}-\d{2})T(\d{2}):(\d{2})(?::(\d{2})(?:\.\d{1,3})?)?([+-])(\d{2}):(\d{2})$/;

/** Whole days since 1970-01-01 for a real calendar day; null for anything else ("2026-02-30"). */
export function dayNumber(text: string): number | null {
  const m = dayPattern.exec(text);
  if (!m) return null;
  const [year, month, day] = [Number(m[1]), Number(m[2]), Number(m[3])];
  const ms = Date.UTC(year, month - 1, day);
  const back = new Date(ms);
  return year >= 1000 && back.getUTCMonth() === month - 1 && back.getUTCDate() === day ? Math.round(ms / 86_400_000) : null;
}

/** Minutes since 1970-01-01T00:00Z, with fractions for seconds; null when the text is no moment. */
export function minutesOf(moment: string): number | null {
  const m = momentPattern.exec(moment);
  if (!m) return null;
  const day = dayNumber(m[1] ?? '');
  const [hour, minute, second] = [Number(m[2]), Number(m[3]), Number(m[4] ?? 0)];
  const offset = Number(m[6]) * 60 + Number(m[7]);
  if (day === null || hour > 23 || minute > 59 || second > 59 || Number(m[6]) > 14 || Number(m[7]) > 59) return null;
  return day * 1440 + hour * 60 + minute + second / 60 - (m[5] === '-' ? -offset : offset);
}

export const isDay = (text: string): boolean => dayNumber(text) !== null;
export const isMoment = (text: string): boolean => minutesOf(text) !== null;

/** The calendar day on the wall at that moment. */
export const dayOf = (moment: string): string => moment.slice(0, 10);

/** The clock on the wall at that moment: "09:20". */
export const clockOf = (moment: string): string => moment.slice(11, 16);

/** Below zero when a is the earlier. Both must be moments. */
export const compareMoments = (a: string, b: string): number => (minutesOf(a) ?? 0) - (minutesOf(b) ?? 0);

/**
 * Below zero when the moment lies before the bound, 0 when at it or in it. A bound is a moment, or a whole day ("2026-03-14"): then the day on
 * the wall at that moment counts, whatever its offset, so that neighbouring days hold every moment exactly once.
 */
export const compareWithBound = (moment: string, bound: string): number => {
  if (bound.length > 10) return compareMoments(moment, bound);
  const day = dayOf(moment);
  return day < bound ? -1 : day > bound ? 1 : 0;
};
