/** The drawing of histories: one scale and one time for all panels, everything inside them, each mark with a shape of its own, and the same in table and CSV. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { type HistoryPanel, layHistory } from '../../app/drawings/history-layout.ts';
import { historySvg } from '../../app/drawings/history-svg.ts';
import { drawnHistory, historyCsv, monthsBetween, mostShown } from '../../app/screens/bullion/history.ts';
import { BookMaker, stated } from '../core/book-maker.ts';

const value = fc.record({
  at: fc.integer({ min: 0, max: 4000 }),
  value: fc.integer({ min: -900, max: 900 }),
  half: fc.integer({ min: 0, max: 90 }),
  usual: fc.option(fc.record({ median: fc.integer({ min: -900, max: 900 }), half: fc.integer({ min: 0, max: 90 }) })),
  outside: fc.boolean(),
});
const panels = fc
  .array(fc.array(value, { minLength: 1, maxLength: 12 }), { minLength: 1, maxLength: 4 })
  .map((lists) =>
    lists.map((values, i): HistoryPanel => ({ id: String(i), name: `P${i}`, values: values.toSorted((a, b) => a.at - b.at) })),
  );

describe('the layout', () => {
  test('draws all panels to one scale and one time, and everything inside its own panel', () => {
    fc.assert(
      fc.property(panels, (list) => {
        const layout = layHistory(list, [], 1000);
        const points = layout.panels.flatMap((laid, p) =>
          laid.points.map((at, i) => ({ ...at, laid, given: list[p]?.values[i] ?? { value: 0, at: 0 } })),
        );
        for (const { laid, top, bottom, x } of points) {
          expect(top >= laid.top - 1e-6 && bottom <= laid.bottom + 1e-6).toBe(true);
          expect(x >= layout.left && x <= layout.right).toBe(true);
        }
        const heights = points.map(({ laid, y, given }) => ({ rise: laid.bottom - y, value: given.value }));
        const [a, b] = [heights[0], heights.find((h) => h.value !== heights[0]?.value)];
        if (!a || !b) return;
        const perUnit = (b.rise - a.rise) / (b.value - a.value);
        expect(perUnit).toBeGreaterThan(0);
        for (const h of heights) expect(h.rise - a.rise).toBeCloseTo((h.value - a.value) * perUnit, 4);
      }),
    );
  });

  test('a value without a history, one within it and one outside it are three shapes, on the page and in the picture', () => {
    const usual = { median: 5, half: 1 };
    const values = [
      { at: 1, value: 5, half: 0, usual: null, outside: false },
      { at: 2, value: 5, half: 1, usual, outside: false },
      { at: 3, value: 9, half: 0, usual, outside: true },
    ];
    const layout = layHistory([{ id: 'a', name: '<b>', values }], [{ at: 2, name: 'May & June' }], 800);
    expect(layout.panels[0]?.points.map((p) => p.mark)).toEqual(['early', 'usual', 'outside']);
    const svg = historySvg(layout, { title: 'T', font: 'F', legend: ['what it means'] });
    expect(svg.match(/<circle[^>]*fill="#ffffff"/g)).toHaveLength(1);
    expect(svg.match(/<circle[^>]*fill="#1c1c1a"/g)).toHaveLength(1);
    expect(svg).toMatch(/fill="#ffffff" stroke="#1c1c1a" stroke-width="2"/);
    expect(svg).toContain('&lt;b&gt;');
    expect(svg).toContain('May &amp; June');
    expect(svg).toContain('what it means');
  });

  test('no two words under it run into one another, and nothing is laid out of nothing', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 100 }), { maxLength: 40 }), (days) => {
        const times = days.toSorted((a, b) => a - b).map((at) => ({ at, name: 'September 2026' }));
        const ends = [0, 100].map((at) => ({ at, value: 1, half: 0, usual: null, outside: false }));
        const shown = layHistory([{ id: 'a', name: 'A', values: ends }], times, 900).times;
        for (const [i, time] of shown.entries()) {
          const next = shown[i + 1];
          if (next) expect(next.x - time.x).toBeGreaterThan(14 * 7.3);
          expect(time.x >= 7 * 7.3 && time.x <= 900 - 7 * 7.3).toBe(true);
        }
      }),
    );
    expect(layHistory([], [], 900).height).toBe(0);
  });
});

describe('the months under it', () => {
  test('are some ten at most, each the first of its month and within the days shown', () => {
    expect(monthsBetween('2026-01-15', '2026-04-02').map((m) => m.name)).toEqual(['February 2026', 'March 2026', 'April 2026']);
    expect(monthsBetween('2020-03-01', '2026-04-02').map((m) => m.name)).toEqual([
      'January 2021',
      'January 2022',
      'January 2023',
      'January 2024',
      'January 2025',
      'January 2026',
    ]);
    expect(monthsBetween('2026-04-02', '2026-04-20').map((m) => m.name)).toEqual(['2 April 2026', '20 April 2026']);
  });
});

describe('the page', () => {
  const book = BookMaker.site();
  for (let i = 0; i < mostShown + 3; i += 1) {
    const month = 1 + Math.floor(i / 28);
    const at = { happened: `2026-0${month}-${String(1 + (i % 28)).padStart(2, '0')}T09:00+13:00` };
    const lot = book.add(
      `up ${i}`,
      'clean-up',
      { type: 'routine', lots: [{ key: '1', label: `L${i}`, source: 'mortar', weight: stated('100', '0') }] },
      at,
    );
    const charge = book.add(
      `charge ${i}`,
      'charge',
      { retort: book.pot, rows: [{ take: 'whole', key: '1', lot: `${lot}/1`, weight: stated('100', '0') }] },
      at,
    );
    book.add(
      `fired ${i}`,
      'firing',
      {
        heats: [{ charge, sponge: stated(String(38 + (i % 3)), '0.05') }],
        mercury: { weight: stated('60', '0.1'), vessel: book.bottle },
      },
      at,
    );
  }
  const read = readBook(book.entries);

  test('shows the latest values of a source and says how many there are; the CSV has all of them', () => {
    const drawn = drawnHistory(read, 'sponge');
    expect(drawn.leftOutOf).toBe(mostShown + 3);
    expect(drawn.panels.map((p) => [p.name, p.values.length])).toEqual([['Mortar box, Pot retort', mostShown]]);
    expect(drawn.rows[0]).toHaveLength(mostShown);
    expect(historyCsv(read, 'sponge').trimEnd().split('\n')).toHaveLength(mostShown + 4);
    expect(historyCsv(read, 'sponge')).toContain('"mortar"');
  });

  test('tells each value with its uncertainty, what was usual, by how many, and how it stands', () => {
    const row = drawnHistory(read, 'sponge').rows[0]?.at(-1);
    expect(row?.value).toBe('38.00');
    expect(row?.U).toBe('0.10');
    expect(row?.told).toContain('38.00 ± 0.10 %; usual 39.00 ± ');
    expect(row?.told).toMatch(new RegExp(`by ${mostShown + 2} before it: within$`));
  });

  test('has nothing to draw where no bar was assayed', () => {
    expect(drawnHistory(read, 'fineness').panels).toEqual([]);
  });
});
