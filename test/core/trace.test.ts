/** Tracing: every movement leads down to what was read and what makes it uncertain, and from every entry to the accounts it stands in and back. */
import { describe, expect, test } from 'vitest';
import { type Book, readBook } from '../../app/core/book/book.ts';
import { inPeriod } from '../../app/core/book/period.ts';
import { periodsOf } from '../../app/core/book/periods.ts';
import { entriesIn, touchesOf } from '../../app/core/book/touches.ts';
import { traceOf, tracesOf } from '../../app/core/book/trace.ts';
import type { Entry } from '../../app/core/entry.ts';
import { uOf } from '../../app/core/measured.ts';
import { eighteenMonths } from '../../main/host/sample/eighteen-months.ts';
import { generated } from '../../main/host/sample/large.ts';
import { journalOf } from '../../main/host/sample/write.ts';
import { BookMaker, scaled, stated } from './book-maker.ts';

/** A told story as a book; every count of it is one of the whole, so that periods lie between them. */
function bookOf(story: Parameters<typeof journalOf>[0]): Book {
  const lines = journalOf(story).trimEnd().split('\n');
  const entries = lines.map((line) => JSON.parse(line) as Entry);
  return readBook(entries.map((e) => (e.kind === 'stock-take' ? { ...e, body: { ...e.body, scope: 'whole' } } : e)));
}

const books: readonly { readonly name: string; readonly read: () => Book }[] = [
  { name: 'eighteen months of the sample site', read: () => bookOf(eighteenMonths()) },
  ...[1, 2, 3].map((seed) => ({ name: `a generated book, seed ${seed}`, read: () => bookOf(generated(400, seed)) })),
];

describe.each(books)('$name', ({ read }) => {
  const book = read();
  const periods = periodsOf(book);

  test('every movement stands in an entry, and its sources add up to its uncertainty', () => {
    expect(book.movements.all.length).toBeGreaterThan(50);
    for (const movement of book.movements.all) {
      const { reading, sources } = traceOf(book, movement);
      expect(reading?.id).toBe(movement.entry);
      expect(Math.sqrt(sources.reduce((s, { uUg }) => s + uUg ** 2, 0))).toBeCloseTo(uOf(movement.mercury), 3);
      if (sources.length > 0) expect(sources.reduce((s, { share }) => s + share, 0)).toBeCloseTo(1, 9);
    }
  });

  test('every reading that a movement depends on is found in its entry, with what makes its uncertainty', () => {
    let found = 0;
    for (const movement of book.movements.all) {
      const { sources, weights } = traceOf(book, movement);
      for (const { entry, path } of sources)
        if (entry !== null && path !== '') {
          const weight = weights.find((w) => w.entry === entry && (w.path === path || `${w.path}:temperature` === path));
          expect([movement.entry, path, weight === undefined]).toEqual([movement.entry, path, false]);
          found += 1;
        }
      for (const { components, weighed } of weights)
        expect(Math.sqrt(components.reduce((s, { uUg }) => s + uUg ** 2, 0))).toBeCloseTo(uOf(weighed.net), 3);
    }
    expect(found).toBeGreaterThan(50);
  });

  test('every movement of a scale’s reading leads to that scale’s calibration', () => {
    for (const movement of book.movements.all)
      for (const { weight, weighed } of traceOf(book, movement).weights)
        if (weight.how === 'scale' && weight.scale !== undefined) {
          expect(weighed.scale).not.toBeNull();
          expect(book.current.byId.get(weighed.scale?.entry ?? '')?.kind).toBe('scale');
        }
  });

  test('every movement’s entry leads to each counted period it stands in', () => {
    expect(periods.length).toBeGreaterThan(0);
    for (const movement of book.movements.all) {
      const theirs = touchesOf(book, movement.entry).periods.map((p) => p.key);
      const ours = periods.filter(({ period }) => inPeriod(movement.at, period)).map((p) => p.key);
      expect(theirs).toEqual(expect.arrayContaining(ours));
    }
  });

  test('and back: each counted period names that entry, and no period leads to an entry that it does not rest on', () => {
    for (const counted of periods) {
      const entries = entriesIn(book, counted);
      const inside = book.movements.all.filter((m) => inPeriod(m.at, counted.period));
      for (const m of inside) expect(entries.has(m.entry)).toBe(true);
      // held against the text of the sources alone
      const text = `\n${inside.flatMap((m) => [m.entry, ...m.mercury.parts.keys()]).join('\n')}\n`;
      for (const entry of entries) {
        expect(text.includes(entry)).toBe(true);
        expect(touchesOf(book, entry).periods.map((p) => p.key)).toContain(counted.key);
      }
    }
  });

  test('every scale that was read leads to the periods its readings stand in', () => {
    for (const scale of book.current.of('scale')) {
      const resting = book.movements.all.filter((m) => m.mercury.parts.has(`scale:${scale.id}`));
      const theirs = touchesOf(book, scale.id).periods.map((p) => p.key);
      for (const m of resting) for (const { key, period } of periods) if (inPeriod(m.at, period)) expect(theirs).toContain(key);
    }
  });
});

