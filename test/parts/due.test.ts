/** What falls due on Today: every sort of thing once, with its lead time, past ones first; a check of a person for the safety officer alone. */
import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import type { Hidden } from '../../app/core/book/may-see.ts';
import { aheadAt, dueAt } from '../../app/screens/today/due.ts';
import { todayOf } from '../../app/screens/today/today.ts';
import { todayWords } from '../../app/words/today.ts';
import { BookMaker, scaled } from '../core/book-maker.ts';

const now = '2026-06-01T09:00+13:00';
const officer = (what: Hidden) => what === 'personal-air';
const all = (book: BookMaker, sees?: (what: Hidden) => boolean) =>
  dueAt(readBook(book.entries), now, sees).map((due) => `${due.inDays} ${due.text}`);

/** One thing of each sort, on days before and after the first of June. */
function everything() {
  const book = BookMaker.site();
  book.add('fine scale', 'scale', {
    label: 'Fine scale',
    maximum: '6 kg',
    d: '0.1 g',
    certificate: { U: '0.2 g', at: '2000 g', due: '2026-06-20' },
  });
  book.add('meter', 'meter', { label: 'Vapour meter 2', calibrated: { on: '2025-06-05', due: '2026-06-05' } });
  book.add('pot inspected', 'retort', { of: book.pot, label: 'Pot retort', inspected: { on: '2025-05-20', due: '2026-05-20' } });
  const drum = book.add('drum', 'vessel', { label: 'Drum 4', use: 'drum' });
  book.add('waste', 'waste', { what: 'slag', drum, weight: scaled('900'), due: '2026-06-30' });
  book.add('fan', 'check-due', { what: 'extraction-test', done: 'yes', next: '2026-06-10' });
  book.add('doctor', 'check-due', { what: 'health-surveillance', person: book.keeper, done: 'yes', next: '2026-06-03' });
  book.add('licence', 'authority', {
    name: 'Gold licence',
    number: '12',
    body: 'an office',
    covers: 'melting',
    expiry: '2026-05-31',
  });
  book.add('permit', 'standing', {
    held: [{ what: 'stock' }],
    done: [{ what: 'authority', authority: { name: 'Plate permit', number: '7', expiry: '2026-06-15', covers: 'plates' } }],
  });
  book.add('said', 'lead-times', { leads: [], countEvery: 90 }, { happened: '2026-03-10T08:00+13:00' });
  return book;
}

describe('one list', () => {
  test('holds every sort of thing with the days left, those past first', () => {
    expect(all(everything(), officer)).toEqual([
      '-12 Inspection of Pot retort: 20 May 2026',
      '-1 Authority “Gold licence” ends: 31 May 2026',
      '2 Health surveillance, Keeper: 3 June 2026',
      '4 Calibration of the meter Vapour meter 2: 5 June 2026',
      '7 Stock-take of the whole, every 90 days by the site’s own word: 8 June 2026',
      '9 Test of the extraction: 10 June 2026',
      '14 Authority “Plate permit” ends: 15 June 2026',
      '19 Calibration of Fine scale: 20 June 2026',
      '29 Drum “Drum 4” must go by 30 June 2026',
    ]);
  });

  test('each line leads to where something can be done about it', () => {
    const hrefs = dueAt(readBook(everything().entries), now, officer).map((due) => due.href);
    expect(hrefs.every((href) => /^#\/(site|daybook|mercury)\//.test(href))).toBe(true);
    expect(new Set(hrefs).size).toBe(hrefs.length);
  });

  test('a check of a person is not told to anybody else, nor that there is a day; the list says where it is told', () => {
    const book = everything();
    const read = readBook(book.entries);
    expect(all(book).some((line) => line.includes('surveillance'))).toBe(false);
    expect(aheadAt(read, now).withheld).toBe(true);
    expect(aheadAt(read, now, officer).withheld).toBe(false);
    expect(aheadAt(readBook(BookMaker.site().entries), now).withheld).toBe(false);
  });

  test('what is out of use and who has left fall due no more', () => {
    const book = everything();
    book.add('meter gone', 'meter', {
      of: 'meter0',
      label: 'Vapour meter 2',
      calibrated: { on: '2025-06-05', due: '2026-06-05' },
      out: '2026-05-01',
    });
    book.add('keeper gone', 'person', { of: book.keeper, name: 'Keeper', roles: ['keeper'], left: '2026-05-01' });
    book.add('licence given back', 'authority', {
      of: 'licence',
      name: 'Gold licence',
      number: '12',
      body: 'an office',
      covers: 'melting',
      expiry: '2026-05-31',
      out: '2026-05-15',
    });
    const text = all(book, officer).join('\n');
    for (const gone of ['Vapour meter', 'surveillance', 'Gold licence']) expect(text).not.toContain(gone);
  });

  test('an authority that register and standing both name is told once', () => {
    const book = everything();
    book.add('plate permit', 'authority', {
      name: 'Plate permit',
      number: '7',
      body: 'an office',
      covers: 'plates',
      expiry: '2026-06-15',
    });
    expect(all(book).filter((line) => line.includes('Plate permit'))).toHaveLength(1);
  });
});

describe('lead times', () => {
  test('a thing is told of from its own lead time on, and what is past always', () => {
    const book = everything();
    const leads = [
      { of: 'scale' as const, days: 18 },
      { of: 'inspection' as const, days: 0 },
      { of: 'drum' as const, days: 29 },
    ];
    book.add('sooner', 'lead-times', { leads }, { happened: '2026-05-01T08:00+13:00' });
    const text = all(book).join('\n');
    expect(text).not.toContain('Fine scale');
    expect(text).toContain('Pot retort');
    expect(text).toContain('Drum 4');
    expect(text).not.toContain('Stock-take');
  });

  test('nothing due says until when was looked, for what has a lead time of its own as well', () => {
    const book = BookMaker.site();
    book.add('said', 'lead-times', { leads: [{ of: 'scale', days: 60 }] });
    const today = todayOf(readBook(book.entries), now, []);
    expect(today.sections.some((section) => section.key === 'due')).toBe(false);
    const { until, days, own } = today.ahead;
    expect(todayWords.lookedAhead(until, days, own)).toBe(
      'Looked ahead to 1 July 2026 (30 days); Calibration of scales: to 31 July 2026.',
    );
  });
});
