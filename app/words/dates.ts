/** Days and clocks as people read them. No month is ever a bare number unless the site chose a form that has it so (notation.ts). */
import { notation } from './notation.ts';

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

/** "14 March 2026" from "2026-03-14" or from a moment, or as the site writes days; the text itself where it is no day. */
export function dayText(day: string): string {
  const m = /^(\d{4})-(\d{2})-(\d{2})/.exec(day);
  const month = m ? months[Number(m[2]) - 1] : undefined;
  if (!m || !month) return day;
  const [d, mon, y] = [Number(m[3]), Number(m[2]), m[1]];
  switch (notation().days) {
    case 'words':
      return `${d} ${month} ${y}`;
    case 'y-m-d':
      return m[0];
    case 'd.m.y':
      return `${d}.${mon}.${y}`;
    case 'd/m/y':
      return `${d}/${mon}/${y}`;
    case 'm/d/y':
      return `${mon}/${d}/${y}`;
  }
}

/** "09:20" from a moment. */
export const clockText = (moment: string): string => moment.slice(11, 16);

/** "14 March 2026, 09:20" from a moment. */
export const momentText = (moment: string): string => `${dayText(moment)}, ${clockText(moment)}`;
