import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { uOf } from '../../app/core/measured.ts';
import { BookMaker, stated } from './book-maker.ts';

test('a lot is weighed again at charging and the drift against its label is kept', () => {
  const book = BookMaker.site();
  const [lot = ''] = book.lots('drift', ['212.4']);
  const charge = book.add('charge drift', 'charge', {
    retort: book.pot,
    rows: [{ take: 'whole', key: '1', lot, weight: stated('209.9', '0.1') }],
  });
  const got = readBook(book.entries);
  expect(got.lots.rows.get(charge)?.[0]?.drift?.ug).toBe(-2_500_000);
  expect(got.flags.get(charge)?.map((f) => f.code)).toContain('lot-drift');
  expect(got.charges.all.get(charge)?.total.net.ug).toBe(209_900_000);
});

test('a ball not found is a fact: flagged, missing on the book, and no weight of the charge', () => {
  const book = BookMaker.site();
  const [here = '', gone = ''] = book.lots('missing', ['100', '50']);
  const charge = book.add('charge missing', 'charge', {
    retort: book.pot,
    rows: [
      { take: 'whole', key: '1', lot: here, weight: stated('100', '0.1') },
      { take: 'not-found', key: '2', lot: gone },
    ],
  });
  const got = readBook(book.entries);
  expect(got.lots.all.get(gone)?.fate).toBe('not-found');
  expect(got.charges.all.get(charge)?.missing.net.ug).toBe(50_000_000);
  expect(got.charges.all.get(charge)?.total.net.ug).toBe(100_000_000);
  expect(got.flags.get(charge)?.map((f) => f.code)).toContain('lot-not-found');
});

test('a part taken leaves a child lot that carries the part’s error with the other sign', () => {
  const book = BookMaker.site();
  const [lot = ''] = book.lots('split', ['400']);
  const charge = book.add('charge split', 'charge', {
    retort: book.pot,
    rows: [{ take: 'part', key: '1', lot, weight: stated('150', '0.3') }],
  });
  const { all } = readBook(book.entries).lots;
  const [taken, rest] = [all.get(`${charge}/1a`), all.get(`${charge}/1b`)];
  expect(all.get(lot)?.fate).toBe('split');
  expect([taken?.fate, rest?.fate]).toEqual(['charged', 'in-safe']);
  expect(rest?.net.ug).toBe(250_000_000);
  const source = `${charge}:rows[0].weight`;
  expect(rest?.net.parts.get(source)).toBe(-(taken?.net.parts.get(source) ?? 0));
});

test('splitting by subtraction keeps the whole: parts and rest add up to the lot whatever was taken, and so does its error', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 399_999 }), fc.integer({ min: 1, max: 500 }), (takenMg, uMg) => {
      const book = BookMaker.site();
      const [lot = ''] = book.lots('whole', ['400'], book.bench);
      const charge = book.add('charge whole', 'charge', {
        retort: book.pot,
        rows: [{ take: 'part', key: '1', lot, weight: { how: 'stated', mass: `${takenMg} mg`, u: `${uMg} mg` } }],
      });
      const { all } = readBook(book.entries).lots;
      const [whole, a, b] = [all.get(lot), all.get(`${charge}/1a`), all.get(`${charge}/1b`)];
      expect((a?.net.ug ?? 0) + (b?.net.ug ?? 0)).toBe(whole?.net.ug);
      const parts = new Map(a?.net.parts);
      for (const [source, u] of b?.net.parts ?? []) parts.set(source, (parts.get(source) ?? 0) + u);
      expect(uOf({ ug: 0, parts })).toBeCloseTo(uOf(whole?.net ?? { ug: 0, parts: new Map() }), 6);
    }),
  );
});

test('the rest of a split lot can be charged later and split again, in whatever order it was written up', () => {
  const book = BookMaker.site();
  const [lot = ''] = book.lots('again', ['400']);
  const first = book.add('charge again one', 'charge', {
    retort: book.pot,
    rows: [{ take: 'part', key: '1', lot, weight: stated('150', '0.1') }],
  });
  book.add('charge again two', 'charge', {
    retort: book.pot,
    rows: [{ take: 'part', key: '1', lot: `${first}/1b`, weight: stated('100', '0.1') }],
  });
  const { all } = readBook([...book.entries].reverse()).lots;
  expect([...all.values()].filter((l) => l.fate === 'in-safe').map((l) => l.net.ug)).toEqual([150_000_000]);
});
