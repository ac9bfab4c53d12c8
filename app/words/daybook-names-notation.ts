/** How a site may write numbers, masses, temperatures and days, by name. */
import type { Notation } from '../core/book/site-notation.ts';

export const decimalNames: Readonly<Record<Notation['decimal'], string>> = {
  point: 'With a point: 12.5',
  comma: 'With a comma: 12,5',
};
export const massFormNames: Readonly<Record<Notation['masses'], string>> = {
  grams: 'Grams',
  troy: 'Troy ounces, with decimals',
};
export const temperatureNames: Readonly<Record<Notation['temperature'], string>> = {
  celsius: '°C',
  fahrenheit: '°F',
};
export const dayFormNames: Readonly<Record<Notation['days'], string>> = {
  words: '14 March 2026',
  'y-m-d': '2026-03-14',
  'd.m.y': '14.3.2026',
  'd/m/y': '14/3/2026, the day first',
  'm/d/y': '3/14/2026, the month first',
};
