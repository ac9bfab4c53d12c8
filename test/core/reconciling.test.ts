/**
 * The readings of a run held against one another: agreeing ones are adjusted beside the raw ones, a transposed figure is found and asked about, and
 * where nothing says the same thing twice nothing is made up. Figures in the manner of methods.md WE-8 and WE-9, through whole books.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Book, readBook } from '../../app/core/book/book.ts';
import { changeShare } from '../../app/core/book/reconciling/readings.ts';
import { type NotReconciled, type Reconciling, reconciling } from '../../app/core/book/reconciling.ts';
import { toNumber } from '../../app/core/decimal.ts';
import { transpositions } from '../../app/core/transposed.ts';
import { BookMaker, scaled, stated } from './book-maker.ts';

type Site = ReturnType<typeof BookMaker.site>;

interface Figures {
  /** Label weights, and what the scale said at charging. */
  readonly labels: readonly string[];
  readonly charged: readonly string[];
  readonly sponge?: string;
  readonly mercury?: string;
  readonly water?: string | null;
  readonly melt?: string;
}

/** A run of whole lots, all on one scale. */
function runOf(site: Site, { labels, charged, sponge, mercury, water = '0', melt }: Figures): Book {
  const lots = site.lots('balls', labels, site.bench);
  const charge = site.add('charge', 'charge', {
    retort: site.pot,
    rows: lots.map((lot, i) => ({
      take: 'whole' as const,
      key: String(i + 1),
      lot,
      weight: scaled(charged[i] ?? '0', site.bench),
    })),
  });
  if (sponge !== undefined && mercury !== undefined)
    site.add('firing', 'firing', {
      heats: [{ charge, sponge: scaled(sponge, site.bench) }],
      mercury: { weight: scaled(mercury, site.bench), vessel: site.bottle, state: 'dry' },
      ...(water === null ? {} : { water: scaled(water, site.bench) }),
    });
  if (melt !== undefined)
    site.add('melt', 'melt', {
      sponges: [{ charge, weight: scaled(melt, site.bench) }],
      bars: [{ key: '1', label: 'Bar', weight: scaled('70', site.bench) }],
    });
  return readBook(site.entries);
}

function asked(book: Book): Reconciling {
  const got = unasked(book);
  if ('none' in got) throw new Error(`nothing was reconciled: ${got.none}`);
  return got;
}
function unasked(book: Book): Reconciling | NotReconciled {
  const [run] = book.runs;
  if (!run) throw new Error('there is no run');
  return reconciling(book, run);
}
const names = (got: Reconciling, which: readonly number[]) => which.map((i) => `${got.terms[i]?.kind} ${got.terms[i]?.of}`);

describe('readings that agree', () => {
  test('pass, and every sum comes to nothing in the adjusted values', () => {
    const got = asked(
      runOf(BookMaker.site(), {
        labels: ['215.41', '188.02', '302.77'],
        charged: ['215.40', '188.03', '302.75'],
        sponge: '268.30',
        mercury: '434.10',
        melt: '268.31',
      }),
    );
    expect(got.result.passes).toBe(true);
    expect([got.suspects, got.swaps]).toEqual([[], []]);
    expect(got.sums.map((s) => s.kind)).toEqual(['lot', 'lot', 'lot', 'sponge', 'run']);
    for (const sum of got.sums) {
      const left = [...sum.terms].reduce(
        (s, [term, sign]) => s + sign * (got.result.adjusted?.[got.terms.indexOf(term)] ?? Number.NaN),
        0,
      );
      expect(left, sum.kind).toBeCloseTo(0, 6);
    }
  });

  test('one lot against its label: the difference is shared out by the squares of the errors, as reckoned by hand', () => {
    const site = BookMaker.site();
    const clean = site.add('balls', 'clean-up', {
      type: 'routine',
      lots: [{ key: '1', label: 'A', weight: stated('100.6', '0.3'), state: 'squeezed', source: 'outside-plate' }],
    });
    site.add('charge', 'charge', {
      retort: site.pot,
      rows: [{ take: 'whole', key: '1', lot: `${clean}/1`, weight: stated('100', '0.4') }],
    });
    const got = asked(readBook(site.entries));
    const changed = (changeShare / 2) * 100.6;
    const h = 0.3 ** 2 + 0.4 ** 2 + changed ** 2;
    expect(got.result.global).toBeCloseTo(0.6 ** 2 / h, 6);
    const at = (kind: string) => got.result.adjusted?.[got.terms.findIndex((t) => t.kind === kind)];
    expect(at('label')).toBeCloseTo(100.6 - (0.6 * 0.3 ** 2) / h, 6);
    expect(at('charged')).toBeCloseTo(100 + (0.6 * 0.4 ** 2) / h, 6);
  });

  test('change nothing in the book: every reading stands as it was read', () => {
    const site = BookMaker.site();
    const before = JSON.stringify(site.entries);
    const book = runOf(site, { labels: ['251.40', '188.02'], charged: ['215.40', '188.03'], sponge: '150', mercury: '253' });
    const entries = JSON.stringify(site.entries);
    const got = asked(book);
    expect(entries).not.toBe(before);
    expect(JSON.stringify(site.entries)).toBe(entries);
    expect(got.terms.find((t) => t.kind === 'label')?.as).toMatchObject({ gross: '251.40 g' });
  });

  test('a loss within the run’s own band is no contradiction, and is left to the term of its own', () => {
    const got = asked(runOf(BookMaker.site(), { labels: ['500'], charged: ['500'], sponge: '200', mercury: '292' }));
    expect(got.result.passes).toBe(true);
    const stayed = got.terms.findIndex((t) => t.kind === 'stayed');
    // 8 g of 500 are missing, the band is 10: nearly all of it stays a loss and is not spread over the readings
    expect(got.result.adjusted?.[stayed]).toBeGreaterThan(7.9);
    for (const [i, term] of got.terms.entries())
      if (term.as) expect(Math.abs((got.result.adjusted?.[i] ?? 0) - toNumber(term.grams)), term.kind).toBeLessThan(0.1);
  });
});

