/** The drawing of values in a row: one scale for each panel, nothing and everything drawn inside it, what is above the threshold marked without colour. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layTrend, type TrendPanel } from '../../app/drawings/trend-layout.ts';
import { trendSvg } from '../../app/drawings/trend-svg.ts';
import { alarmText, sequenceWords } from '../../app/words/sequence.ts';

const values = fc.array(fc.record({ value: fc.integer({ min: -9000, max: 9000 }), half: fc.integer({ min: 0, max: 4000 }) }), {
  minLength: 1,
  maxLength: 40,
});
const panelsOf = (list: readonly { value: number; half: number }[], threshold: number): TrendPanel[] => [
  { id: 'a', name: 'A', form: 'points', values: list },
  { id: 'b', name: 'B', form: 'line', values: list },
  {
    id: 'c',
    name: 'C',
    form: 'bars',
    values: list.map(({ value }) => ({ value, half: 0 })),
    threshold: { value: threshold, name: 't' },
  },
];
const names = (count: number) => Array.from({ length: count }, (_, i) => `30 September ${2000 + i}`);

describe('the layout', () => {
  test('draws every value of a panel to one scale, its nothing line too, and all of it inside the panel', () => {
    fc.assert(
      fc.property(values, fc.integer({ min: 0, max: 20 }), (list, threshold) => {
        const { panels } = layTrend(panelsOf(list, threshold), names(list.length), 1000);
        for (const panel of panels) {
          // from two heights the scale of the panel, and every other height must follow from it
          const perTick = panel.ticks.map(({ y }) => y);
          expect(perTick.length).toBeGreaterThan(1);
          const within = (y: number) => y >= panel.top - 1e-6 && y <= panel.bottom + 1e-6;
          for (const p of panel.points) expect([p.y, p.top, p.bottom].every(within)).toBe(true);
          expect(within(panel.nothingY)).toBe(true);
          const most = list.reduce((a, b) => (Math.abs(b.value) > Math.abs(a.value) ? b : a));
          if (most.value === 0) continue;
          const perUnit = (panel.nothingY - (panel.points[list.indexOf(most)]?.y ?? 0)) / most.value;
          expect(perUnit).toBeGreaterThan(0);
          for (const [i, p] of panel.points.entries()) {
            expect(panel.nothingY - p.y).toBeCloseTo((list[i]?.value ?? 0) * perUnit, 4);
            if (panel.form !== 'bars') expect(p.bottom - p.top).toBeCloseTo(2 * (list[i]?.half ?? 0) * perUnit, 4);
          }
          if (panel.threshold) expect(panel.nothingY - panel.threshold.y).toBeCloseTo(threshold * perUnit, 4);
        }
      }),
    );
  });

  test('marks what is above the threshold, and nothing at it or below', () => {
    const list = [1, 2, 2.0001, 5].map((value) => ({ value, half: 0 }));
    const bars = layTrend(panelsOf(list, 2), names(4), 1000).panels[2];
    expect(bars?.points.map((p) => p.over)).toEqual([false, false, true, true]);
  });

  test('sets columns from left to right in their own room, and no two words under them into one another', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), (count) => {
        const list = Array.from({ length: count }, () => ({ value: 1, half: 1 }));
        const { columns, left, right } = layTrend(panelsOf(list, 1), names(count), 1000);
        for (const [i, at] of columns.entries()) {
          expect(at.from >= left - 1e-9 && at.to <= right + 1e-9 && at.from < at.x && at.x < at.to).toBe(true);
          const next = columns[i + 1];
          if (next) expect(next.from).toBeGreaterThanOrEqual(at.to - 1e-9);
        }
        const told = columns.filter((at) => at.name !== null);
        for (const [i, at] of told.entries()) {
          const next = told[i + 1];
          if (next) expect(next.x - at.x).toBeGreaterThan(7.4 * (at.name?.length ?? 0));
        }
        expect(columns.at(-1)?.name).not.toBeNull();
      }),
    );
  });

  test('of no columns is empty', () => {
    expect(layTrend([], [], 1000)).toMatchObject({ panels: [], columns: [], height: 0 });
  });
});

describe('the picture', () => {
  const list = [1, 2, 5].map((value) => ({ value, half: 1 }));
  const panels: TrendPanel[] = panelsOf(list, 3).map((p) => (p.id === 'c' ? { ...p, mark: { column: 2, name: 'signal' } } : p));

  test('hatches what is above the threshold and marks the signal by shape and word, all in one ink', () => {
    const svg = trendSvg(layTrend(panels, names(3), 900), { title: 'x', font: 'SourceSans3' });
    expect(svg.match(/url\(#over\)/g)).toHaveLength(1);
    expect(svg).toContain('>signal<');
    expect(svg.match(/<circle/g)).toHaveLength(6);
    for (const [, colour = ''] of svg.matchAll(/(?:fill|stroke)="#([0-9a-f]{6})"/g)) {
      const [r = 0, g = 0, b = 0] = [0, 2, 4].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
      // grey but for a trace of warmth: nothing is told by colour
      expect(Math.max(r, g, b) - Math.min(r, g, b), colour).toBeLessThan(16);
    }
  });

  test('has no markup from a name', () => {
    const svg = trendSvg(layTrend(panels, ['<script>', '"&', 'c'], 900), { title: '<t>', font: '"x' });
    expect(svg).toContain('&lt;script&gt;');
    expect(svg).not.toMatch(/<script|<t>|""x/);
  });
});

describe('the false alarm', () => {
  test('is said as a percentage, and where it comes from', () => {
    expect([alarmText(0.01), alarmText(0.025)]).toEqual([expect.stringMatching(/^1\s%$/), expect.stringMatching(/^2\.50?\s%$/)]);
    expect(new Set((['closing', 'site', 'start'] as const).map((from) => sequenceWords.alarmFrom('5 %', from))).size).toBe(3);
  });
});