describe('one weighing', () => {
  const site = () => {
    const book = BookMaker.site();
    const fine = book.add('fine scale', 'scale', {
      label: 'Fine scale',
      maximum: '6 kg',
      d: '0.01 g',
      s: '0.018 g',
      linearity: '0.02 g',
      certificate: { U: '0.03 g', k: 2, at: '2000 g', number: 'C 1', on: '2026-01-10' },
    });
    return { book, fine };
  };

  test('opens to repeatability, division, linearity and certificate, each by its own rule', () => {
    const { book, fine } = site();
    const weight = { ...scaled('2912.40', fine), tare: '412.15 g' };
    const receipt = book.add('receipt', 'receipt', { vessel: book.bottle, way: 'given', weight });
    const [trace] = tracesOf(readBook(book.entries), receipt);
    const u = Object.fromEntries((trace?.weights[0]?.components ?? []).map(({ kind, uUg }) => [kind, uUg / 1e6]));
    // methods.md 3.1, by hand: s√2, d/√6, a√2/√3, and U/k in proportion to the net of 2500.25 g
    expect(u.repeatability).toBeCloseTo(0.018 * Math.SQRT2, 9);
    expect(u.division).toBeCloseTo(0.01 / Math.sqrt(6), 9);
    expect(u.linearity).toBeCloseTo((0.02 * Math.SQRT2) / Math.sqrt(3), 9);
    expect(u.certificate).toBeCloseTo((0.015 * 2500.25) / 2000, 9);
    expect(trace?.weights[0]?.weighed.scale?.body.certificate?.number).toBe('C 1');
  });

  test('of no known uncertainty is shown all the same', () => {
    const { book } = site();
    const receipt = book.add('receipt', 'receipt', { vessel: book.bottle, way: 'given', weight: stated('50') });
    const [trace] = tracesOf(readBook(book.entries), receipt);
    expect(trace?.weights.map((w) => [w.path, w.components])).toEqual([['weight', []]]);
    expect(trace?.sources).toEqual([]);
  });
});

describe('an entry', () => {
  const year = () => {
    const book = BookMaker.site();
    book.add('stock', 'receipt', { vessel: book.bottle, way: 'already-here', weight: stated('1000', '0.1') });
    const [lot = ''] = book.lots('march', ['400'], book.bench);
    const charge = book.add('charge', 'charge', {
      retort: book.pot,
      rows: [{ take: 'whole', key: '1', lot, weight: scaled('400', book.bench) }],
    });
    const firing = book.add('firing', 'firing', {
      heats: [{ charge, sponge: scaled('152', book.bench) }],
      mercury: { weight: scaled('247', book.bench), vessel: book.bottle },
      water: stated('0', '0.01'),
    });
    return { book, cleanUp: lot.split('/')[0] ?? '', lot, charge, firing };
  };

  test('of a firing leads to its run, the clean-up’s yield, the vessel’s register and the account', () => {
    const { book, cleanUp, charge, firing } = year();
    const touched = touchesOf(readBook(book.entries), firing);
    expect(touched.runs.map((r) => r.id)).toEqual([charge]);
    expect(touched.yields).toEqual([cleanUp]);
    expect(touched.papers).toEqual([
      { paper: 'mercury-account', id: '' },
      { paper: 'mercury-register', id: book.bottle },
      { paper: 'run-sheet', id: charge },
    ]);
    // what the clean-up moved is trued up by this firing: it rests on it
    expect(touched.resting.map((m) => m.entry)).toContain(cleanUp);
  });

  test('that corrects, strikes or notes upon another touches what that one touches', () => {
    const { book, firing } = year();
    const note = book.add('note', 'note', { text: 'x', about: firing });
    const read = readBook(book.entries);
    expect(touchesOf(read, note)).toEqual(touchesOf(read, firing));
  });

  test('of a clean-up leads to its lot and the run the lot went into', () => {
    const { book, cleanUp, lot, charge } = year();
    const touched = touchesOf(readBook(book.entries), cleanUp);
    expect(touched.lots.map((l) => l.id)).toEqual([lot]);
    expect(touched.runs.map((r) => r.id)).toEqual([charge]);
  });

  test('that moves nothing and on which nothing rests touches no account', () => {
    const { book } = year();
    const note = book.add('note', 'note', { text: 'x' });
    const { own, resting, periods, closings, papers } = touchesOf(readBook(book.entries), note);
    expect([own, resting, periods, closings, papers]).toEqual([[], [], [], [], []]);
  });
});