describe('readings that do not agree', () => {
  test('a figure transposed at charging stands out alone, and the swap that closes everything is asked about', () => {
    const got = asked(
      runOf(BookMaker.site(), {
        labels: ['215.40', '188.02', '302.77'],
        charged: ['251.40', '188.03', '302.75'],
        sponge: '268.30',
        mercury: '434.10',
      }),
    );
    expect(got.result.passes).toBe(false);
    expect(got.result.adjusted).toBeNull();
    expect(names(got, got.suspects)).toEqual(['charged balls A']);
    expect(got.orElse).toEqual([]);
    expect(got.swaps).toHaveLength(1);
    expect(got.swaps[0]).toMatchObject({ term: got.suspects[0], part: 'gross', was: '251.40 g', wouldBe: '215.40 g' });
    expect(got.terms[got.suspects[0] ?? -1]).toMatchObject({ entry: 'charge', field: 'rows[0].weight' });
  });

  test('a transposed label looks like a lot that changed, and both are said', () => {
    const got = asked(
      runOf(BookMaker.site(), {
        labels: ['251.40', '188.02'],
        charged: ['215.40', '188.03'],
        sponge: '150.00',
        mercury: '253.40',
      }),
    );
    expect(names(got, got.suspects)).toEqual(['label balls A']);
    expect(names(got, got.orElse)).toEqual(['changed balls A']);
    expect(got.swaps.map((s) => s.wouldBe)).toEqual(['215.40 g']);
  });

  test('a transposed figure of mercury cannot be told from sponge or from a loss, but the swap finds it', () => {
    const got = asked(runOf(BookMaker.site(), { labels: ['400'], charged: ['400'], sponge: '148.60', mercury: '215.40' }));
    expect(got.result.passes).toBe(false);
    expect(names(got, got.suspects).map((n) => n.split(' ')[0])).toEqual(['sponge', 'mercury', 'water']);
    expect(names(got, got.orElse).map((n) => n.split(' ')[0])).toEqual(['stayed']);
    const swaps = got.swaps.map((s) => [got.terms[s.term]?.kind, s.wouldBe]);
    expect(swaps).toContainEqual(['mercury', '251.40 g']);
  });

  test('with one sum alone nothing is located, as with the blind adjustment of WE-9', () => {
    const site = BookMaker.site();
    const clean = site.add('balls', 'clean-up', {
      type: 'routine',
      lots: [{ key: '1', label: 'A', weight: stated('1095.475', '4.8'), state: 'squeezed', source: 'outside-plate' }],
    });
    site.add('charge', 'charge', {
      retort: site.pot,
      rows: [{ take: 'part', key: '1', lot: `${clean}/1`, weight: stated('478.402', '3.9'), rest: stated('488.232', '4.4') }],
    });
    const got = asked(readBook(site.entries));
    const changed = (changeShare / 2) * 1095.475;
    // WE-9: r = 128.841 over 4.8² + 3.9² + 4.4², here with the allowance beside them
    expect(got.result.global).toBeCloseTo(128.841 ** 2 / (4.8 ** 2 + 3.9 ** 2 + 4.4 ** 2 + changed ** 2), 6);
    expect(got.result.adjusted).toBeNull();
    expect(names(got, got.suspects)).toEqual(['label A', 'part A', 'rest A']);
    expect(got.swaps).toEqual([]);
  });

  test('what two readings of one scale share cancels between them, and does not between two scales', () => {
    const globalOn = (second: 'same' | 'other') => {
      const site = BookMaker.site();
      const rough = site.scale('rough', '0.01 g', '20 g');
      const other = second === 'same' ? rough : site.scale('other', '0.01 g', '20 g');
      const lots = site.lots('balls', ['500'], rough);
      site.add('charge', 'charge', {
        retort: site.pot,
        rows: [{ take: 'whole', key: '1', lot: lots[0] ?? '', weight: scaled('508', other) }],
      });
      return asked(readBook(site.entries)).result;
    };
    expect(globalOn('same').passes).toBe(false);
    expect(globalOn('other').global).toBeLessThan(globalOn('same').global);
  });
});

