/** What an account is reserved by: entries of its period, of the stocks it begins and ends with, and of the firings that showed what those held. Invented. */
import { expect, test } from 'vitest';
import { accountOf } from '../../app/core/book/account.ts';
import { readBook } from '../../app/core/book/book.ts';
import { BookMaker, scaled, stated } from './book-maker.ts';

const days = (from: string | null, to: string | null) => ({ from, to });
const on = (day: string) => ({ happened: `2026-${day}T09:00+13:00` });

/** A bottle filled in March, a doubtful weight received into another vessel in May, and a lot of March fired in April. */
function written(fired: 'weighed' | 'stated') {
  const book = BookMaker.site();
  book.add('received', 'receipt', { way: 'bought', vessel: book.bottle, weight: scaled('5000', book.bench) }, on('03-05'));
  const lot = `${book.add('clean-up', 'clean-up', { type: 'routine', lots: [{ key: '1', label: 'A', weight: scaled('400', book.bench) }] }, on('03-20'))}/1`;
  const charge = book.add(
    'charge',
    'charge',
    { retort: book.pot, rows: [{ take: 'whole', key: '1', lot, weight: scaled('400', book.bench) }] },
    on('04-10'),
  );
  const firing = book.add(
    'firing',
    'firing',
    {
      heats: [{ charge, sponge: fired === 'weighed' ? scaled('150', book.bench) : stated('150') }],
      mercury: { weight: scaled('247', book.bench), vessel: book.bottle },
    },
    on('04-11'),
  );
  const second = book.add('second', 'vessel', { label: 'Second bottle', use: 'bottle', mercury: 'new' }, on('05-01'));
  const doubtful = book.add('doubtful', 'receipt', { way: 'bought', vessel: second, weight: stated('900') }, on('05-02'));
  return { read: readBook(book.entries), firing, doubtful };
}
const reserved = (read: ReturnType<typeof readBook>, from: string | null, to: string | null) =>
  accountOf(read, days(from, to)).reservations.map((r) => r.entry);

test('an entry after the end of the period reserves nothing in it', () => {
  const { read, doubtful } = written('weighed');
  expect(reserved(read, '2026-03-01', '2026-03-31')).not.toContain(doubtful);
  expect(reserved(read, '2026-05-01', '2026-05-31')).toContain(doubtful);
  // carried on as stock it is a reservation of every later period
  expect(reserved(read, '2026-06-01', '2026-06-30')).toContain(doubtful);
});

test('a later firing that showed what a lot at the end of the period held reserves it, and none in which the lot was not', () => {
  const { read, firing } = written('stated');
  expect(reserved(read, '2026-03-01', '2026-03-31')).toContain(firing);
  expect(reserved(read, null, '2026-03-10')).not.toContain(firing);
});
