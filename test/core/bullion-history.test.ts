/** Values of a source against its own earlier ones: the median, the spread, what is beyond it; and which bars, charges and melts give a value. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { bullionHistory } from '../../app/core/book/bullion-history.ts';
import { heldAgainstEarlier, leastEarlier } from '../../app/core/own-history.ts';
import { BookMaker, stated } from './book-maker.ts';

/** By sorting everything anew, as one would on paper. */
function naively(earlier: readonly number[]) {
  const middle = (list: readonly number[]) => {
    const s = list.toSorted((a, b) => a - b);
    return ((s[Math.floor((s.length - 1) / 2)] ?? 0) + (s[Math.ceil((s.length - 1) / 2)] ?? 0)) / 2;
  };
  const median = middle(earlier);
  return { median, half: 2 * 1.4826 * middle(earlier.map((v) => Math.abs(v - median))) };
}

describe('a value against its own history', () => {
  test('is held against the median and twice the robust spread of those before it, never itself', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -50, max: 50 }), { maxLength: 30 }), (values) => {
        for (const [i, { usual, outside }] of heldAgainstEarlier(values).entries()) {
          if (i < leastEarlier) expect({ usual, outside }).toEqual({ usual: null, outside: false });
          else {
            const { median, half } = naively(values.slice(0, i));
            expect(usual?.median).toBe(median);
            expect(usual?.half).toBeCloseTo(half, 9);
            expect(usual?.earlier).toBe(i);
            if (Math.abs(Math.abs((values[i] ?? 0) - median) - half) > 1e-9)
              expect(outside).toBe(Math.abs((values[i] ?? 0) - median) > half);
          }
        }
      }),
    );
  });

  test('one bad value does not widen what is usual', () => {
    const even = [10, 11, 12, 13, 14, 15, 16];
    const [calm, bad] = [heldAgainstEarlier([...even, 13]).at(-1), heldAgainstEarlier([...even.slice(0, -1), 900, 13]).at(-1)];
    expect(bad?.usual?.half).toBe(calm?.usual?.half);
    expect(heldAgainstEarlier([...even, 60]).at(-1)?.outside).toBe(true);
  });
});

/** Runs of one source, each with its own melt and bar: charge 100 g, sponge and bar as given. */
function site(
  runs: readonly { sponge: string; bar: string; gold?: string; added?: string; source?: 'mortar' | 'inside-plate' }[],
) {
  const book = BookMaker.site();
  for (const [i, { sponge, bar, gold, added, source = 'mortar' }] of runs.entries()) {
    const at = { happened: `2026-0${1 + Math.floor(i / 28)}-${String(1 + (i % 28)).padStart(2, '0')}T09:00+13:00` };
    const lot = book.add(
      `up ${i}`,
      'clean-up',
      { type: 'routine', lots: [{ key: '1', label: `L${i}`, source, weight: stated('100', '0.03') }] },
      at,
    );
    const charge = book.add(
      `charge ${i}`,
      'charge',
      { retort: book.pot, rows: [{ take: 'whole', key: '1', lot: `${lot}/1`, weight: stated('100', '0.03') }] },
      at,
    );
    book.add(
      `firing ${i}`,
      'firing',
      { heats: [{ charge, sponge: stated(sponge, '0.04') }], mercury: { weight: stated('60', '0.1'), vessel: book.bottle } },
      at,
    );
    const melt = book.add(
      `melt ${i}`,
      'melt',
      {
        sponges: [{ charge }],
        bars: [{ key: '1', label: `B${i}`, weight: stated(bar, '0') }],
        ...(added === undefined ? {} : { added: [{ key: '2', label: 'old prills', weight: stated(added, '0') }] }),
      },
      at,
    );
    if (gold !== undefined)
      book.add(
        `assay ${i}`,
        'assay',
        {
          subject: 'bar',
          bar: `${melt}/1`,
          method: 'outside',
          laboratory: 'a laboratory',
          result: { unit: 'permille', gold, goldU: '0.2' },
        },
        at,
      );
  }
  return readBook(book.entries);
}

describe('the room’s histories', () => {
  const runs = ['39', '40', '41', '40', '39', '30'].map((sponge) => ({ sponge, bar: String(Number(sponge) - 1), gold: '870' }));

  test('a light sponge is outside what the same source and retort left before; the five before it have no history yet', () => {
    const [mortar] = bullionHistory(site(runs), 'sponge');
    expect(mortar?.source).toBe('mortar');
    expect(mortar?.points.map((p) => p.outside)).toEqual([false, false, false, false, false, true]);
    expect(mortar?.points.at(-1)).toMatchObject({ value: 0.3, usual: { median: 0.4, earlier: 5 } });
    // 0.3 ± with u 0.04 on 30 and 0.03 on 100
    expect(mortar?.points.at(-1)?.u).toBeCloseTo(Math.hypot(0.0004, 0.3 * 0.0003), 9);
  });

  test('a melt shrinks by a share of what went in, whose error is that of the sponge alone where the bar has none', () => {
    const [mortar] = bullionHistory(site(runs), 'shrinkage');
    expect(mortar?.points[0]?.value).toBeCloseTo(1 / 39, 12);
    expect(mortar?.points[0]?.u).toBeCloseTo((38 / 39) * (0.04 / 39), 9);
  });

  test('sources stand apart, and a melt with other metal in it is of several', () => {
    const book = site([
      ...runs,
      { sponge: '35', bar: '34', gold: '820', source: 'inside-plate' },
      { sponge: '40', bar: '44', gold: '850', added: '5' },
    ]);
    const told = (kind: 'fineness' | 'shrinkage') =>
      bullionHistory(book, kind).map(({ source, points }) => [source, points.length]);
    expect(told('shrinkage')).toEqual([
      ['mortar', 6],
      ['inside-plate', 1],
      ['several', 1],
    ]);
    expect(told('fineness')).toEqual([
      ['mortar', 6],
      ['inside-plate', 1],
      ['several', 1],
    ]);
    expect(bullionHistory(book, 'fineness')[0]?.points[0]).toMatchObject({ value: 870, u: 0.2 });
  });

  test('a bar nobody assayed and a run that still waits give no value', () => {
    const book = site([{ sponge: '40', bar: '39' }]);
    expect(bullionHistory(book, 'fineness')).toEqual([]);
    expect(bullionHistory(book, 'sponge')[0]?.points).toHaveLength(1);
  });
});
