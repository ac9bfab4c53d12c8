import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reckoned, refused, why } from './reckoned.ts';

type Reading = { from: string; to: string; mg_m3: number; mark?: string; max_mg_m3?: number };
const reading = (from: string, to: string, mg_m3: number, more: object = {}): Reading => ({ from, to, mg_m3, ...more });
const open = why('no-limit-on-readings');
const none = why('no-readings');

interface Exposure {
  known_dose_mg_h_m3: unknown;
  sampled_h: number;
  unsampled_h: unknown;
  twa_8h: { low: unknown; high: unknown };
  mean_sampled: { low: unknown; high: unknown };
  highest_15min: { low: unknown; high: unknown };
  verdicts: { verdict: string }[];
  findings: string[];
}
const exposure = (readings: readonly Reading[], more: object = {}) =>
  reckoned('exposure', { readings, limits: [], ...more }) as unknown as Exposure;
const verdicts = (readings: readonly Reading[], limits: object[], more: object = {}) =>
  exposure(readings, { limits, ...more }).verdicts.map((v) => v.verdict);

describe('the day’s exposure', () => {
  test('the eight-hour figure is divided by eight, however long the shift', () => {
    expect(exposure([reading('08:00', '10:00', 0.04)]).twa_8h).toEqual({ low: 0.01, high: 0.01 });
    const long = exposure([reading('06:00', '18:00', 0.02)]);
    expect(long.twa_8h).toEqual({ low: 0.03, high: 0.03 });
    expect(long.mean_sampled).toEqual({ low: 0.02, high: 0.02 });
    expect(long.findings).toEqual(['shift-over-8h']);
    expect(exposure([reading('06:00', '14:00', 0.02)]).findings).toEqual([]);
  });

  test('time without a reading is never taken as clean', () => {
    const day = [reading('07:00', '11:00', 0.01)];
    const shift = { from: '07:00', to: '15:00' };
    const unsaid = exposure(day, { shift });
    expect([unsaid.sampled_h, unsaid.unsampled_h]).toEqual([4, 4]);
    expect(unsaid.twa_8h).toEqual({ low: 0.005, high: open });
    expect(unsaid.mean_sampled).toEqual({ low: 0.01, high: 0.01 });
    expect(unsaid.highest_15min.high).toEqual(open);
    expect(unsaid.findings).toEqual(['unsampled-time']);
    const said = exposure(day, { shift, unsampled: { low: 0.002, high: 0.03 } });
    expect(said.twa_8h).toEqual({ low: 0.006, high: 0.02 });
  });

  test('below detection runs from nothing to its figure, over range has no upper end', () => {
    const below = exposure([reading('07:00', '11:00', 0.01), reading('11:00', '15:00', 0.003, { mark: '<' })]);
    expect([below.known_dose_mg_h_m3, below.twa_8h]).toEqual([0.04, { low: 0.005, high: 0.0065 }]);
    expect(below.findings).toEqual(['below-detection']);
    const over = exposure([reading('07:00', '11:00', 0.01), reading('11:00', '15:00', 0.9, { mark: '>' })]);
    expect(over.twa_8h).toEqual({ low: 0.455, high: open });
    expect([over.known_dose_mg_h_m3, over.findings]).toEqual([0.04, ['over-range']]);
  });

  test('without readings there is no figure, and nothing can be told', () => {
    const limits = [
      { mg_m3: 0.02, basis: '8h' },
      { mg_m3: 0.1, basis: '15min' },
      { mg_m3: 0.1, basis: 'ceiling' },
    ];
    const nothing = exposure([], { limits });
    expect(nothing).toMatchObject({
      known_dose_mg_h_m3: none,
      sampled_h: 0,
      unsampled_h: none,
      twa_8h: { low: none, high: none },
    });
    expect(nothing.verdicts.map((v) => v.verdict)).toEqual(['cannot tell', 'cannot tell', 'cannot tell']);
    const shift = exposure([], { limits, shift: { from: '07:00', to: '15:00' }, unsampled: { low: 0, high: 0.001 } });
    expect([shift.unsampled_h, shift.findings, shift.verdicts[0]?.verdict]).toEqual([8, ['unsampled-time'], 'cannot tell']);
  });

  test('a second reckoning minute by minute finds the same dose and the same highest quarter', () => {
    const piece = fc.record({ minutes: fc.integer({ min: 1, max: 15 }), c: fc.integer({ min: 0, max: 200 }) });
    fc.assert(
      fc.property(fc.array(piece, { minLength: 2, maxLength: 30 }), (pieces) => {
        const minutes = pieces.flatMap((p) => Array.from({ length: p.minutes }, () => p.c / 1000));
        if (minutes.length < 15) return;
        const clock = (m: number) => `${String(Math.floor(m / 60) + 6).padStart(2, '0')}:${String(m % 60).padStart(2, '0')}`;
        let at = 0;
        const readings = pieces.map((p) => {
          const from = at;
          at += p.minutes;
          return reading(clock(from), clock(at), p.c / 1000);
        });
        const got = exposure(readings);
        const dose = minutes.reduce((a, b) => a + b, 0) / 60;
        let highest = 0;
        for (let i = 0; i + 15 <= minutes.length; i += 1)
          highest = Math.max(highest, minutes.slice(i, i + 15).reduce((a, b) => a + b, 0) / 15);
        expect(got.known_dose_mg_h_m3).toBeCloseTo(dose, 10);
        expect(got.highest_15min.low).toBeCloseTo(highest, 10);
        expect(got.highest_15min.high).toBeCloseTo(highest, 10);
      }),
    );
  });
});

