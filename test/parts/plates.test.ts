/** Amalgam by plate: what names one plate is its own, what names several stays theirs together, nothing is divided or lost, and the plan says so without colour. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { plateAmalgam, scrapedPeriods } from '../../app/core/book/plate-amalgam.ts';
import { type LotSource, lotSources } from '../../app/core/kinds/clean-up.ts';
import { type DrawnBattery, layPlates } from '../../app/drawings/plates-layout.ts';
import { platesSvg } from '../../app/drawings/plates-svg.ts';
import { drawnPlates, periodOf, plateEntries, plateRows, platesCsv } from '../../app/screens/retort/plates.ts';
import { BookMaker, stated } from '../core/book-maker.ts';

const grams = (sum: { net: { ug: number } }) => Math.round(sum.net.ug / 1e4) / 100;

function site() {
  const maker = BookMaker.site();
  const battery = maker.add('battery', 'battery', { label: 'Battery one', stamps: 5 });
  const lower = maker.add('lower plate', 'plate', { label: 'Lower', battery, order: 2, lengthM: 1.8, widthM: 1.2 });
  const apron = maker.add('apron plate', 'plate', { label: 'Apron', battery, order: 1, lengthM: 2.4, widthM: 1.2 });
  return Object.assign(maker, { battery, lower, apron });
}
type Lot = { g: string; plates?: string[]; source?: LotSource };
const cleaned = (book: BookMaker, name: string, lots: readonly Lot[], type: 'routine' | 'general' = 'routine') =>
  book.add(name, 'clean-up', {
    type,
    lots: lots.map(({ g, ...lot }, i) => ({ key: String(i + 1), label: `${name} ${i + 1}`, weight: stated(g), ...lot })),
  });

describe('amalgam by plate', () => {
  test('one plate, several together, no plate named and no plate at all are four things', () => {
    const maker = site();
    cleaned(maker, 'march', [
      { g: '100.5', plates: [maker.apron] },
      { g: '40', plates: [maker.lower, maker.apron], source: 'outside-plate' },
      { g: '30', source: 'outside-plate' },
      { g: '20', source: 'mortar' },
      { g: '5' },
    ]);
    maker.add('scaled', 'plate-work', {
      plate: maker.lower,
      what: 'scaled',
      made: [{ key: '1', label: 'S 1', weight: stated('12'), source: 'scale' }],
    });
    const found = plateAmalgam(readBook(maker.entries));
    expect(found.batteries.flatMap(({ plates }) => plates.map((p) => [p.body.label, grams(p.amalgam)]))).toEqual([
      ['Apron', 100.5],
      ['Lower', 12],
    ]);
    expect(found.together.map((one) => [one.plates.length, grams(one.amalgam)])).toEqual([[2, 40]]);
    expect([grams(found.unsaid.amalgam), grams(found.elsewhere.amalgam)]).toEqual([35, 20]);
  });

  test('whatever is named, the parts come to the whole and a shared amount is in no plate', () => {
    const lot = fc.record({
      g: fc.integer({ min: 1, max: 9000 }).map((n) => (n / 10).toFixed(1)),
      plates: fc.constantFrom<readonly number[]>([], [0], [1], [0, 1], [1, 0]),
      source: fc.option(fc.constantFrom(...lotSources), { nil: undefined }),
    });
    fc.assert(
      fc.property(fc.array(fc.array(lot, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 5 }), (all) => {
        const maker = site();
        const ids = [maker.apron, maker.lower];
        for (const [i, lots] of all.entries())
          cleaned(
            maker,
            `clean ${i}`,
            lots.map(({ g, plates, source }) => ({
              g,
              ...(plates.length === 0 ? {} : { plates: plates.map((p) => ids[p] ?? '') }),
              ...(source === undefined ? {} : { source }),
            })),
          );
        const found = plateAmalgam(readBook(maker.entries));
        const flat = all.flat();
        const sum = (test: (l: (typeof flat)[number]) => boolean) =>
          Math.round(flat.filter(test).reduce((s, l) => s + Number(l.g), 0) * 10) / 10;
        const alone = found.batteries.flatMap(({ plates }) => plates);
        for (const [i, id] of ids.entries())
          expect(grams(alone.find((p) => p.id === id)?.amalgam ?? { net: { ug: -1 } })).toBeCloseTo(
            sum((l) => l.plates.length === 1 && l.plates[0] === i),
            6,
          );
        const parts = [...alone, ...found.together, found.unsaid, found.elsewhere].map((one) => grams(one.amalgam));
        expect(parts.reduce((a, b) => a + b, 0)).toBeCloseTo(
          sum(() => true),
          6,
        );
        expect(found.together.length).toBeLessThanOrEqual(1);
      }),
      { numRuns: 40 },
    );
  });

  test('a period is the whole, a campaign or one clean-up, and an unknown one is the whole', () => {
    const maker = site();
    const first = cleaned(maker, 'first', [{ g: '10', plates: [maker.apron] }]);
    const general = cleaned(maker, 'general', [{ g: '20', plates: [maker.apron] }], 'general');
    cleaned(maker, 'after', [{ g: '40', plates: [maker.apron] }]);
    const book = readBook(maker.entries);
    expect(scrapedPeriods(book).map(({ is }) => is)).toEqual(['all', 'campaign', 'campaign', 'clean-up', 'clean-up', 'clean-up']);
    const apron = (id: string) => plateRows(book, periodOf(book, id)).rows[0]?.amalgam;
    expect([`campaign-${general}`, 'campaign-running', first, 'all', 'nobody-knows'].map(apron)).toEqual([
      '30',
      '40',
      '10',
      '70',
      '70',
    ]);
  });
});

describe('the page of it', () => {
  const told = () => {
    const maker = site();
    const one = cleaned(maker, 'march', [
      { g: '100.5', plates: [maker.apron] },
      { g: '40', plates: [maker.apron, maker.lower] },
    ]);
    return { maker, one, book: readBook(maker.entries) };
  };

  test('a shared amount is told as not divided, and a plate that nothing names alone says so', () => {
    const { maker, book } = told();
    const { batteries, told: texts } = drawnPlates(book, periodOf(book, 'all'));
    expect(batteries[0]?.shared[0]?.text).toBe('40\u00a0g from Apron and Lower together, not divided');
    expect(batteries[0]?.plates.map((plate) => plate.level)).toEqual([4, 0]);
    expect(texts.get(maker.lower)?.text).toContain('nothing that names it alone');
    expect(texts.get(maker.apron)?.href).toBe(`#/retort/plate/all/${maker.apron}`);
  });

  test('the clean-ups of a plate show what came off it alone and with others', () => {
    const { maker, one, book } = told();
    const whole = periodOf(book, 'all');
    expect(plateEntries(book, whole, maker.apron)).toMatchObject([{ id: one, alone: '100.5', shared: '40' }]);
    expect(plateEntries(book, whole, maker.lower)).toMatchObject([{ id: one, alone: '', shared: '40' }]);
  });

  test('the copy holds the rows of the table with what the register knows', () => {
    const { book } = told();
    const lines = platesCsv(book, periodOf(book, 'all')).trim().split('\n');
    // 100.5 of 140.5 g is 71.5 %
    expect(lines[1]).toMatch(/^"Battery one","Apron","1","2.4","1.2","100.5","72.%","one entry"$/);
    expect(lines[3]).toContain('"Apron and Lower, together","","","","40"');
    expect(plateRows(book, periodOf(book, 'all')).total).toBe('140.5');
  });
});

describe('the plan', () => {
  const plate = fc.record({
    lengthM: fc.double({ min: 0.1, max: 6, noNaN: true }),
    widthM: fc.double({ min: 0.1, max: 3, noNaN: true }),
  });

  test('draws plates to one scale, down the flow, all inside and none on another', () => {
    fc.assert(
      fc.property(fc.array(fc.array(plate, { minLength: 1, maxLength: 8 }), { minLength: 1, maxLength: 3 }), (lists) => {
        const batteries = lists.map(
          (plates, b): DrawnBattery => ({
            id: String(b),
            name: 'B',
            shared: [],
            plates: plates.map((p, i) => ({ id: `${b} ${i}`, lines: ['a', 'b', 'c'], level: i % 5, ...p })),
          }),
        );
        const laid = layPlates(batteries, 1020);
        const all = laid.batteries.flatMap(({ plates }) => plates);
        const given = lists.flat();
        const perM = (all[0]?.width ?? 0) / (given[0]?.lengthM ?? 1);
        for (const [i, p] of all.entries()) {
          expect(p.width / (given[i]?.lengthM ?? 1)).toBeCloseTo(perM, 6);
          expect(p.height / (given[i]?.widthM ?? 1)).toBeCloseTo(perM, 6);
          expect(p.x >= 0 && p.x + p.width <= 1020 && p.y >= 0 && p.y + p.height <= laid.height).toBe(true);
          for (const q of all.slice(i + 1))
            expect(p.x + p.width <= q.x || q.x + q.width <= p.x || p.y + p.height <= q.y || q.y + q.height <= p.y).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('one size unknown and none is to scale; each level has a hatching of its own, and texts stay texts', () => {
    const of = (id: string, level: number, lengthM: number | null) => ({ id, lines: ['<i>'], level, lengthM, widthM: 1 });
    const batteries = [
      {
        id: 'b',
        name: 'a & b',
        plates: [0, 1, 2, 3, 4].map((l) => of(`p${l}`, l, l === 2 ? null : 2)),
        shared: [{ plates: ['p1', 'p3'], text: 'both' }],
      },
    ];
    const laid = layPlates(batteries, 1020);
    expect(laid.toScale).toBe(false);
    const svg = platesSvg(laid, { title: 'T', font: 'F', legend: ['what it means'] });
    for (const level of [1, 2, 3, 4]) expect(svg).toContain(`fill="url(#level-${level})"`);
    expect(svg.match(/stroke-dasharray/g)).toHaveLength(1);
    expect(svg).toContain('&lt;i&gt;');
    expect(svg).toContain('a &amp; b');
    expect(svg).toContain('>both<');
    expect(svg).toContain('what it means');
    expect(svg).not.toMatch(/NaN|undefined/);
    expect(layPlates([], 1020).height).toBe(0);
  });
});
