/** Every weight an entry holds, found by its shape and named by the field it stands in, so that no reading of it stays off the paper. */
import type { Book } from '../core/book/book.ts';
import type { Reading } from '../core/book/current.ts';
import { weighedFrom } from '../core/book/weights.ts';
import { weight } from '../core/shapes.ts';
import { commonWords } from '../words/papers-common.ts';
import { fieldText } from '../words/record-fields.ts';
import type { RunReading } from './run-sheet/readings.ts';

/** All weights of one entry as it reads now, in the order they stand in it. */
export function weighingsOf(book: Book, reading: Reading): RunReading[] {
  const found: RunReading[] = [];
  const walk = (value: unknown, path: string): void => {
    if (typeof value !== 'object' || value === null) return;
    if ('how' in value) {
      const read = weight.safeParse(value);
      if (read.success) {
        const weighed = weighedFrom(read.data, { entry: reading.id, path, at: reading.happened }, book.registers);
        found.push({ what: commonWords.capital(fieldText(path)), at: reading.happened, weighed });
        return;
      }
    }
    if (Array.isArray(value)) for (const [i, item] of value.entries()) walk(item, `${path}[${i}]`);
    else for (const [key, item] of Object.entries(value)) walk(item, path === '' ? key : `${path}.${key}`);
  };
  walk(reading.body, '');
  return found;
}
