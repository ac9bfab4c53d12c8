/**
 * The small cases the account must get right, each as a whole book of entries, with the wrong answer that must not appear. All numbers are constructed;
 * where the program's own shares (62.5 % before a history, 1.25 % left in sponge) differ from a case's, the weights are chosen so that its figures stand.
 */
import { expect, test } from 'vitest';
import { accountOf, type Period } from '../../app/core/book/account.ts';
import { type Book, readBook } from '../../app/core/book/book.ts';
import { goldIn } from '../../app/core/book/gold.ts';
import { periodsOf } from '../../app/core/book/periods.ts';
import { circuitPlace, condenserPlace, lotPlace, vesselPlace } from '../../app/core/book/places.ts';
import { sequenceOf } from '../../app/core/book/sequence.ts';
import { decimalFromText, zero } from '../../app/core/decimal.ts';
import type { Body } from '../../app/core/kinds/index.ts';
import { added, measured, uOf } from '../../app/core/measured.ts';
import { caughtLower } from '../../app/core/run.ts';
import { BookMaker, stated } from './book-maker.ts';

type Site = ReturnType<typeof BookMaker.site>;
type Line = Body<'stock-take'>['lines'][number];

const on = (day: number, hour = 9) => ({
  happened: `2026-0${day > 31 ? 5 : 4}-${String(day > 31 ? day - 31 : day).padStart(2, '0')}T${String(hour).padStart(2, '0')}:00+13:00`,
});
const always: Period = { from: null, to: null };
const g = (value: { ug: number } | undefined): number => (value?.ug ?? Number.NaN) / 1e6;
const bottleAt = (book: Site, grams: string): Line => ({
  how: 'weighed',
  place: vesselPlace(book.bottle),
  weight: stated(grams, '0.1'),
});
const plates = (grams: string): Line => ({
  how: 'estimated',
  place: circuitPlace('plates'),
  estimate: { mass: `${grams} g`, method: 'by area', ownU: 0.05 },
});
const count = (book: Site, name: string, lines: Line[], day: number) =>
  book.add(name, 'stock-take', { scope: 'whole', lines }, on(day, 18));
const lotOf = (book: Site, name: string, grams: string, day: number): string => {
  const id = book.add(
    name,
    'clean-up',
    {
      type: 'routine',
      lots: [{ key: '1', label: name, weight: stated(grams, '0'), state: 'squeezed', source: 'outside-plate' }],
    },
    on(day),
  );
  return `${id}/1`;
};
const chargeOf = (book: Site, name: string, lots: readonly [string, string][], day: number, more = {}): string =>
  book.add(
    `charge ${name}`,
    'charge',
    {
      retort: book.pot,
      rows: lots.map(([lot, w], i) => ({ take: 'whole' as const, key: String(i + 1), lot, weight: stated(w, '0') })),
      ...more,
    },
    on(day, 7),
  );
const fire = (book: Site, name: string, charge: string, sponge: string, caught: string, day: number, more = {}) =>
  book.add(
    `firing ${name}`,
    'firing',
    {
      heats: [{ charge, sponge: stated(sponge, '0') }],
      mercury: { weight: stated(caught, '0.1'), vessel: book.bottle, state: 'dry' },
      water: stated('0', '0'),
      ...more,
    },
    on(day, 10),
  );
const path = (book: Book, name: string, period: Period = always) =>
  accountOf(book, period).paths.find((p) => p.path === name) ?? { posted: measured(Number.NaN, []), lowUg: 0, highUg: 0 };
const stock = (book: Book, place: string, period: Period = always) =>
  accountOf(book, period).stocks.find((s) => s.place === place)?.mercury;

