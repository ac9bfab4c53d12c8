/** Days and clocks as people read them. No month is ever a bare number. */

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** "14 March 2026" from "2026-03-14" or from a moment; the text itself where it is no day. */
export function dayText(day: string): string {
  const m = /^(\d{4})-(\d{2})-(\d{2})/.exec(day);
  const month = m ? months[Number(m[2]) - 1] : undefined;
  return m && month ? `${Number(m[3])} ${month} ${m[1]}` : day;
}

/** "09:20" from a moment. */
export const clockText = (moment: string): string => moment.slice(11, 16);

/** "14 March 2026, 09:20" from a moment. */
export const momentText = (moment: string): string => `${dayText(moment)}, ${clockText(moment)}`;
