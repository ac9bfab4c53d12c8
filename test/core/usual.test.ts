/** The second question of an account, more than usual here, and sequences of periods: figures worked by hand, and what must never count. */
import { describe, expect, test } from 'vitest';
import { accountOf } from '../../app/core/book/account.ts';
import { type Book, readBook } from '../../app/core/book/book.ts';
import { doubtsOf } from '../../app/core/book/doubts.ts';
import { periodsOf } from '../../app/core/book/periods.ts';
import { covariance, sequenceOf } from '../../app/core/book/sequence.ts';
import { type Excess, excessOf, rateOf } from '../../app/core/book/usual.ts';
import { measured, total, uOf } from '../../app/core/measured.ts';
import { BookMaker, stated } from './book-maker.ts';

interface Month {
  /** What the bottle weighed at the end, grams. */
  readonly left: string;
  readonly tonnes?: number;
  readonly runs?: number;
}

/** A bottle of 10 kg from which mercury goes into the mortar, counted at the end of every month with an error of 3 g each. */
function months(list: readonly Month[]): Book {
  const book = BookMaker.site();
  const battery = book.add('battery', 'battery', { label: 'Battery', stamps: 5 });
  const day = (month: number, d: number, hour = 9) => ({
    happened: `2026-${String(month).padStart(2, '0')}-${String(d).padStart(2, '0')}T${String(hour).padStart(2, '0')}:00+00:00`,
  });
  const count = (name: string, left: string, month: number) =>
    book.add(
      name,
      'stock-take',
      { scope: 'whole', lines: [{ how: 'weighed', place: `vessel:${book.bottle}`, weight: stated(left, '3') }] },
      day(month, 28, 18),
    );
  book.add('here', 'receipt', { vessel: book.bottle, weight: stated('10000', '0'), way: 'already-here' }, day(1, 1));
  count('count start', '10000', 1);
  for (const [i, { left, tonnes, runs = 0 }] of list.entries()) {
    const month = i + 2;
    if (tonnes !== undefined)
      book.add(
        `crushed ${month}`,
        'crushing',
        { battery, feed: 'concentrate', mercuryFed: 'mortar', ore: { mass: `${tonnes} t`, u: 0.01 } },
        day(month, 5),
      );
    for (let run = 0; run < runs; run += 1) {
      const charge = book.add(
        `charge ${month} ${run}`,
        'charge',
        {
          retort: book.pot,
          holds: 'residues',
          rows: [],
          others: [{ key: '1', label: 'sand', what: 'residue', weight: stated('100', '0') }],
        },
        day(month, 6 + run),
      );
      book.add(
        `firing ${month} ${run}`,
        'firing',
        {
          heats: [{ charge, sponge: stated('100', '0') }],
          mercury: { weight: stated('0', '0'), vessel: book.bottle, state: 'dry' },
          water: stated('0', '0'),
        },
        day(month, 6 + run, 15),
      );
    }
    count(`count ${month}`, left, month);
  }
  return readBook(book.entries);
}

const last = (book: Book) => accountOf(book, periodsOf(book).at(-1)?.period ?? { from: null, to: null });
const excess = (book: Book): Excess => {
  const got = excessOf(book, last(book));
  if ('why' in got) throw new Error(got.why);
  return got;
};

