/** Entries written more than a week after what they tell of. Copies out of an older book are late by nature and say so. Method: contemporaneous, methods.md 8.1. */
import { dayNumber, dayOf, minutesOf } from '../../time.ts';
import type { Book } from '../book.ts';
import { type OutOfStep, ofEntry } from './item.ts';

/** Days after which an entry is late. */
export const lateDays = 7;

export const lateOutOfStep = (book: Book): OutOfStep[] =>
  [...book.current.byId.values()].flatMap(({ id, happened, entry, struck }) => {
    const late = (minutesOf(entry.written) ?? 0) - (minutesOf(happened) ?? 0) > lateDays * 1440;
    return !struck && late
      ? [
          ofEntry('late', 'written-late', id, happened, {
            // as a person counts them on a calendar
            days: (dayNumber(dayOf(entry.written)) ?? 0) - (dayNumber(dayOf(happened)) ?? 0),
            happened,
            written: entry.written,
            book: entry.transcribed?.book ?? '',
          }),
        ]
      : [];
  });