describe('verdicts', () => {
  const eight = (mg_m3: number) => [{ mg_m3, basis: '8h' }];

  test('below, at and above the figure entered, compared as decimals', () => {
    const day = [reading('07:00', '15:00', 0.025)];
    expect(verdicts(day, eight(0.025))).toEqual(['at']);
    expect(verdicts(day, eight(0.0250001))).toEqual(['below']);
    expect(verdicts(day, eight(0.0249999))).toEqual(['above']);
    const tenths = [reading('07:00', '11:00', 0.1), reading('11:00', '15:00', 0.2)];
    expect(verdicts(tenths, eight(0.15))).toEqual(['at']);
  });

  test('a range with the limit inside it cannot tell', () => {
    const day = [reading('07:00', '15:00', 0.03, { mark: '<' })];
    expect(verdicts(day, eight(0.02))).toEqual(['cannot tell']);
    expect(verdicts(day, eight(0.031))).toEqual(['below']);
    expect(verdicts([reading('07:00', '15:00', 0.03, { mark: '>' })], eight(0.02))).toEqual(['above']);
    expect(verdicts([reading('07:00', '15:00', 0.03, { mark: '>' })], eight(0.04))).toEqual(['cannot tell']);
  });

  test('a long reading without its highest value shows a quarter of an hour or a ceiling only as above or not at all', () => {
    const limits = [
      { mg_m3: 0.05, basis: '15min' },
      { mg_m3: 0.05, basis: 'ceiling' },
    ];
    expect(verdicts([reading('07:00', '08:00', 0.01)], limits)).toEqual(['cannot tell', 'cannot tell']);
    expect(verdicts([reading('07:00', '08:00', 0.06)], limits)).toEqual(['above', 'above']);
    expect(verdicts([reading('07:00', '08:00', 0.05)], limits)).toEqual(['cannot tell', 'cannot tell']);
    expect(verdicts([reading('07:00', '08:00', 0.01, { max_mg_m3: 0.04 })], limits)).toEqual(['below', 'below']);
    expect(verdicts([reading('07:00', '08:00', 0.01, { max_mg_m3: 0.06 })], limits)).toEqual(['cannot tell', 'above']);
    expect(verdicts([reading('07:00', '07:15', 0.01)], limits)).toEqual(['below', 'below']);
  });
});