/** Cases 1: a lot weighed in one period and fired in the next; three runs before make its share 60 %. */
function boundary(): Site {
  const book = BookMaker.site();
  book.add('here', 'receipt', { vessel: book.bottle, weight: stated('12000', '0'), way: 'already-here' }, on(1, 6));
  book.add('old stock', 'issue', { vessel: book.bottle, to: 'plates', weight: stated('1800', '0') }, on(1, 7));
  for (const [i, name] of ['h one', 'h two', 'h three', 'h four'].entries()) {
    const lot = lotOf(book, name, '1000', 1);
    fire(book, name, chargeOf(book, name, [[lot, '1000']], 2 + i), '405.0633', '594.9367', 2 + i);
  }
  count(book, 'first count', [bottleAt(book, '10000'), plates('0')], 9);
  book.add('fed', 'issue', { vessel: book.bottle, to: 'plates', weight: stated('900', '0') }, on(10));
  const lot = lotOf(book, 'the lot', '1000', 12);
  count(book, 'second count', [bottleAt(book, '9100'), plates('200'), { how: 'seen', place: lotPlace(lot) }], 15);
  return book;
}

test('cases 1: a period closed over a lot that was fired later stays as closed; the next takes over what was found since, once', () => {
  const book = boundary();
  const lot = book.entries.find((e) => e.id === 'the-lot')?.id;
  const [, first] = periodsOf(readBook(book.entries));
  expect(g(accountOf(readBook(book.entries), first?.period ?? always).unaccounted)).toBeCloseTo(100, 2);
  fire(book, 'later', chargeOf(book, 'later', [[`${lot}/1`, '1000']], 16), '330.8354', '659.1646', 16);
  // 1,000 − 330.8354 · 0.9875 = 673.3, of which 4.1354 stayed in the sponge and 659.1646 were caught
  count(book, 'third count', [bottleAt(book, '9759.1646'), plates('200')], 20);
  const now = readBook(book.entries);
  const [, one, two] = periodsOf(now);
  if (!one || !two) throw new Error('three counts make two periods');
  expect(g(accountOf(now, one.period).unaccounted)).toBeCloseTo(26.7, 2);
  expect(g(accountOf(now, two.period).unaccounted)).toBeCloseTo(10, 2);
  expect(g(path(now, 'retort', two.period).posted)).toBeCloseTo(10, 3);
  const today = sequenceOf(now, { basis: 'as-known-today' });
  const closed = sequenceOf(now, { basis: 'as-closed' });
  expect(today.differences.map((d) => g(d).toFixed(1))).toEqual(['26.7', '10.0']);
  expect(closed.differences.map((d) => g(d).toFixed(1))).toEqual(['100.0', '-63.3']);
  const [asClosed, known] = [closed.differences[0], today.differences[0]];
  expect(g(asClosed) - g(known)).toBeCloseTo(73.3, 2);
  // never (100, 10), which counts 73.3 twice
  for (const { cumulative } of [today, closed]) expect(g(cumulative.at(-1))).toBeCloseTo(36.7, 2);
  // a gain of 63.3 stands in no account
  for (const { period } of [one, two]) expect(g(accountOf(now, period).unaccounted)).toBeGreaterThan(0);
});

test('cases 2: what a run is short of lies in the condenser, and two runs are judged together', () => {
  const book = BookMaker.site();
  book.add('brushed', 'retort', {
    of: book.pot,
    label: 'Pot retort',
    brushed: { on: '2026-02-01', got: stated('9', '0'), vessel: book.bottle },
  });
  const [one, two] = [lotOf(book, 'one', '400', 1), lotOf(book, 'two', '380', 1)];
  fire(book, 'one', chargeOf(book, 'one', [[one, '400']], 2), '150', '241.5', 2);
  const after = readBook(book.entries);
  expect(g(stock(after, condenserPlace(book.pot)))).toBeCloseTo(8.5, 6);
  // alone it would be a leak of 2.1 %: it is a bound, not a loss
  expect(path(after, 'retort')).toMatchObject({ posted: { ug: 0 }, lowUg: 0, highUg: 8_500_000 });
  fire(book, 'two', chargeOf(book, 'two', [[two, '380']], 3), '142', '245', 3);
  const both = readBook(book.entries);
  expect(g(stock(both, condenserPlace(book.pot)))).toBeCloseTo(1.5, 6);
  expect(path(both, 'retort')).toMatchObject({ posted: { ug: 0 }, lowUg: 0, highUg: 1_500_000 });
  expect(both.condensers.get(book.pot)?.togetherUg).toBe(1_500_000);
});

