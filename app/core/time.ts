/**
 * Days and moments as text. A moment is local time with its offset from UTC ("2026-03-14T09:20+13:00"), so that what was on the clock on the
 * wall stays readable and two moments still compare. No clock is ever read here: whoever needs "now" is given it.
 */

const monthDays = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
/** Days before each month of a common year. */
const monthStarts = monthDays.map((_, month) => monthDays.slice(0, month).reduce((days, own) => days + own, 0));

// Digits are read one by one and days counted without a calendar object: a large book asks for some hundred thousand moments many times over.

/** The number in so many digits from `at` on; NaN where anything else stands there. */
function digits(text: string, at: number, count: number): number {
  let value = 0;
  for (let i = at; i < at + count; i++) {
    const digit = text.charCodeAt(i) - 48;
    if (!(digit >= 0 && digit <= 9)) return Number.NaN;
    value = value * 10 + digit;
  }
  return value;
}

const dash = 45;
const colon = 58;
const plus = 43;

/** Whole days since 1970-01-01 for the ten characters at the beginning; null when they are no day of the calendar. */
function dayAtStart(text: string): number | null {
  if (text.charCodeAt(4) !== dash || text.charCodeAt(7) !== dash) return null;
  const year = digits(text, 0, 4);
  const month = digits(text, 5, 2);
  const day = digits(text, 8, 2);
  if (!(year >= 1000 && month >= 1 && month <= 12 && day >= 1)) return null;
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  if (day > (monthDays[month - 1] ?? 0) + (leap && month === 2 ? 1 : 0)) return null;
  const before = year - 1;
  const leapDays = Math.floor(before / 4) - Math.floor(before / 100) + Math.floor(before / 400) + (leap && month > 2 ? 1 : 0);
  // 719,162 days lie before 1970 in the same calendar carried back to the year 1
  return before * 365 + leapDays + (monthStarts[month - 1] ?? 0) + day - 1 - 719_162;
}

/** Whole days since 1970-01-01 for a real calendar day; null for anything else ("2026-02-30"). */
export const dayNumber = (text: string): number | null => (text.length === 10 ? dayAtStart(text) : null);

/** The calendar day that lies so many whole days after 1970-01-01: `dayNumber` the other way round, for the years 1000 to 9999. */
export function dayFrom(number: number): string {
  // counted from a first of March, so that the leap day is the last of its year, in rounds of four hundred years
  const since = number + 719_468;
  const round = Math.floor(since / 146_097);
  const inRound = since - round * 146_097;
  const year = Math.floor(
    (inRound - Math.floor(inRound / 1460) + Math.floor(inRound / 36_524) - Math.floor(inRound / 146_096)) / 365,
  );
  const inYear = inRound - (365 * year + Math.floor(year / 4) - Math.floor(year / 100));
  const month = Math.floor((5 * inYear + 2) / 153);
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${year + round * 400 + (month < 10 ? 0 : 1)}-${two(month < 10 ? month + 3 : month - 9)}-${two(inYear - Math.floor((153 * month + 2) / 5) + 1)}`;
}

/** Minutes since 1970-01-01T00:00Z, with fractions for seconds; null when the text is no moment. */
export function minutesOf(moment: string): number | null {
  const day = dayAtStart(moment);
  if (day === null || moment.charAt(10) !== 'T' || moment.charCodeAt(13) !== colon) return null;
  const hour = digits(moment, 11, 2);
  const minute = digits(moment, 14, 2);
  let second = 0;
  let at = 16;
  if (moment.charCodeAt(at) === colon) {
    second = digits(moment, 17, 2);
    at = 19;
    if (moment.charAt(at) === '.') {
      const from = ++at;
      while (at < from + 3 && digits(moment, at, 1) >= 0) at++;
      if (at === from) return null;
    }
  }
  const sign = moment.charCodeAt(at);
  if ((sign !== plus && sign !== dash) || moment.charCodeAt(at + 3) !== colon || moment.length !== at + 6) return null;
  const offsetHour = digits(moment, at + 1, 2);
  const offsetMinute = digits(moment, at + 4, 2);
  if (!(hour <= 23 && minute <= 59 && second <= 59 && offsetHour <= 14 && offsetMinute <= 59)) return null;
  const offset = offsetHour * 60 + offsetMinute;
  return day * 1440 + hour * 60 + minute + second / 60 - (sign === dash ? -offset : offset);
}

export const isDay = (text: string): boolean => dayNumber(text) !== null;
export const isMoment = (text: string): boolean => minutesOf(text) !== null;

/** The calendar day on the wall at that moment. */
export const dayOf = (moment: string): string => moment.slice(0, 10);

/** The clock on the wall at that moment: "09:20". */
export const clockOf = (moment: string): string => moment.slice(11, 16);

/** Below zero when a is the earlier. Both must be moments. */
export const compareMoments = (a: string, b: string): number => (a === b ? 0 : (minutesOf(a) ?? 0) - (minutesOf(b) ?? 0));

/**
 * Below zero when the moment lies before the bound, 0 when at it or in it. A bound is a moment, or a whole day ("2026-03-14"): then the day on
 * the wall at that moment counts, whatever its offset, so that neighbouring days hold every moment exactly once.
 */
export const compareWithBound = (moment: string, bound: string): number => {
  if (bound.length > 10) return compareMoments(moment, bound);
  const day = dayOf(moment);
  return day < bound ? -1 : day > bound ? 1 : 0;
};
