/** Yields by parcel: a clean-up's gold goes to the ore behind it, shares re-sum, late gold is nobody's, and uncertainty comes through. */
import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { campaigns } from '../../app/core/book/campaigns.ts';
import { parcelYields } from '../../app/core/book/parcel-yields.ts';
import { cleanUpYields } from '../../app/core/book/yields.ts';
import { toDouble } from '../../app/core/ratio.ts';
import { BookMaker, stated } from './book-maker.ts';

const on = (day: string) => ({ happened: `2026-${day}T09:00+13:00` });

function site() {
  const book = BookMaker.site();
  const battery = book.add('battery', 'battery', { label: 'Battery' });
  const crush = (name: string, day: string, mass: string, parcel?: string, u?: number) =>
    book.add(
      name,
      'crushing',
      {
        battery,
        feed: 'whole-ore',
        mercuryFed: 'none',
        ore: { mass, ...(u === undefined ? {} : { u }) },
        ...(parcel ? { parcel } : {}),
      },
      on(day),
    );
  const gather = (name: string, day: string, more: Record<string, unknown> = {}) =>
    book.add(
      name,
      'clean-up',
      { type: 'routine', lots: [{ key: '1', label: name, weight: stated('300', '0.1') }], ...more },
      on(day),
    );
  /** The lot fired and melted into one bar, assayed at 900. */
  const pour = (name: string, lot: string, day: string, bar: string) => {
    const charge = book.add(
      `charge ${name}`,
      'charge',
      { retort: book.pot, rows: [{ take: 'whole', key: '1', lot, weight: stated('300', '0.1') }] },
      on(day),
    );
    const heat = { charge, sponge: stated('100', '0.1') };
    book.add(
      `firing ${name}`,
      'firing',
      { heats: [heat], mercury: { weight: stated('190', '0.1'), vessel: book.bottle } },
      on(day),
    );
    const bars = [{ key: '1', label: `Bar ${name}`, weight: stated(bar, '0.05') }];
    const melt = book.add(`melt ${name}`, 'melt', { sponges: [{ charge }], bars }, on(day));
    book.add(
      `assay ${name}`,
      'assay',
      { subject: 'bar', bar: `${melt}/1`, method: 'outside', result: { unit: 'permille', gold: '900', goldU: '1', k: 2 } },
      on(day),
    );
    return charge;
  };
  return { book, crush, gather, pour };
}

describe('a parcel', () => {
  test('has a clean-up alone where only its ore was crushed since the last of its type, with one standard uncertainty', () => {
    const { book, crush, gather, pour } = site();
    const own = book.add('own ore', 'parcel', { label: 'North reef', owner: 'An owner' });
    crush('crushed', '04-01', '10 t', own, 0.02);
    const c = gather('april', '04-02');
    pour('april', `${c}/1`, '04-03', '90');
    const [parcel] = parcelYields(readBook(book.entries));
    expect(parcel).toMatchObject({ allocated: false, oreFrom: 'crushings', why: null });
    expect(parcel?.grossRate?.gPerTonne).toBeCloseTo(9, 9);
    expect(parcel?.fineRate?.gPerTonne).toBeCloseTo(8.1, 9);
    // relative: ore 0.02, bar 0.05/90, assay 0.5/900, by hand
    expect(parcel?.fineRate?.u).toBeCloseTo(8.1 * Math.hypot(0.02, 0.05 / 90, 0.5 / 900), 6);
  });

  test('shares with another by mass of ore, is marked allocated, and the parts make the bar again', () => {
    const { book, crush, gather, pour } = site();
    const a = book.add('parcel a', 'parcel', { label: 'A' });
    const b = book.add('parcel b', 'parcel', { label: 'B' });
    crush('one', '04-01', '10 t', a);
    crush('two', '04-01', '20.0001 t', b);
    const c = gather('april', '04-02');
    pour('april', `${c}/1`, '04-03', '90.000001');
    const both = parcelYields(readBook(book.entries));
    expect(both.map((p) => p.allocated)).toEqual([true, true]);
    expect(both.reduce((s, p) => s + (p.gross?.ug ?? 0), 0)).toBe(90_000_001);
    expect((both[0]?.gross?.ug ?? 0) / 90_000_001).toBeCloseTo(10 / 30.0001, 6);
    // the ore it came of is not weighed to an uncertainty: none is stated
    expect(both[0]?.grossRate?.u).toBe(null);
  });

  test('named by a clean-up has it alone, whatever else was crushed', () => {
    const { book, crush, gather, pour } = site();
    const a = book.add('parcel a', 'parcel', { label: 'A' });
    const b = book.add('parcel b', 'parcel', { label: 'B', ore: { mass: '20 t' } });
    crush('one', '04-01', '10 t', a);
    crush('two', '04-01', '20 t', b);
    const c = gather('april', '04-02', { parcel: b });
    pour('april', `${c}/1`, '04-03', '90');
    const [first, second] = parcelYields(readBook(book.entries));
    expect(first).toMatchObject({ gross: null, why: 'not-melted' });
    expect(second).toMatchObject({ allocated: false, oreFrom: 'register' });
    expect(second?.grossRate?.gPerTonne).toBeCloseTo(4.5, 9);
  });

  test('of which nothing was crushed has no yield, in words; what lies in the safe is not the yield of the crushing', () => {
    const { book, crush, gather } = site();
    const a = book.add('parcel a', 'parcel', { label: 'A' });
    expect(parcelYields(readBook(book.entries))[0]).toMatchObject({ grossRate: null, why: 'nothing-crushed' });
    crush('one', '04-01', '10 t', a);
    gather('april', '04-02');
    expect(parcelYields(readBook(book.entries))[0]).toMatchObject({ grossRate: null, why: 'not-melted' });
  });

  test('has its recoveries by its own assays of ore and tailings, each named, and gold unaccounted with its sign', () => {
    const { book, crush, gather, pour } = site();
    const a = book.add('parcel a', 'parcel', { label: 'A' });
    crush('one', '04-01', '10 t', a);
    const c = gather('april', '04-02');
    pour('april', `${c}/1`, '04-03', '90');
    const grade = (name: string, subject: 'ore' | 'tailings', gold: string) =>
      book.add(name, 'assay', { subject, parcel: a, method: 'outside', result: { unit: 'g-t', gold } }, on('04-05'));
    grade('head of it', 'ore', '10');
    grade('tail of it', 'tailings', '2.5');
    const found = parcelYields(readBook(book.entries))[0]?.recoveries;
    // product 81 g of 100 g in the head, 25 g in the tailings: six more than came in
    expect(found?.byHead && toDouble(found.byHead)).toBeCloseTo(0.81, 9);
    expect(found?.byHeadAndTail && toDouble(found.byHeadAndTail)).toBeCloseTo(0.75, 9);
    expect(found?.calculatedHead && toDouble(found.calculatedHead)).toBeCloseTo(10.6, 9);
    expect(found?.unaccounted && toDouble(found.unaccounted)).toBeCloseTo(-6, 9);
  });
});

