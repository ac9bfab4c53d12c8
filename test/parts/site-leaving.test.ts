/** The register of what leaves the site: drums here with their days, what was sent with its papers, and the same as CSV. */
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { drumRows, sentCsv, sentRows } from '../../app/screens/site/leaving-rows.ts';
import { BookMaker, stated } from '../core/book-maker.ts';

const now = '2026-06-01T12:00+13:00';
const on = (day: string) => ({ happened: `${day}T09:00+13:00` });
const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

function site() {
  const book = BookMaker.site();
  const drum = book.add('drum one', 'vessel', { label: 'Drum one', use: 'drum' }, on('2026-03-01'));
  const other = book.add('drum two', 'vessel', { label: 'Drum two', use: 'drum' }, on('2026-03-01'));
  book.add('w1', 'waste', { drum, what: 'Cloths', weight: stated('1200'), due: '2026-05-20', code: 'Hg 1' }, on('2026-03-02'));
  book.add('w2', 'waste', { drum: other, what: 'Sweepings', weight: stated('300') }, on('2026-03-03'));
  book.add(
    'sent',
    'transfer',
    {
      way: 'out',
      what: 'waste',
      party: '=Remover & Co',
      vessel: other,
      weight: stated('310'),
      carrier: 'Licensed carrier',
      document: 'C-17',
      checks: [
        { check: 'who-may-carry', answer: 'yes' },
        { check: 'taker-ready', answer: 'no', note: 'letter still to come' },
      ],
      theirs: { weight: stated('309'), on: '2026-04-20', document: 'T-4' },
    },
    on('2026-04-12'),
  );
  book.add('bar', 'transfer', { way: 'out', what: 'bar', party: 'Refiner' }, on('2026-04-13'));
  book.add('came', 'transfer', { way: 'in', what: 'mercury', party: 'Neighbour' }, on('2026-04-14'));
  book.add('keeps', 'retention', { periods: [{ records: 'waste', years: 3, source: 'House rule' }] }, on('2026-03-05'));
  return readBook(book.entries);
}

test('a drum that stands here is told with its day, past or not; one that left is not among them', () => {
  expect(drumRows(site(), now).map((r) => ({ ...r, href: '', inIt: plain(r.inIt) }))).toEqual([
    {
      label: 'Drum one',
      href: '',
      begun: '2 March 2026',
      inIt: '1 200.00 g',
      codes: 'Hg 1',
      due: '20 May 2026',
      standing: 'past by 12 days',
    },
  ]);
});

test('what was sent away is told with papers, both weights, its checks and how long its papers are kept; bars and what came in are not', () => {
  const rows = sentRows(site(), now);
  expect(rows).toHaveLength(1);
  expect(rows[0]).toMatchObject({
    day: '12 April 2026',
    what: 'Waste or sweepings: Drum two',
    weight: '310',
    theirs: '309',
    to: '=Remover & Co',
    carrier: 'Licensed carrier',
    document: 'C-17',
    theirDocument: 'T-4',
    checks: '2 of 6, 1 answered no',
    keptUntil: '12 April 2029',
  });
});

test('the copy reads back as the same cells, and no cell begins a formula', () => {
  const { data } = Papa.parse<string[]>(sentCsv(sentRows(site(), now)).trim());
  expect(data).toHaveLength(2);
  expect(data[1]?.slice(0, 2)).toEqual(['2026-04-12', 'Waste or sweepings: Drum two']);
  expect(data.flat().filter((cell) => /^[=+\-@]/.test(cell))).toEqual([]);
});
