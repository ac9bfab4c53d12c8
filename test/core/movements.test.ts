import { expect, test } from 'vitest';
import { accountOf } from '../../app/core/book/account.ts';
import { type Book, readBook } from '../../app/core/book/book.ts';
import { stocksAt } from '../../app/core/book/movements/gathering.ts';
import {
  chargePlace,
  circuitPlace,
  condenserPlace,
  isStock,
  lossPlace,
  outside,
  spongePlace,
  vesselPlace,
} from '../../app/core/book/places.ts';
import { uOf } from '../../app/core/measured.ts';
import { BookMaker, stated } from './book-maker.ts';

const g = (book: Book, place: string) => (stocksAt(book.movements.all, null).get(place)?.ug ?? 0) / 1e6;
const always = { from: null, to: null };

function fire(
  book: ReturnType<typeof BookMaker.site>,
  name: string,
  lots: readonly [string, string][],
  sponge: string,
  mercury: string,
  more = {},
  chargeMore = {},
) {
  const charge = book.add(`charge ${name}`, 'charge', {
    retort: book.pot,
    rows: lots.map(([lot, w], i) => ({ take: 'whole' as const, key: String(i + 1), lot, weight: stated(w, '0.1') })),
    ...chargeMore,
  });
  book.add(`firing ${name}`, 'firing', {
    heats: [{ charge, sponge: stated(sponge, '0.1') }],
    mercury: { weight: stated(mercury, '0.2'), vessel: book.bottle, state: 'dry' },
    water: stated('0', '0'),
    ...more,
  });
  return charge;
}

test('a lot is trued up from what stayed behind, never from what was caught, and the gap stays the retort’s (cases 1)', () => {
  const book = BookMaker.site();
  const [lot = ''] = book.lots('one', ['1000']);
  const before = readBook(book.entries).movements.lotMercuries.get(lot);
  expect(before?.basis).toBe('estimated');
  const charge = fire(book, 'one', [[lot, '1000']], '330', '660');
  const got = readBook(book.entries);
  // the residual share of this program is 1.25 %: 1000 − 330 · 0.9875
  expect((got.movements.lotMercuries.get(lot)?.mercury.ug ?? 0) / 1e6).toBeCloseTo(1000 - 330 * 0.9875, 6);
  expect(g(got, lossPlace('retort'))).toBeCloseTo(10, 6);
  expect(g(got, spongePlace(charge))).toBeCloseTo(330 * 0.0125, 6);
  expect(g(got, chargePlace(charge))).toBeCloseTo(0, 6);
});

test('a combined charge keeps its total, allots it by the estimates, and the errors of the allotment cancel (cases 3)', () => {
  const book = BookMaker.site();
  const [a = '', b = ''] = book.lots('three', ['300', '200']);
  // 313 g of mercury in 500 g: sponge 189.37 with 1.25 % left in it
  fire(
    book,
    'three',
    [
      [a, '300'],
      [b, '200'],
    ],
    '189.37',
    '310.63',
  );
  const { lotMercuries } = readBook(book.entries).movements;
  const [ma, mb] = [lotMercuries.get(a), lotMercuries.get(b)];
  expect([ma?.basis, mb?.basis]).toEqual(['allotted', 'allotted']);
  expect(((ma?.mercury.ug ?? 0) + (mb?.mercury.ug ?? 0)) / 1e6).toBeCloseTo(500 - 189.37 * 0.9875, 6);
  expect((ma?.mercury.ug ?? 0) / 1e6).toBeCloseTo(((500 - 189.37 * 0.9875) * 300) / 500, 5);
  const source = [...(ma?.mercury.parts.keys() ?? [])].find((s) => s.startsWith('allotment:')) ?? '';
  expect(ma?.mercury.parts.get(source)).toBeGreaterThan(0);
  expect(mb?.mercury.parts.get(source)).toBe(-(ma?.mercury.parts.get(source) ?? 0));
});

test('of a split lot the part not fired takes the share its fired sibling showed (cases 4)', () => {
  const book = BookMaker.site();
  const [lot = ''] = book.lots('four', ['400']);
  const charge = book.add('charge four', 'charge', {
    retort: book.pot,
    rows: [{ take: 'part', key: '1', lot, weight: stated('150', '0') }],
  });
  // 62 % of 150 g: sponge 57.722 of which 1.25 % is mercury
  book.add('firing four', 'firing', {
    heats: [{ charge, sponge: stated('57.722', '0') }],
    mercury: { weight: stated('92.278', '0'), vessel: book.bottle, state: 'dry' },
    water: stated('0', '0'),
  });
  const first = readBook(book.entries).movements.lotMercuries;
  expect((first.get(`${charge}/1a`)?.mercury.ug ?? 0) / 1e6).toBeCloseTo(93, 2);
  expect(first.get(`${charge}/1b`)?.basis).toBe('sibling');
  expect((first.get(`${charge}/1b`)?.mercury.ug ?? 0) / 1e6).toBeCloseTo(155, 1);
  const second = book.add('charge four later', 'charge', {
    retort: book.pot,
    rows: [{ take: 'whole', key: '1', lot: `${charge}/1b`, weight: stated('250', '0') }],
  });
  book.add('firing four later', 'firing', {
    heats: [{ charge: second, sponge: stated('86.076', '0') }],
    mercury: { weight: stated('163.924', '0'), vessel: book.bottle, state: 'dry' },
    water: stated('0', '0'),
  });
  // 93 + 165, not 248 or 264
  expect((readBook(book.entries).movements.lotMercuries.get(lot)?.mercury.ug ?? 0) / 1e6).toBeCloseTo(258, 1);
});

