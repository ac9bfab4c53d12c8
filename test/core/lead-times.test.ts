/** Lead times: the site's own, else thirty days; the next count of the whole; and days counted on the calendar. */
import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { leadDaysAt, nextCount, usualLeadDays } from '../../app/core/book/lead-times.ts';
import { dueThings } from '../../app/core/kinds/site-says.ts';
import { dayFrom, dayNumber } from '../../app/core/time.ts';
import { BookMaker, scaled } from './book-maker.ts';

const now = '2026-06-01T09:00+13:00';
const of = (book: BookMaker) => readBook(book.entries).current;

describe('a day by its number', () => {
  test('is the day whose number it is, over leap days and centuries, held against the calendar of the language', () => {
    for (let number = -354_285; number < 2_932_000; number += 97) {
      const iso = new Date(number * 86_400_000).toISOString().slice(0, 10);
      expect(dayFrom(number)).toBe(iso);
      expect(dayNumber(iso)).toBe(number);
    }
  });

  test('goes over the end of February as the year asks', () => {
    const after = (day: string) => dayFrom((dayNumber(day) ?? 0) + 1);
    expect([after('2024-02-28'), after('2026-02-28'), after('1900-02-28'), after('2000-02-28')]).toEqual([
      '2024-02-29',
      '2026-03-01',
      '1900-03-01',
      '2000-02-29',
    ]);
  });
});

describe('how long before', () => {
  test('is thirty days for everything where the site has said nothing', () => {
    expect(new Set(Object.values(leadDaysAt(of(BookMaker.site()), now)))).toEqual(new Set([usualLeadDays]));
    expect(usualLeadDays).toBe(30);
  });

  test('is what the site said last for a thing, and thirty days for what it left out; not before it said so', () => {
    const book = BookMaker.site();
    book.add('said', 'lead-times', { leads: [{ of: 'scale', days: 60 }] }, { happened: '2026-03-01T08:00+13:00' });
    book.add('said anew', 'lead-times', { leads: [{ of: 'drum', days: 0 }] }, { happened: '2026-05-01T08:00+13:00' });
    expect(leadDaysAt(of(book), '2026-04-01T08:00+13:00')).toMatchObject({ scale: 60, drum: 30 });
    const last = leadDaysAt(of(book), now);
    expect(dueThings.filter((thing) => last[thing] !== 30)).toEqual(['drum']);
    expect(leadDaysAt(of(book), '2026-02-01T08:00+13:00').scale).toBe(30);
  });
});

describe('the next count', () => {
  const count = { lines: [{ how: 'weighed' as const, place: 'vessel/bottle', weight: scaled('1') }] };

  test('is not asked for where the site set no interval', () => {
    const book = BookMaker.site();
    book.add('counted', 'stock-take', { scope: 'whole', ...count });
    book.add('said', 'lead-times', { leads: [] });
    expect(nextCount(of(book), now)).toBeNull();
  });

  test('runs from the day the interval was set, and from the last count of the whole once there is one', () => {
    const book = BookMaker.site();
    book.add('said', 'lead-times', { leads: [], countEvery: 90 }, { happened: '2026-03-01T08:00+13:00' });
    expect(nextCount(of(book), now)).toEqual({ day: '2026-05-30', everyDays: 90, last: null });
    book.add('counted', 'stock-take', { scope: 'whole', ...count }, { happened: '2026-05-10T08:00+13:00' });
    book.add('in part', 'stock-take', { scope: 'part', ...count }, { happened: '2026-05-20T08:00+13:00' });
    expect(nextCount(of(book), now)).toEqual({ day: '2026-08-08', everyDays: 90, last: '2026-05-10' });
  });
});