describe('the usual rate', () => {
  // 100 g in 20 t, 240 g in 40 t, then 300 g in 40 t under test: 340 / 60 = 5.6667 g/t
  const book = months([
    { left: '9900', tonnes: 20 },
    { left: '9660', tonnes: 40 },
    { left: '9360', tonnes: 40 },
  ]);

  test('is of the site’s own earlier periods, named, per tonne, and never of the one under test', () => {
    const { usual, expected, excess: beyond } = excess(book);
    expect(usual.basis).toBe('tonne');
    expect(usual.periods.map((p) => p.closing.id)).toEqual(['count-2', 'count-3']);
    expect(usual.rate.ug / 1e6).toBeCloseTo(340 / 60, 9);
    expect(expected.ug / 1e6).toBeCloseTo((340 / 60) * 40, 6);
    expect(beyond.ug / 1e6).toBeCloseTo(300 - (340 / 60) * 40, 6);
    const worse = months([
      { left: '9900', tonnes: 20 },
      { left: '9660', tonnes: 40 },
      { left: '5000', tonnes: 40 },
    ]);
    expect(excess(worse).usual.rate).toEqual(usual.rate);
  });

  test('has the error of its weighings and ore, and of its scatter; what the periods share cancels or adds as it must', () => {
    const { usual, excess: beyond } = excess(book);
    const rate = 340 / 60;
    // the counts at both ends of the two periods, the ore of each, and the scatter about the weighted mean
    const own = [3 / 60, 3 / 60, (rate * 0.2) / 60, (rate * 0.4) / 60];
    const scatter = Math.sqrt((20 * (5 - rate) ** 2 + 40 * (6 - rate) ** 2) / (1 * 60));
    expect(uOf(usual.rate) / 1e6).toBeCloseTo(Math.hypot(...own, scatter), 9);
    // the count between the rate’s last period and this one: +3 g as its opening, and 3·40/60 g more as what the rate lost less
    const errors = [
      3 + (3 * 40) / 60,
      3,
      (3 * 40) / 60,
      (rate * 0.2 * 40) / 60,
      (rate * 0.4 * 40) / 60,
      rate * 0.4,
      scatter * 40,
    ];
    expect(uOf(beyond) / 1e6).toBeCloseTo(Math.hypot(...errors), 6);
    // not the sum as if nothing were shared
    const wrong = Math.hypot(Math.hypot(3, 3), 40 * (uOf(usual.rate) / 1e6), rate * 0.4);
    expect(Math.abs(uOf(beyond) / 1e6 - wrong)).toBeGreaterThan(0.05);
  });

  test('is not computable before two periods were counted, and says how many there are', () => {
    expect(excessOf(months([{ left: '9900', tonnes: 20 }]), last(months([{ left: '9900', tonnes: 20 }])))).toEqual({
      why: 'too-few-periods',
      earlier: 0,
    });
    const one = months([
      { left: '9900', tonnes: 20 },
      { left: '9660', tonnes: 40 },
    ]);
    expect(excessOf(one, last(one))).toEqual({ why: 'too-few-periods', earlier: 1 });
    expect(excessOf(book, accountOf(book, { from: null, to: null }))).toEqual({ why: 'no-start', earlier: 0 });
  });

  test('goes by runs where there was no ore, and by months where there were no runs', () => {
    const byRun = excess(
      months([
        { left: '9990', runs: 1 },
        { left: '9970', runs: 2 },
        { left: '9900', runs: 2 },
      ]),
    );
    expect([byRun.usual.basis, byRun.amount, byRun.usual.rate.ug / 1e6]).toEqual(['run', 2, 10]);
    expect(byRun.excess.ug / 1e6).toBeCloseTo(50, 6);
    const byMonth = excess(months([{ left: '9990' }, { left: '9970' }, { left: '9900' }]));
    expect(byMonth.usual.basis).toBe('month');
    // 28 February to 28 April: 59 days, 30 g
    expect(byMonth.usual.rate.ug / 1e6).toBeCloseTo((30 / 59) * (365.2425 / 12), 6);
  });

  test('an error shared by all losses adds in the rate and is not lost in the mean', () => {
    const losses = [1, 2, 3].map((i) =>
      measured(100e6, [
        ['scale:one', 2e6],
        [`own ${i}`, 1e6],
      ]),
    );
    const rate = rateOf(
      losses,
      losses.map(() => measured(10, [])),
      'scatter',
    );
    expect(rate.ug / 1e6).toBe(10);
    expect(uOf(rate) / 1e6).toBeCloseTo(Math.hypot(0.2, 0.1 / Math.sqrt(3)), 9);
  });
});

