/** A day as it is typed in the form the site writes days in, and the ISO text of it. Four figures for the year, always: a shorter one is never guessed. */
import { dayNumber } from '../core/time.ts';
import { dayText } from '../words/dates.ts';
import { notation } from '../words/notation.ts';

const orders = { 'd.m.y': ['d', 'm', 'y'], 'd/m/y': ['d', 'm', 'y'], 'm/d/y': ['m', 'd', 'y'] } as const;

/** Whether the field is the site's own; else the machine's, which shows the day its own way. */
export const typesDays = (): boolean => notation().days !== 'words';

/** The ISO day of what was typed; null where it is none in this form. An ISO day is one in every form. */
export function dayTyped(text: string): string | null {
  const typed = text.trim();
  if (dayNumber(typed) !== null) return typed;
  const { days } = notation();
  if (days === 'words' || days === 'y-m-d') return null;
  const mark = days === 'd.m.y' ? '\\.' : '/';
  const m = new RegExp(`^(\\d{1,2})${mark}(\\d{1,2})${mark}(\\d{4})$`).exec(typed.replaceAll(' ', ''));
  if (!m) return null;
  const part = (which: 'd' | 'm' | 'y'): string => (m[orders[days].indexOf(which as never) + 1] ?? '').padStart(2, '0');
  const iso = `${part('y')}-${part('m')}-${part('d')}`;
  return dayNumber(iso) === null ? null : iso;
}

/** What the field shows of what the form holds: a day in the site's form, anything else as it was typed. */
export const dayShown = (held: string): string => (dayNumber(held) === null ? held : dayText(held));