test('wet amalgam whose water nobody weighed posts no mercury loss; the gap is a bound (cases 5)', () => {
  const book = BookMaker.site();
  const [lot = ''] = book.lots('five', ['520']);
  fire(book, 'five', [[lot, '520']], '190', '313.5', { water: undefined }, { dry: 'no' });
  const got = readBook(book.entries);
  expect(g(got, lossPlace('retort'))).toBe(0);
  expect(got.movements.bounds.filter((b) => b.path === 'retort').map((b) => [b.lowUg, b.highUg])).toEqual([[0, 16_500_000]]);
  expect(accountOf(got, always).paths.find((p) => p.path === 'retort')).toMatchObject({ lowUg: 0, highUg: 16_500_000 });
});

test('what may be water stands beside the condenser’s book, between nothing and the gap, and the book is what was moved (cases 5)', () => {
  const book = BookMaker.site();
  book.add('brushed', 'retort', {
    of: book.pot,
    label: 'Pot retort',
    brushed: { on: '2026-02-01', got: stated('9', '0'), vessel: book.bottle },
  });
  const [dry = '', wet = '', last = ''] = book.lots('five', ['400', '520', '380']);
  fire(book, 'dry', [[dry, '400']], '150', '247', { opened: '2026-03-02T09:00+13:00' });
  fire(book, 'wet', [[wet, '520']], '190', '313.5', { water: undefined, opened: '2026-03-03T09:00+13:00' }, { dry: 'no' });
  const two = readBook(book.entries);
  // 400 − 150 − 247 = 3 of the dry run; of the wet one's 16.5 nothing is known to be mercury
  expect(two.condensers.get(book.pot)).toMatchObject({ heldUg: 3_000_000, togetherUg: 3_000_000, cannotTellUg: 16_500_000 });
  expect(two.condensers.get(book.pot)?.steps.at(-1)).toMatchObject({ ug: 0, cannotTellUg: 16_500_000, lostUg: 0 });
  expect(g(two, condenserPlace(book.pot))).toBe(3);
  fire(book, 'last', [[last, '380']], '142', '237', { opened: '2026-03-04T09:00+13:00' });
  const three = readBook(book.entries);
  expect(three.condensers.get(book.pot)?.heldUg).toBe(4_000_000);
  expect(g(three, condenserPlace(book.pot))).toBe(4);
});

test('an under-fired sponge carries the estimate its ratio implies, until it is fired again (cases 7)', () => {
  const book = BookMaker.site();
  book.add('usual', 'retort', { of: book.pot, label: 'Pot retort', usualRatio: 0.38 });
  const [lot = ''] = book.lots('seven', ['800']);
  const charge = fire(book, 'seven', [[lot, '800']], '380', '415');
  const sponge = readBook(book.entries).movements.runMercuries.get(charge)?.inSponge;
  expect((sponge?.ug ?? 0) / 1e6).toBeCloseTo(76, 6);
  expect(uOf(sponge ?? { ug: 0, parts: new Map() }) / 1e6).toBeCloseTo(16, 1);
});

test('gold in strained mercury is a range with one error: what is gold is not mercury (cases 8)', () => {
  const book = BookMaker.site();
  const strained = book.add('strained jar', 'vessel', { label: 'Jar of strained', use: 'jar', mercury: 'strained' });
  book.add('new mercury', 'receipt', { vessel: book.bottle, weight: stated('5000', '0'), way: 'already-here' });
  book.add('into plates', 'issue', { vessel: book.bottle, to: 'plates', weight: stated('5000', '0') });
  book.add('back again', 'return', { vessel: strained, from: 'plates', weight: stated('5000', '0') });
  const stock = stocksAt(readBook(book.entries).movements.all, null).get(vesselPlace(strained));
  expect((stock?.ug ?? 0) / 1e6).toBeCloseTo(4995, 6);
  expect(uOf(stock ?? { ug: 0, parts: new Map() }) / 1e6).toBeCloseTo(2.02, 2);
});