test('cases 2: a condenser holds no more than was ever brushed out of it; what is above is lost at once', () => {
  const book = BookMaker.site();
  book.add('brushed', 'retort', {
    of: book.pot,
    label: 'Pot retort',
    brushed: { on: '2026-02-01', got: stated('9', '0'), vessel: book.bottle },
  });
  fire(book, 'one', chargeOf(book, 'one', [[lotOf(book, 'one', '400', 1), '400']], 2), '150', '235', 2);
  const got = readBook(book.entries);
  expect(g(stock(got, condenserPlace(book.pot)))).toBe(9);
  expect(path(got, 'retort')).toMatchObject({ posted: { ug: 6_000_000 }, lowUg: 6_000_000, highUg: 15_000_000 });
});

test('cases 3: a combined charge is exact in all, allotted by the estimates, and never split evenly', () => {
  const book = BookMaker.site();
  const [a, b] = [lotOf(book, 'a', '300', 1), lotOf(book, 'b', '200', 1)];
  const charge = chargeOf(
    book,
    'both',
    [
      [a, '300'],
      [b, '200'],
    ],
    2,
  );
  // 313 g in 500: the sponge is 187 + its own mercury
  fire(book, 'both', charge, '189.367', '310.633', 2);
  const { lotMercuries } = readBook(book.entries).movements;
  const [ma, mb] = [lotMercuries.get(a)?.mercury, lotMercuries.get(b)?.mercury];
  if (!ma || !mb) throw new Error('both lots have their mercury');
  expect(g(ma) + g(mb)).toBeCloseTo(313, 3);
  expect(g(ma)).toBeCloseTo((313 * 300) / 500, 3);
  const allotment = [...ma.parts].filter(([source]) => source.startsWith('allotment:'));
  expect(allotment).toHaveLength(1);
  const [source = '', u = 0] = allotment[0] ?? [];
  expect(mb.parts.get(source)).toBe(-u);
  // wide enough for the 7.2 g that an allotment may be out, and gone from the sum
  expect(u / 1e6).toBeGreaterThan(7.2);
  expect([...added(ma, mb).parts.keys()].filter((s) => s.startsWith('allotment:'))).toEqual([]);
});

test('cases 4: a lot fired in two parts is two lots, 93 + 165 g; the one not fired takes the share of the other, with its own error', () => {
  const book = BookMaker.site();
  const lot = lotOf(book, 'four', '400', 1);
  const first = book.add(
    'charge first',
    'charge',
    { retort: book.pot, rows: [{ take: 'part', key: '1', lot, weight: stated('150', '0') }] },
    on(2),
  );
  fire(book, 'first', first, '57.722', '92.278', 2);
  const rest = `${first}/1b`;
  const waiting = readBook(book.entries);
  expect(g(stock(waiting, lotPlace(rest)))).toBeCloseTo(155, 1);
  expect(uOf(stock(waiting, lotPlace(rest)) ?? measured(0, [])) / 1e6).toBeCloseTo(5, 1);
  fire(book, 'second', chargeOf(book, 'second', [[rest, '250']], 40), '86.076', '163.924', 40);
  const { lotMercuries } = readBook(book.entries).movements;
  const all = g(lotMercuries.get(lot)?.mercury);
  expect(all).toBeCloseTo(258, 1);
  for (const wrong of [248, 264]) expect(Math.abs(all - wrong)).toBeGreaterThan(5);
});

