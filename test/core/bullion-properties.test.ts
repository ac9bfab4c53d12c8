/** Rules that hold for any bars: joining and splitting keeps the fine metal, what is shared makes the whole again, and a figure is rounded once. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { barsOf } from '../../app/core/book/bars.ts';
import { readBook } from '../../app/core/book/book.ts';
import { yieldedByMaker } from '../../app/core/book/yielded.ts';
import { divided } from '../../app/core/decimal.ts';
import { uOf } from '../../app/core/measured.ts';
import { type Ratio, sumRatio } from '../../app/core/ratio.ts';
import { decimalText } from '../../app/words/figures.ts';
import { BookMaker, stated } from './book-maker.ts';

const grams = (hundredths: number): string => (hundredths / 100).toFixed(2);
const gold = fc.integer({ min: 0, max: 10_000 }).map((tenths) => (tenths / 10).toFixed(1));
const bars = fc.array(fc.record({ mass: fc.integer({ min: 1, max: 90_000 }), gold }), { minLength: 1, maxLength: 5 });

/** Bars poured out of one charge each and assayed. */
function poured(list: readonly { mass: number; gold: string }[]) {
  const book = BookMaker.site();
  const ids = list.map(({ mass, gold: permille }, i) => {
    const melt = book.add(`melt ${i}`, 'melt', {
      sponges: [],
      added: [{ key: '0', label: 'old gold', weight: stated(grams(mass), '0.01') }],
      bars: [{ key: '1', label: `Bar ${i}`, weight: stated(grams(mass), '0.01') }],
    });
    book.add(`assay ${i}`, 'assay', {
      subject: 'bar',
      bar: `${melt}/1`,
      method: 'outside',
      result: { unit: 'permille', gold: permille, goldU: '0.3' },
    });
    return `${melt}/1`;
  });
  return { book, ids };
}

const same = (a: Ratio, b: Ratio): boolean => a.n * b.d === b.n * a.d;

describe('joining, then splitting', () => {
  test('keeps the fine gold exactly, whatever the bars and however they are poured, and shrinking loses none of it', () => {
    fc.assert(
      fc.property(
        bars,
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 4 }),
        fc.constantFrom(100, 97, 60),
        (list, shares, left) => {
          const { book, ids } = poured(list);
          const whole = list.reduce((s, { mass }) => s + mass, 0);
          const units = shares.reduce((s, x) => s + x, 0);
          const pieces = shares.map((share) => Math.max(1, Math.floor((whole * share * left) / (units * 100))));
          const joined = book.add('joined', 'melt', {
            sponges: [],
            added: list.map(({ mass }, i) => ({
              key: String(i),
              label: `Bar ${i}`,
              bar: ids[i] ?? '',
              weight: stated(grams(mass), '0.01'),
            })),
            bars: pieces.map((mass, i) => ({ key: String(i), label: `New ${i}`, weight: stated(grams(mass), '0.01') })),
          });
          const { all } = barsOf(readBook(book.entries));
          const fine = (of: readonly string[]) => sumRatio(of.map((id) => all.get(id)?.fineGold?.grams ?? { n: -1n, d: 1n }));
          expect(same(fine(ids), fine(pieces.map((_, i) => `${joined}/${i}`)))).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('sharing out', () => {
  test('makes the bar again to the microgram among the clean-ups of a combined charge, gross and fine, and its error too', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 50_000 }), { minLength: 1, maxLength: 5 }),
        fc.integer({ min: 1, max: 20_000 }),
        gold,
        (lots, bar, permille) => {
          const book = BookMaker.site();
          const made = lots.map((mass, i) => {
            const id = book.add(`up ${i}`, 'clean-up', {
              type: 'routine',
              lots: [{ key: '1', label: `L${i}`, weight: stated(grams(mass), '0') }],
            });
            return { id, mass };
          });
          const charge = book.add('charge', 'charge', {
            retort: book.pot,
            rows: made.map(({ id, mass }, i) => ({
              take: 'whole' as const,
              key: String(i),
              lot: `${id}/1`,
              weight: stated(grams(mass), '0'),
            })),
          });
          book.add('fired', 'firing', {
            heats: [{ charge, sponge: stated(grams(bar + 10), '0') }],
            mercury: { weight: stated('1', '0'), vessel: book.bottle },
          });
          const melt = book.add('melt', 'melt', {
            sponges: [{ charge }],
            bars: [{ key: '1', label: 'B', weight: stated(grams(bar), '0.02') }],
          });
          book.add('assay', 'assay', {
            subject: 'bar',
            bar: `${melt}/1`,
            method: 'outside',
            result: { unit: 'permille', gold: permille, goldU: '0' },
          });
          const parts = [...yieldedByMaker(readBook(book.entries)).values()];
          expect(parts).toHaveLength(lots.length);
          expect(parts.reduce((s, p) => s + p.grossUg, 0)).toBe(bar * 10_000);
          // hundredths of a gram times tenths of a part per thousand are whole micrograms
          expect(parts.reduce((s, p) => s + (p.fineUg ?? 0), 0)).toBe(Math.round(bar * Number(permille) * 10));
          // shares of one weighing err together: their errors add up to its own
          expect(parts.reduce((s, p) => s + uOf(p.gross), 0)).toBeCloseTo(20_000, 3);
        },
      ),
      { numRuns: 60 },
    );
  });
});

/** As every exact share is shown. */
const shown = (n: bigint, d: bigint, places: number): string =>
  decimalText(divided({ digits: n, places: 0 }, { digits: d, places: 0 }, places), places);

test('a share is rounded once, half to even, on its exact value: never by way of a longer figure', () => {
  fc.assert(
    fc.property(
      fc.bigInt({ min: 0n, max: 10n ** 12n }),
      fc.bigInt({ min: 1n, max: 10n ** 6n }),
      fc.integer({ min: 0, max: 5 }),
      (n, d, places) => {
        const scaled = n * 10n ** BigInt(places);
        const [whole, rest] = [scaled / d, (scaled % d) * 2n];
        const once = whole + (rest > d || (rest === d && whole % 2n === 1n) ? 1n : 0n);
        expect(BigInt(shown(n, d, places).replace(/[\u202f.]/g, ''))).toBe(once);
      },
    ),
  );
});