test('amalgam refined elsewhere has its yield by the out-turn: their bullion and fine gold, marked', () => {
  const { book, crush, gather } = site();
  const a = book.add('parcel a', 'parcel', { label: 'A' });
  crush('one', '04-01', '10 t', a);
  const c = gather('april', '04-02', { ore: { mass: '10 t' } });
  const sent = book.add(
    'sent off',
    'transfer',
    { way: 'out', what: 'amalgam', party: 'a refiner', lot: `${c}/1`, weight: stated('300', '0.1') },
    on('04-04'),
  );
  book.add('their word', 'out-turn', { transfers: [sent], melted: stated('95', '0.1'), gold: { permille: '850' } }, on('04-20'));
  const read = readBook(book.entries);
  expect(cleanUpYields(read)[0]).toMatchObject({ barUg: 95_000_000, fineUg: 80_750_000, outTurn: true, why: null });
  expect(parcelYields(read)[0]?.fineRate?.gPerTonne).toBeCloseTo(8.075, 9);
});

test('a month written by a cleaning alone counts, over the crushings since the last; pan and scale gold is the campaign’s and no month’s', () => {
  const { book, crush, gather, pour } = site();
  crush('one', '04-01', '10 t');
  const clean = book.add(
    'dirty month',
    'cleaning',
    {
      dirty: { weight: stated('300', '0.1'), from: 'plates' },
      made: [{ key: '1', label: 'ball', weight: stated('300', '0.1') }],
    },
    on('04-02'),
  );
  pour('april', `${clean}/1`, '04-03', '90');
  const pan = gather('pan gold', '04-10', { lots: [{ key: '1', label: 'pan', weight: stated('300', '0.1'), source: 'pan' }] });
  pour('pan', `${pan}/1`, '04-11', '12');
  const read = readBook(book.entries);
  expect(cleanUpYields(read)[0]?.gPerTonne).toBeCloseTo(9, 9);
  const [campaign] = campaigns(read);
  expect(campaign).toMatchObject({ grossUg: 102_000_000, lateUg: 12_000_000, late: [pan], why: null });
  expect(campaign?.gPerTonne).toBeCloseTo(10.2, 9);
});

test('a general clean-up that names no parcel is the campaign’s: no parcel has its gold, and the campaign’s yield has its uncertainty', () => {
  const { book, crush, gather, pour } = site();
  const parcel = book.add('parcel one', 'parcel', { label: 'North reef' });
  crush('crushed', '04-01', '100 t', parcel, 0.03);
  const month = gather('april', '04-02', { ore: { mass: '100 t', u: 0.03 } });
  pour('april', `${month}/1`, '04-03', '80');
  const general = gather('general', '04-05', { type: 'general', ore: { mass: '100 t', u: 0.03 } });
  pour('general', `${general}/1`, '04-06', '20');
  const read = readBook(book.entries);
  expect(parcelYields(read)[0]?.gross?.ug).toBe(80_000_000);
  const [campaign] = campaigns(read);
  expect(campaign?.grossRate?.gPerTonne).toBe(1);
  // two bars of u 0.05 g on 100 g, ore 3 %
  expect(campaign?.grossRate?.u).toBeCloseTo(Math.hypot(Math.hypot(0.05, 0.05) / 100, 0.03), 9);
  expect(campaign?.fineRate?.gPerTonne).toBeCloseTo(0.9, 12);
  expect(campaign?.fineRate?.u).toBeGreaterThan(0.9 * 0.03);
});

test('a general clean-up that states less ore than its months together contradicts them: no yield, in words, and the gold stays', () => {
  const { book, gather, pour } = site();
  const month = gather('april', '04-02', { ore: { mass: '100 t' } });
  pour('april', `${month}/1`, '04-03', '80');
  const general = gather('general', '04-05', { type: 'general', ore: { mass: '2 t' } });
  pour('general', `${general}/1`, '04-06', '20');
  expect(campaigns(readBook(book.entries))[0]).toMatchObject({
    why: 'ore-contradicts',
    gPerTonne: null,
    grossRate: null,
    grossUg: 100_000_000,
  });
});