test('cases 5: wet amalgam leaves a gap of mercury and water that nobody can tell apart: nothing of it is posted', () => {
  const book = BookMaker.site();
  const lot = lotOf(book, 'five', '520', 1);
  fire(book, 'five', chargeOf(book, 'five', [[lot, '520']], 2, { dry: 'no' }), '190', '313.5', 2, { water: undefined });
  const got = readBook(book.entries);
  expect(path(got, 'retort')).toMatchObject({ posted: { ug: 0 }, lowUg: 0, highUg: 16_500_000 });
  expect(accountOf(got, always).unaccounted.ug).toBe(0);
  expect(got.runs[0]?.last?.figures?.findings).toContain('water-not-known');
});

test('cases 6: a bar that two charges made says nothing of one of them alone', () => {
  const book = BookMaker.site();
  const [one, two] = [lotOf(book, 'one', '955.6', 1), lotOf(book, 'two', '520', 1)];
  const [a, b] = [chargeOf(book, 'one', [[one, '955.6']], 2), chargeOf(book, 'two', [[two, '520']], 3)];
  fire(book, 'one', a, '371.8', '571.2', 2);
  fire(book, 'two', b, '200', '316', 3);
  book.add(
    'melt',
    'melt',
    { sponges: [{ charge: a }, { charge: b }], bars: [{ key: '1', label: 'Bar', weight: stated('560', '0.1') }] },
    on(4),
  );
  const got = readBook(book.entries);
  // never 571.2 / (955.6 − 560) = 1.44
  const exact = (text: string) => decimalFromText(text) ?? zero;
  const lower = caughtLower({
    charge: exact('955.6'),
    mercury: exact('571.2'),
    water: zero,
    prills: zero,
    bar: exact('560'),
  });
  expect(lower).toBeNull();
  expect(path(got, 'melt')).toMatchObject({ lowUg: 0, highUg: 11_800_000 });
});

test('cases 7: an under-fired sponge at a boundary carries 76 ± 16 g, and its next firing creates nothing', () => {
  const book = BookMaker.site();
  book.add('usual', 'retort', { of: book.pot, label: 'Pot retort', usualRatio: 0.38 });
  book.add('here', 'receipt', { vessel: book.bottle, weight: stated('1000', '0'), way: 'already-here' }, on(1, 6));
  book.add('fed', 'issue', { vessel: book.bottle, to: 'plates', weight: stated('600', '0') }, on(1, 7));
  count(book, 'start', [bottleAt(book, '400'), plates('600')], 1);
  const charge = chargeOf(book, 'seven', [[lotOf(book, 'seven', '800', 2), '800']], 3);
  fire(book, 'seven', charge, '380', '415', 3);
  count(book, 'middle', [bottleAt(book, '815'), plates('104')], 5);
  const closed = readBook(book.entries);
  const sponge = stock(closed, `sponge:${charge}`);
  expect(g(sponge)).toBeCloseTo(76, 3);
  expect(uOf(sponge ?? measured(0, [])) / 1e6).toBeCloseTo(16, 1);
  fire(book, 'again', charge, '308', '71', 6);
  count(book, 'end', [bottleAt(book, '886'), plates('104')], 8);
  const now = readBook(book.entries);
  const [, , second] = periodsOf(now);
  // 415 + 71 caught of 800 − 308 driven off leave 6 at the retort; with a default of 1.25 % left in the sponge, 71 g would have come from nowhere
  expect(g(accountOf(now, second?.period ?? always).unaccounted)).toBeGreaterThan(-1);
  expect(g(path(now, 'retort').posted)).toBeCloseTo(6, 6);
});

