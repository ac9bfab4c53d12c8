/** One value of an entry as it is told where two readings stand side by side: in the site's notation, its digits as they were kept. */
import { massAsRead, spaced } from './daybook-weights.ts';
import { notation } from './notation.ts';
import { degreesText, degreeUnit } from './temperatures.ts';

/** Names of fields below which numbers are degrees Celsius, and of one that is a difference of two. */
const degrees = /(?:^|[^U])C$/;
const difference = 'temperatureUC';

const quantity = /^(?:\d+(?:\.\d+)? [a-z-]+ ?)+$/;

/** The value below the names it stands under; what is neither number, mass nor volume stays as it is. */
export function recordValue(names: readonly string[], value: unknown): string {
  if (typeof value === 'number') {
    if (names.includes(difference)) return spaced(String(notation().temperature === 'celsius' ? value : (value * 9) / 5));
    return names.some((name) => degrees.test(name)) ? degreesText(value) : spaced(String(value));
  }
  const text = String(value);
  return quantity.test(text) ? massAsRead(text) : text;
}

/** The name of such a field with the unit its value is told in. */
export const inDegrees = (name: string): string => name.replace('°C', degreeUnit());