describe('times of a shift', () => {
  const hours = (readings: readonly Reading[], more: object = {}) => exposure(readings, more).sampled_h;
  const fields = (readings: readonly Reading[], more: object = {}) => refused('exposure', { readings, limits: [], ...more });

  test('an end earlier than its beginning is the next day', () => {
    const night = exposure([reading('22:00', '01:00', 0.01), reading('01:00', '06:00', 0.02)], {
      shift: { from: '22:00', to: '06:00' },
    });
    expect([night.sampled_h, night.unsampled_h]).toEqual([8, 0]);
    const alone = exposure([reading('22:00', '01:00', 0.01), reading('02:00', '06:00', 0.02)]);
    expect([alone.sampled_h, alone.unsampled_h]).toEqual([7, 1]);
  });

  test('with offsets a night of eight hours on the wall has seven or nine when the clocks change', () => {
    expect(hours([reading('20:00', '04:00', 1)])).toBe(8);
    expect(hours([reading('20:00+13:00', '04:00+12:00', 1)])).toBe(9);
    expect(hours([reading('20:00+12:00', '04:00+13:00', 1)])).toBe(7);
    expect(hours([reading('02:30+13:00', '02:30+12:00', 1)])).toBe(1);
    expect(hours([reading('20:00+13:00', '04:00+13:00', 1)])).toBe(8);
  });

  test('an offset stands on every time or on none', () => {
    expect(fields([reading('07:00+13:00', '08:00', 1)], { shift: { from: '07:00+13:00', to: '15:00+13:00' } })).toEqual([
      'readings[0].to offset-on-all',
    ]);
  });

  test('readings in the order of the clock begin with the first; out of order they take least time', () => {
    expect(exposure([reading('06:00', '07:00', 1), reading('20:00', '21:00', 1)]).unsampled_h).toBe(13);
    expect(exposure([reading('09:00', '10:00', 1), reading('07:00', '09:00', 1)]).unsampled_h).toBe(0);
    expect(exposure([reading('23:00', '23:30', 1), reading('00:30', '01:00', 1)]).unsampled_h).toBe(1);
  });

  test('equal times, overlaps, readings outside the shift and more than a day are refused', () => {
    expect(fields([reading('07:00', '07:00', 1)])).toEqual(['readings[0].to no-time']);
    expect(fields([], { shift: { from: '07:00', to: '07:00' } })).toEqual(['shift.to no-time']);
    expect(fields([reading('07:00', '09:00', 1), reading('08:59', '10:00', 1)])).toEqual(['readings[1] overlap']);
    expect(fields([reading('07:00', '09:00', 1), reading('09:00', '10:00', 1)])).toEqual([]);
    const shift = { from: '07:00', to: '15:00' };
    expect(fields([reading('06:59', '08:00', 1)], { shift })).toEqual(['readings[0] outside-shift']);
    expect(fields([reading('14:00', '15:01', 1)], { shift })).toEqual(['readings[0] outside-shift']);
    expect(fields([reading('07:00', '08:00', 1), reading('20:00', '07:30', 1)])).toEqual(['readings[1] over-a-day']);
  });

  test('what is no time, no mark, no basis or below nothing is refused by its field', () => {
    expect(
      refused('exposure', {
        readings: [{ from: '7:00', to: '24:00', mg_m3: -1, mark: '~', max_mg_m3: -1 }],
        unsampled: { low: -0.1, high: 0.1 },
        limits: [{ mg_m3: -0.1, basis: 'day' }],
      }),
    ).toEqual([
      'readings[0].from clock-time',
      'readings[0].to clock-time',
      'readings[0].mg_m3 below-zero',
      'readings[0].mark not-one-of',
      'readings[0].max_mg_m3 below-zero',
      'unsampled.low below-zero',
      'limits[0].mg_m3 below-zero',
      'limits[0].basis not-one-of',
    ]);
    expect(fields([reading('07:00', '08:00', 0.2, { max_mg_m3: 0.1 })])).toEqual(['readings[0].max_mg_m3 max-below-mean']);
    expect(fields([reading('07:00', '08:00', 1)], { unsampled: { low: 2, high: 1 } })).toEqual(['unsampled.low low-above-high']);
  });
});