test('a condenser holds what it has ever given, and only what is above that is lost (cases 2)', () => {
  const book = BookMaker.site();
  book.add('brushed', 'retort', {
    of: book.pot,
    label: 'Pot retort',
    brushed: { on: '2026-02-01', got: stated('9', '0'), vessel: book.bottle },
  });
  const [one = '', two = ''] = book.lots('two', ['400', '380']);
  fire(book, 'first', [[one, '400']], '150', '241.5', { opened: '2026-03-02T09:00+13:00' });
  expect(g(readBook(book.entries), condenserPlace(book.pot))).toBeCloseTo(8.5, 6);
  fire(book, 'second', [[two, '380']], '142', '245', { opened: '2026-03-03T09:00+13:00' });
  const got = readBook(book.entries);
  expect(g(got, condenserPlace(book.pot))).toBeCloseTo(1.5, 6);
  expect(g(got, lossPlace('retort'))).toBe(0);
  expect(g(got, outside)).toBe(-9);
});

test('a cleaning closes by weight, its strained mercury goes to its vessel, and what is missing is bounded as handling (practice W11)', () => {
  const book = BookMaker.site();
  book.add('opening', 'receipt', { vessel: book.bottle, weight: stated('2000', '0'), way: 'already-here' });
  book.add('cleaning', 'cleaning', {
    dirty: { weight: stated('300', '0.1'), from: 'plates' },
    added: { weight: stated('900', '0.1'), vessel: book.bottle },
    made: [{ key: '1', label: 'clean', weight: stated('178', '0.1'), state: 'squeezed' }],
    strained: { weight: stated('968', '0.1'), vessel: book.bottle },
    skimmings: { weight: stated('42', '0.1') },
  });
  const got = readBook(book.entries);
  expect(g(got, vesselPlace(book.bottle))).toBeCloseTo(2068, 6);
  expect(got.movements.bounds).toMatchObject([{ path: 'handling', lowUg: 0, highUg: 12_000_000 }]);
  const places = [...stocksAt(got.movements.all, null)];
  expect(places.find(([place]) => place.startsWith('work:'))?.[1].ug ?? 0).toBe(0);
});

test('every movement is booked on both sides: all places together hold nothing', () => {
  const book = BookMaker.site();
  book.add('opening', 'receipt', { vessel: book.bottle, weight: stated('2000', '1'), way: 'already-here' });
  book.add('fed', 'issue', { vessel: book.bottle, to: 'mortar', weight: stated('411.123456', '0.1') });
  const [a = '', b = '', c = ''] = book.lots('sum', ['101.01', '33.333333', '77.7']);
  fire(
    book,
    'sum',
    [
      [a, '101.01'],
      [b, '33.333333'],
      [c, '77.7'],
    ],
    '80.5',
    '130.1',
  );
  const stocks = stocksAt(readBook(book.entries).movements.all, null);
  expect([...stocks.values()].reduce((s, v) => s + v.ug, 0)).toBe(0);
  expect([...stocks.values()].every((v) => Number.isSafeInteger(v.ug))).toBe(true);
});

test('a place counted for the first time with nothing booked was there before; after that a difference is unaccounted for', () => {
  const book = BookMaker.site();
  const plates = circuitPlace('plates');
  const count = (name: string, mass: string) =>
    book.add(name, 'stock-take', {
      lines: [{ how: 'estimated', place: plates, estimate: { mass, method: 'area', sharedU: 0.15, ownU: 0.05 } }],
    });
  count('opening count', '240 g');
  count('closing count', '200 g');
  const got = readBook(book.entries);
  expect(g(got, plates)).toBe(200);
  expect(g(got, outside)).toBe(-240);
  expect(g(got, lossPlace('unaccounted'))).toBe(40);
  // the method's own bias stays once with the stock; what was lost carries only its share in the change
  const lost = stocksAt(got.movements.all, null).get(lossPlace('unaccounted'));
  expect(lost?.parts.get('method:area')).toBeCloseTo(0.15 * 40e6, 3);
});

test('stocks add up to opening plus what came less what went, by a second count of every movement', () => {
  const book = BookMaker.site();
  book.add('opening', 'receipt', { vessel: book.bottle, weight: stated('2000', '1'), way: 'already-here' });
  book.add('bought', 'receipt', { vessel: book.bottle, weight: stated('500', '1'), way: 'bought', from: 'Supplier' });
  book.add('fed', 'issue', { vessel: book.bottle, to: 'plates', weight: stated('400', '0.1') });
  const [lot = ''] = book.lots('sum', ['300']);
  fire(book, 'sum', [[lot, '300']], '110', '185');
  const got = readBook(book.entries);
  const account = accountOf(got, always);
  let opening = 0;
  let receipts = 0;
  let closing = 0;
  let lost = 0;
  for (const m of got.movements.all) {
    if (m.from === outside && m.entry.startsWith('opening')) opening += m.mercury.ug;
    if (m.from === outside && m.entry.startsWith('bought')) receipts += m.mercury.ug;
    if (isStock(m.to)) closing += m.mercury.ug;
    if (isStock(m.from)) closing -= m.mercury.ug;
    if (m.to.startsWith('loss:')) lost += m.mercury.ug;
  }
  expect([account.opening.ug, account.receipts.ug, account.closing.ug, account.unaccounted.ug]).toEqual([
    opening,
    receipts,
    closing,
    lost,
  ]);
  expect(account.unaccounted.ug / 1e6).toBeCloseTo(5, 6);
});