test('cases 8: mercury that comes back strained holds gold: 5.0 ± 2.0 g are lost, and never 0', () => {
  const book = BookMaker.site();
  const jar = book.add('jar of new', 'vessel', { label: 'Jar', use: 'jar', mercury: 'new' }, on(1, 5));
  const line = (grams: string): Line => ({ how: 'weighed', place: vesselPlace(jar), weight: stated(grams, '0') });
  book.add('here', 'receipt', { vessel: jar, weight: stated('5000.0', '0'), way: 'already-here' }, on(1, 6));
  count(book, 'start', [line('5000.0')], 1);
  book.add('strained now', 'vessel', { of: jar, label: 'Jar', use: 'jar', mercury: 'strained' }, on(3));
  count(book, 'end', [line('5000.0')], 5);
  const got = readBook(book.entries);
  const [, period] = periodsOf(got);
  const account = accountOf(got, period?.period ?? always);
  expect(g(account.unaccounted)).toBeCloseTo(5, 6);
  expect(uOf(account.unaccounted) / 1e6).toBeCloseTo(2.02, 2);
  expect(g(account.closing)).toBeCloseTo(4995, 6);
  // one source of error in two books, with opposite signs
  const gold = goldIn(measured(5000e6, []), 'strained');
  expect(g(gold)).toBe(5);
  const [source = ''] = [...gold.parts.keys()];
  expect(account.closing.parts.get(source)).toBe(-(gold.parts.get(source) ?? 0));
});

test('cases 9: a sealed flask adds nothing while it is shut; opened, invoice against weighed is a line of its own and no loss', () => {
  const book = BookMaker.site();
  const flask = book.add('flask', 'vessel', { label: 'Flask', use: 'flask', mercury: 'new' }, on(1, 5));
  book.add('bought', 'receipt', { vessel: flask, weight: stated('34473', '30'), way: 'bought', seal: 'S 7' }, on(1, 6));
  const sealed: Line = { how: 'sealed', place: vesselPlace(flask), seal: 'S 7' };
  count(book, 'start', [sealed], 2);
  count(book, 'middle', [sealed], 4);
  count(book, 'end', [{ how: 'weighed', place: vesselPlace(flask), weight: stated('34150', '2') }], 6);
  const got = readBook(book.entries);
  const [, shut, opened] = periodsOf(got);
  const quiet = accountOf(got, shut?.period ?? always);
  expect([quiet.unaccounted.ug, uOf(quiet.unaccounted)]).toEqual([0, 0]);
  const account = accountOf(got, opened?.period ?? always);
  expect(g(account.invoiced)).toBe(-323);
  expect(g(account.closing)).toBe(34150);
  // not a loss of 323 g of the period it was opened in
  expect(account.unaccounted.ug).toBe(0);
  expect(uOf(account.unaccounted)).toBeLessThan(1);
  for (const line of account.paths) expect([line.posted.ug, line.highUg]).toEqual([0, 0]);
});

test('cases 10: heats caught in one receiver have one gap of 8.4 g, and no figure for each', () => {
  const book = BookMaker.site();
  const rows = [
    ['a', '310.0', '118.9'],
    ['b', '295.5', '112.0'],
    ['c', '402.2', '156.1'],
  ] as const;
  const charges = rows.map(([name, w], i) => chargeOf(book, name, [[lotOf(book, name, w, 1), w]], 2 + i));
  book.add(
    'caught together',
    'firing',
    {
      heats: charges.map((charge, i) => ({ charge, sponge: stated(rows[i]?.[2] ?? '', '0') })),
      mercury: { weight: stated('612.3', '0.1'), vessel: book.bottle, state: 'dry' },
      water: stated('0', '0'),
    },
    on(6),
  );
  const got = readBook(book.entries);
  expect(got.runs).toHaveLength(1);
  expect(g(path(got, 'retort').posted)).toBeCloseTo(8.4, 6);
  expect(((got.runs[0]?.last?.figures?.gapOfCharge ?? 0) * 100).toFixed(2)).toBe('0.83');
  expect(got.movements.runMercuries.size).toBe(1);
});