describe('a sequence', () => {
  const book = months([{ left: '9900' }, { left: '9660' }, { left: '9360' }]);

  test('takes its covariance from what the periods share: the count between them, with opposite signs', () => {
    const { covariance: matrix, cumulative } = sequenceOf(book, { basis: 'as-known-today' });
    expect(matrix.map((row) => row.map((c) => Math.round(c / 1e12)))).toEqual([
      [18, -9, 0],
      [-9, 18, -9],
      [0, -9, 18],
    ]);
    // only the first and the last count stay in the running total
    for (const value of cumulative) expect(uOf(value) / 1e6).toBeCloseTo(Math.sqrt(18), 9);
    expect(cumulative.map((value) => value.ug / 1e6)).toEqual([100, 340, 640]);
    const [a, b] = sequenceOf(book, { basis: 'as-known-today' }).differences;
    if (!a || !b) throw new Error('three periods');
    expect(covariance(a, b)).toBe(covariance(b, a));
    expect(covariance(a, a)).toBeCloseTo(uOf(a) ** 2, 0);
  });

  test('gives the same on both bases where nothing was learnt since', () => {
    const [today, closed] = (['as-known-today', 'as-closed'] as const).map((basis) => sequenceOf(book, { basis }));
    expect(closed?.differences.map((d) => d.ug)).toEqual(today?.differences.map((d) => d.ug));
  });

  test('holds its threshold by the false alarm that was chosen, and is no test where nothing is uncertain', () => {
    const strict = sequenceOf(book, { basis: 'as-known-today', falseAlarm: 0.01 }).test;
    const loose = sequenceOf(book, { basis: 'as-known-today', falseAlarm: 0.2 }).test;
    expect(strict?.threshold ?? 0).toBeGreaterThan(loose?.threshold ?? Number.POSITIVE_INFINITY);
    expect(strict?.signalAt).toBe(1);
    expect(sequenceOf(readBook([]), { basis: 'as-known-today' }).test).toBeNull();
  });
});

test('doubts share out one variance whose shared errors were added with their signs; as if all were independent it never is', () => {
  const site = BookMaker.site();
  const scale = site.bench;
  const weigh = (g: string) => ({ how: 'scale' as const, scale, gross: `${g} g` });
  site.add('here', 'receipt', { vessel: site.bottle, weight: weigh('3000'), way: 'already-here' });
  site.add('came', 'receipt', { vessel: site.bottle, weight: weigh('1000'), way: 'bought' });
  site.add('fed', 'issue', { vessel: site.bottle, to: 'plates', weight: weigh('500') });
  site.add('count', 'stock-take', {
    lines: [
      { how: 'weighed', place: `vessel:${site.bottle}`, weight: weigh('3490') },
      { how: 'estimated', place: 'circuit:plates', estimate: { mass: '480 g', method: 'by area', sharedU: 0.1, ownU: 0.05 } },
    ],
  });
  const book = readBook(site.entries);
  const { unaccounted } = accountOf(book, { from: null, to: null });
  const doubts = doubtsOf(book, unaccounted);
  expect(doubts.reduce((s, d) => s + d.share, 0)).toBeCloseTo(1, 12);
  expect(doubts.reduce((s, d) => s + d.variance, 0)).toBeCloseTo(uOf(unaccounted) ** 2, -3);
  expect([...doubts].sort((a, b) => b.share - a.share)).toEqual(doubts);
  expect(doubts[0]).toMatchObject({ kind: 'method', of: 'by area', cut: 'weigh-not-estimate' });
  // the certificate’s span error on 3000 + 1000 − 3490 g, not on each by itself
  const span = doubts.find((d) => d.kind === 'scale');
  const perGram = 0.015 / 2000;
  expect(Math.sqrt(span?.variance ?? 0) / 1e6).toBeCloseTo(perGram * 510, 9);
  expect(Math.sqrt(span?.variance ?? 0) / 1e6).toBeLessThan(perGram * Math.hypot(3000, 1000, 3490) * 0.2);
  expect(span).toMatchObject({ entry: scale, cut: 'recalibrate-scale' });
  expect(doubtsOf(book, total([]))).toEqual([]);
});
