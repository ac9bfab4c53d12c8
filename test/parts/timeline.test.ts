/** The drawing along the clock: to one scale, no word of a lane on another, what lies outside or has no time says so by its shape, nothing of it as markup. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type LaidText,
  layTimeline,
  type MarkLook,
  type SpanLook,
  type TimelineDrawn,
  type TimelineLane,
} from '../../app/drawings/timeline-layout.ts';
import { timelineSvg, wrapped } from '../../app/drawings/timeline-svg.ts';

const drawnOf = (more: Partial<TimelineDrawn>): TimelineDrawn => ({
  minutes: 480,
  lanes: [],
  panels: [],
  hours: [],
  tickText: (plain) => plain,
  ...more,
});
const lane = (more: Partial<TimelineLane>): TimelineLane => ({
  id: 'a',
  name: 'A lane',
  spans: [],
  marks: [],
  note: '',
  ...more,
});
const minutes = fc.integer({ min: -200, max: 700 });
const text = fc.string({ maxLength: 60 }).map((t) => t.trim());
const spanLook = fc.constantFrom<SpanLook>('filled', 'hatched', 'crossed', 'dotted', 'open');
const markLook = fc.constantFrom<MarkLook>('dot', 'ring', 'cross', 'diamond', 'triangle');
const lanes = fc.record({
  spans: fc.array(fc.record({ from: minutes, long: fc.integer({ min: 0, max: 300 }), look: spanLook, text }), { maxLength: 6 }),
  marks: fc.array(fc.record({ at: fc.option(minutes), look: markLook, text }), { maxLength: 8 }),
  note: text,
});
const ends = ({ x, width, anchor }: LaidText): [number, number] =>
  anchor === 'start' ? [x, x + width] : anchor === 'end' ? [x - width, x] : [x - width / 2, x + width / 2];

describe('the layout', () => {
  test('draws every lane to one time, everything inside, and no word of a lane on another', () => {
    fc.assert(
      fc.property(lanes, ({ spans, marks, note }) => {
        const laid = layTimeline(
          drawnOf({
            lanes: [
              lane({
                spans: spans.map(({ from, long, ...s }, i) => ({ id: `s${i}`, from, to: from + long, ...s })),
                marks: marks.map((m, i) => ({ id: `m${i}`, ...m })),
                note,
              }),
            ],
          }),
          1020,
        );
        const only = laid.lanes[0];
        if (!only) throw new Error('one lane was given');
        const words = [...only.spans, ...only.marks].map(({ label }) => label);
        for (const [i, one] of words.entries()) {
          const [a, b] = ends(one);
          expect(a).toBeGreaterThanOrEqual(laid.left - 1e-6);
          expect(b).toBeLessThanOrEqual(laid.right + 1e-6);
          expect(one.y > only.top && one.y < only.bottom).toBe(true);
          for (const other of words.slice(i + 1)) {
            const [c, d] = ends(other);
            expect(one.y !== other.y || b <= c || d <= a).toBe(true);
          }
        }
        for (const span of only.spans) {
          expect(span.x).toBeGreaterThanOrEqual(laid.left);
          expect(span.x + span.width).toBeLessThanOrEqual(laid.right);
        }
        const [whole] = spans.filter((s) => s.from >= 0 && s.from + s.long <= 480 && s.long > 20);
        if (whole) {
          const drawn = only.spans[spans.indexOf(whole)];
          expect((drawn?.width ?? 0) / whole.long).toBeCloseTo((laid.right - laid.left - 8) / 480, 6);
        }
        expect(laid.aims.map((aim) => aim.id)).toEqual([...spans.map((_, i) => `s${i}`), ...marks.map((_, i) => `m${i}`)]);
      }),
    );
  });

  test('what lies before or after the drawing, and what has no time, has a shape of its own at the edge', () => {
    const marks = [-30, 700, null, 60].map((at, i) => ({ id: `m${i}`, at, look: 'dot' as const, text: 'x' }));
    const laid = layTimeline(drawnOf({ lanes: [lane({ marks })] }), 1020);
    expect(laid.lanes[0]?.marks.map((m) => m.look)).toEqual(['early', 'late', 'untimed', 'dot']);
    expect(new Set(laid.lanes[0]?.marks.map((m) => m.shape)).size).toBe(4);
  });

  test('a lane in which nothing stands is one line with what is missing', () => {
    const laid = layTimeline(drawnOf({ lanes: [lane({ note: 'not written' })] }), 1020);
    expect(laid.lanes[0]?.note?.text).toBe('not written');
    expect((laid.lanes[0]?.bottom ?? 0) - (laid.lanes[0]?.top ?? 0)).toBe(24);
  });

  test('values stand to scale over their time, with ticks as the site writes them; a line far above is named', () => {
    const laid = layTimeline(
      drawnOf({
        tickText: (plain) => plain.replace('.', ','),
        panels: [
          {
            id: 'air',
            name: 'Air',
            steps: [{ id: 's', from: 0, to: 60, value: 0.01, mark: 'read', text: '0,010' }],
            moments: [{ id: 'm', at: 240, value: 0.02, mark: 'below', text: '< 0,020' }],
            lines: [
              { value: 0.02, name: 'a line' },
              { value: 5, name: 'far above' },
            ],
          },
        ],
      }),
      1020,
    );
    const panel = laid.panels[0];
    expect(panel?.above).toBe('far above');
    expect(panel?.lines.map((line) => line.label.text)).toEqual(['a line']);
    expect(panel?.ticks.some((tick) => tick.text.includes(','))).toBe(true);
    expect(panel?.ticks.every((tick) => !tick.text.includes('.'))).toBe(true);
    expect(panel?.labels.map((l) => l.text)).toEqual(['0,010', '< 0,020']);
    for (const { y } of panel?.ticks ?? []) expect(y >= (panel?.top ?? 0) - 1e-6 && y <= (panel?.bottom ?? 0) + 1e-6).toBe(true);
  });

  test('the name of a line finds room beside values that stand where it would: on no mark, no figure and no other name', () => {
    const laid = layTimeline(
      drawnOf({
        panels: [
          {
            id: 't',
            name: 'T',
            steps: [],
            moments: [
              { id: 'end', at: 470, value: 30, mark: 'read', text: '30' },
              { id: 'near', at: 430, value: 345, mark: 'read', text: '345' },
              { id: 'high', at: 200, value: 690, mark: 'read', text: '690' },
            ],
            lines: [
              { value: 450, name: 'aimed at, up to 450 °C' },
              { value: 350, name: 'aimed at, from 350 °C' },
              { value: 40, name: 'marked as opened hot above 40 °C' },
            ],
          },
        ],
      }),
      1020,
    );
    const [panel] = laid.panels;
    if (!panel) throw new Error('one panel was given');
    const box = (label: LaidText) => ({ x: ends(label), y: [label.y - 10, label.y + 1] as const });
    const names = panel.lines.map(({ label }) => box(label));
    const marks = laid.aims.map(({ x, y, width, height }) => ({
      x: [x + 4, x + width - 4] as const,
      y: [y + 6, y + height - 6] as const,
    }));
    const apart = (a: { x: readonly number[]; y: readonly number[] }, b: { x: readonly number[]; y: readonly number[] }) =>
      [a.x, a.y].some((one, i) => {
        const other = [b.x, b.y][i] ?? [];
        return (one[1] ?? 0) <= (other[0] ?? 0) || (other[1] ?? 0) <= (one[0] ?? 0);
      });
    expect(panel.labels.map(({ text }) => text)).toEqual(['30', '345', '690']);
    for (const [i, name] of names.entries())
      for (const thing of [...marks, ...panel.labels.map(box), ...names.slice(i + 1)])
        expect(apart(name, thing), `name ${i}`).toBe(true);
    for (const label of panel.labels) expect(label.y - 10).toBeGreaterThanOrEqual(panel.top - 1);
  });

  test('a moment alone has room about it', () => {
    const laid = layTimeline(
      drawnOf({ minutes: 0, lanes: [lane({ marks: [{ id: 'm', at: 0, look: 'dot', text: 'x' }] })] }),
      1020,
    );
    expect(laid.lanes[0]?.marks[0]?.look).toBe('dot');
  });
});

describe('the picture', () => {
  test('tells every look apart without colour and writes texts as text', () => {
    const looks: SpanLook[] = ['filled', 'hatched', 'crossed', 'dotted', 'open'];
    const svg = timelineSvg(
      layTimeline(
        drawnOf({
          lanes: [
            lane({
              name: '<b>',
              spans: looks.map((look, i) => ({ id: look, from: i * 90, to: i * 90 + 80, look, text: 'a & b' })),
              marks: [{ id: 'no', at: 10, look: 'cross', text: '"no"' }],
              note: 'not written',
            }),
          ],
        }),
        1020,
      ),
      { title: 'T', font: 'F', legend: ['what it means'], above: 'Above:' },
    );
    for (const look of ['hatched', 'crossed', 'dotted']) expect(svg).toContain(`fill="url(#${look})"`);
    expect(svg).toContain('stroke-dasharray="4 3"');
    expect(svg).toContain('&lt;b&gt;');
    expect(svg).toContain('a &amp; b');
    expect(svg).toContain('&quot;no&quot;');
    expect(svg).toContain('what it means');
    expect(svg).not.toMatch(/NaN|undefined/);
  });

  test('a legend is broken into lines and loses no word', () => {
    const words = 'one two three four five six seven';
    const lines = wrapped(words, 11);
    expect(lines.every((line) => line.length <= 11)).toBe(true);
    expect(lines.join(' ')).toBe(words);
  });
});