describe('nothing to check against', () => {
  test('is said where every figure was read once', () => {
    const site = BookMaker.site();
    site.add('charge', 'charge', {
      retort: site.pot,
      rows: [{ take: 'unwritten', key: '1', label: 'Ball', weight: scaled('400', site.bench) }],
    });
    expect(unasked(readBook(site.entries))).toEqual({ none: 'nothing', leftOut: [] });
  });

  test('is said with its reason where errors are not known, a lot was wet, or water was not weighed', () => {
    const bare = BookMaker.site();
    const [lot = ''] = bare.lots('balls', ['400']);
    bare.add('charge', 'charge', { retort: bare.pot, rows: [{ take: 'whole', key: '1', lot, weight: scaled('400') }] });
    expect(unasked(readBook(bare.entries))).toMatchObject({ none: 'nothing', leftOut: [{ kind: 'lot', why: 'u-not-known' }] });
    const wet = BookMaker.site();
    const clean = wet.add('balls', 'clean-up', {
      type: 'routine',
      lots: [{ key: '1', label: 'A', weight: scaled('430', wet.bench), state: 'scraped-wet', source: 'outside-plate' }],
    });
    const charge = wet.add('charge', 'charge', {
      retort: wet.pot,
      rows: [{ take: 'whole', key: '1', lot: `${clean}/1`, weight: scaled('400', wet.bench) }],
    });
    wet.add('firing', 'firing', {
      heats: [{ charge, sponge: scaled('150', wet.bench) }],
      mercury: { weight: scaled('240', wet.bench), vessel: wet.bottle, state: 'dry' },
    });
    const got = unasked(readBook(wet.entries));
    expect('none' in got && got.leftOut.map((l) => l.why)).toEqual(['was-wet', 'water-not-weighed']);
  });
});

describe('any run', () => {
  const hundredths = fc.integer({ min: 12_000, max: 98_000 });
  const text = (n: number) => (n / 100).toFixed(2);

  test('that was written down as it was weighed agrees', () => {
    fc.assert(
      fc.property(fc.array(hundredths, { minLength: 1, maxLength: 5 }), fc.integer({ min: 30, max: 45 }), (grams, percent) => {
        const whole = grams.reduce((a, b) => a + b, 0);
        const sponge = Math.round((whole * percent) / 100);
        const got = asked(
          runOf(BookMaker.site(), {
            labels: grams.map(text),
            charged: grams.map(text),
            sponge: text(sponge),
            mercury: text(whole - sponge),
          }),
        );
        expect(got.result.passes).toBe(true);
        expect(got.suspects).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test('with two figures of one weighing transposed points to that weighing, and the true figure is among the swaps', () => {
    fc.assert(
      fc.property(fc.array(hundredths, { minLength: 2, maxLength: 5 }), fc.nat(), fc.nat(), (grams, which, how) => {
        const at = which % grams.length;
        const right = text(grams[at] ?? 0);
        // swaps among the grams before the point: those behind it are below what a lot may change by
        const wrongs = transpositions(right).filter((t) => Math.abs(Number(t) - Number(right)) > 0.06 * Number(right));
        const wrong = wrongs[how % Math.max(1, wrongs.length)];
        fc.pre(wrong !== undefined);
        const whole = grams.reduce((a, b) => a + b, 0);
        const sponge = Math.round(whole * 0.4);
        const got = asked(
          runOf(BookMaker.site(), {
            labels: grams.map(text),
            charged: grams.map((g, i) => (i === at ? (wrong ?? '') : text(g))),
            sponge: text(sponge),
            mercury: text(whole - sponge),
          }),
        );
        expect(got.result.passes).toBe(false);
        expect(got.suspects.map((i) => got.terms[i]?.field)).toContain(`rows[${at}].weight`);
        expect(got.swaps.map((s) => s.wouldBe)).toContain(`${right} g`);
      }),
      { numRuns: 60 },
    );
  });
});

test('neighbouring digits are swapped over the point too, equal ones never, and each text comes once', () => {
  expect(transpositions('215.4 g')).toEqual(['125.4 g', '251.4 g', '214.5 g']);
  expect(transpositions('11 ozt 2 dwt')).toEqual([]);
  expect(transpositions('7 g')).toEqual([]);
});
