/** How long the site keeps which records, against what is in the book. */
import { expect, it } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { keepingAt } from '../../app/core/book/kept-until.ts';
import { BookMaker } from './book-maker.ts';

const on = (day: string) => ({ happened: `${day}T09:00+13:00` });

it('each period tells the oldest and newest record it is about and the day up to which it is kept; the others are told as not known or not here', () => {
  const book = BookMaker.site();
  book.add('slip', 'incident', { what: 'Somebody slipped' }, on('2024-02-29'));
  book.add('drop', 'spill', { where: 'Bench', insideIssue: 'na' }, on('2026-03-05'));
  book.add(
    'kept',
    'retention',
    {
      periods: [
        { records: 'incidents', years: 5, source: 'House rule 4' },
        { records: 'personal-air', years: 40, source: 'House rule 5' },
        { records: 'other', which: 'Letters', years: 10, source: 'House rule 6' },
      ],
    },
    on('2026-03-06'),
  );
  const { current } = readBook(book.entries);
  expect(keepingAt(current, '2026-03-05T09:00+13:00')).toEqual([]);
  expect(keepingAt(current, '2026-03-07T09:00+13:00')).toEqual([
    {
      records: 'incidents',
      which: '',
      years: 5,
      source: 'House rule 4',
      count: 2,
      first: { day: '2024-02-29', until: '2029-02-28' },
      last: { day: '2026-03-05', until: '2031-03-05' },
    },
    { records: 'personal-air', which: '', years: 40, source: 'House rule 5', count: 0, first: null, last: null },
    { records: 'other', which: 'Letters', years: 10, source: 'House rule 6', count: null, first: null, last: null },
  ]);
});
