/** The drawing of a day's air: gaps stay gaps, what is below or over has its shape, every value lies inside, and the clock under it is the one on the wall. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { airDays } from '../../app/core/book/air-days.ts';
import { readBook } from '../../app/core/book/book.ts';
import type { Body } from '../../app/core/kinds/index.ts';
import { type AirDayDrawn, type DrawnMark, layAirDay } from '../../app/drawings/air-day-layout.ts';
import { airDaySvg } from '../../app/drawings/air-day-svg.ts';
import { airGaps, drawnAirDay } from '../../app/words/air-drawn.ts';
import { BookMaker } from '../core/book-maker.ts';

const drawnOf = (more: Partial<AirDayDrawn>): AirDayDrawn => ({
  minutes: 480,
  steps: [],
  gaps: [],
  moments: [],
  lines: [],
  hours: [],
  gapName: 'not read',
  scaleName: 'mg/m³',
  aboveName: 'Above:',
  ...more,
});
const marks = fc.constantFrom<DrawnMark>('read', 'below', 'over');
const value = fc.integer({ min: 0, max: 12_000_000 }).map((ug) => ug / 1e6);

describe('the layout', () => {
  test('the word of the last hour ends at its mark where it would run over the edge', () => {
    const hours = [0, 240, 480].map((at) => ({ at, text: `${String(8 + at / 60).padStart(2, '0')}:00` }));
    const laid = layAirDay(drawnOf({ hours }), 1020);
    expect(laid.hours.map((hour) => hour.anchor)).toEqual(['middle', 'middle', 'end']);
  });

  test('draws to one scale from nothing up, everything inside, and no step wider than it lasted', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ minutes: fc.integer({ min: 1, max: 90 }), value, mark: marks }), { minLength: 1, maxLength: 30 }),
        fc.array(fc.record({ value, name: fc.string({ maxLength: 30 }) }), { maxLength: 5 }),
        (list, lines) => {
          let at = 0;
          const steps = list.map(({ minutes, ...rest }) => {
            const from = at;
            at += minutes;
            return { from, to: at, ...rest };
          });
          const laid = layAirDay(drawnOf({ minutes: at, steps, lines }), 1020);
          const tick = laid.ticks.at(-1);
          for (const [i, s] of laid.steps.entries()) {
            expect(s.y).toBeGreaterThanOrEqual(laid.top - 1e-6);
            expect(s.y).toBeLessThanOrEqual(laid.bottom + 1e-6);
            const share = ((steps[i]?.to ?? 0) - (steps[i]?.from ?? 0)) / Math.max(at, 30);
            expect((s.right - s.left) / (laid.right - laid.left)).toBeCloseTo(share, 9);
          }
          for (const { name } of lines)
            expect(laid.lines.some((l) => l.label.text === name) || laid.above?.text.includes(name)).toBe(true);
          for (const line of laid.lines) {
            expect(line.y).toBeGreaterThanOrEqual(laid.top - 1e-6);
            expect(line.label.y).toBeGreaterThanOrEqual(laid.top - 1e-6);
          }
          expect(tick?.y).toBeGreaterThanOrEqual(laid.top - 1e-6);
        },
      ),
    );
  });

  test('gives what is below detection and what is over the range shapes of their own, and a plain reading none', () => {
    const { steps } = layAirDay(
      drawnOf({
        steps: [
          { from: 0, to: 60, value: 0.02, mark: 'read' },
          { from: 60, to: 120, value: 0.003, mark: 'below' },
          { from: 120, to: 180, value: 0.1, mark: 'over' },
        ],
      }),
      1020,
    );
    const [read, below, over] = steps;
    expect(read?.shape).toBe('');
    expect(below?.shape).not.toBe('');
    expect(over?.shape).not.toBe('');
    expect(below?.shape.split(',')[1]).not.toBe(over?.shape.split(',')[1]);
  });

  test('a line far above everything read is named and does not press the drawing flat', () => {
    const laid = layAirDay(
      drawnOf({
        steps: [{ from: 0, to: 60, value: 0.004, mark: 'read' }],
        lines: [
          { value: 0.02, name: 'Ours' },
          { value: 10, name: 'Far' },
        ],
      }),
      1020,
    );
    expect(laid.lines.map((l) => l.label.text)).toEqual(['Ours']);
    expect(laid.above?.text).toBe('Above: Far');
  });

  test('names of lines that lie close never cover one another', () => {
    const { lines } = layAirDay(
      drawnOf({ lines: [0.02, 0.0205, 0.021, 0.025].map((v) => ({ value: v, name: `a limit ${v}` })) }),
      1020,
    );
    for (const [i, { label: a }] of lines.entries())
      for (const { label: b } of lines.slice(i + 1))
        expect(a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y).toBe(true);
  });
});

const reading = (from: string, to: string | undefined, shows: string, more: Partial<Body<'air-reading'>> = {}) => ({
  sample: 'area' as const,
  place: 'bench',
  unit: 'mg/m3' as const,
  shows,
  from,
  ...(to === undefined ? {} : { to }),
  ...more,
});
function dayOf(...readings: readonly ReturnType<typeof reading>[]) {
  const maker = BookMaker.site();
  for (const [i, body] of readings.entries()) maker.add(`r${i}`, 'air-reading', body, { happened: body.from });
  const book = readBook(maker.entries);
  const day = airDays(book)[0];
  if (!day) throw new Error('no day');
  return { book, day };
}

describe('a day out of the book', () => {
  test('time nobody read is a gap from when to when on the wall, and no step crosses it', () => {
    const { book, day } = dayOf(
      reading('2026-03-10T08:30+10:00', '2026-03-10T10:00+10:00', '<0.003'),
      reading('2026-03-10T12:00+10:00', '2026-03-10T13:00+10:00', '20', { unit: 'ug/m3', max: '45' }),
      reading('2026-03-10T10:30+10:00', undefined, '>0.1'),
    );
    expect(airGaps(day)).toEqual([{ from: '10:00', to: '12:00', long: '2\u00a0h' }]);
    const { drawn, told } = drawnAirDay(book, day);
    expect(drawn.steps).toEqual([
      { from: 0, to: 90, value: 0.003, mark: 'below', most: undefined },
      { from: 210, to: 270, value: 0.02, mark: 'read', most: 0.045 },
    ]);
    expect(drawn.moments).toEqual([{ at: 120, value: 0.1, mark: 'over' }]);
    expect(told.map((t) => t.id)).toEqual(['r00000', 'r10000', 'r20000']);
    expect(drawn.hours.map((h) => h.text)).toEqual(['09:00', '10:00', '11:00', '12:00', '13:00']);
  });

  test('over midnight and over a change of the clock the hours under it are those of the wall', () => {
    const { book, day } = dayOf(
      reading('2026-04-04T23:00+11:00', '2026-04-05T02:00+11:00', '0.010'),
      reading('2026-04-05T02:00+10:00', '2026-04-05T04:00+10:00', '0.010'),
    );
    const { drawn } = drawnAirDay(book, day);
    // the clock goes back an hour at 03:00: two o'clock comes twice
    expect(drawn.hours.map((h) => h.text)).toEqual(['23:00', '00:00', '01:00', '02:00', '02:00', '03:00', '04:00']);
  });

  test('the picture holds every text as text', () => {
    const { book, day } = dayOf(reading('2026-03-10T08:00+10:00', '2026-03-10T09:00+10:00', '0.010'));
    const { drawn } = drawnAirDay(book, day);
    const svg = airDaySvg(layAirDay({ ...drawn, scaleName: '<script>&' }, 900), { title: 'a < b', font: 'x' });
    expect(svg).toContain('&lt;script');
    expect(svg).not.toContain('<script');
    expect(svg).toContain('<title>a &lt; b</title>');
  });
});
