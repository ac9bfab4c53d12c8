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

describe('reckon vapour', () => {
  test('altitude changes the share of the air, not what it holds', () => {
    const [low, high] = [101.325, 84.5].map((pressure_kpa) => reckoned('vapour', { temperature_c: 20, pressure_kpa }));
    expect(low?.saturated_mg_m3).toBe(high?.saturated_mg_m3);
    expect((high?.saturated_ppm as number) / (low?.saturated_ppm as number)).toBeCloseTo(101.325 / 84.5, 12);
  });

  test('where the vapour pressure passes ambient the vapour stands at ambient pressure', () => {
    expect(reckoned('vapour', { temperature_c: 350, pressure_kpa: 84.5 })).toMatchObject({
      pressure_pa: 84500,
      saturated_ppm: 1e6,
      findings: ['boiling', 'hot-for-room-air'],
    });
    expect(reckoned('vapour', { temperature_c: 350 }).findings).toEqual(['hot-for-room-air']);
  });

  test('above 50 °C it is no room air, and outside the correlation there is nothing', () => {
    expect(reckoned('vapour', { temperature_c: 50 }).findings).toEqual([]);
    expect(reckoned('vapour', { temperature_c: 50.1 }).findings).toEqual(['hot-for-room-air']);
    expect(refused('vapour', { temperature_c: -38.84 })).toEqual(['temperature_c vapour-range']);
    expect(refused('vapour', { temperature_c: 1490.86 })).toEqual(['temperature_c vapour-range']);
    expect(refused('vapour', { temperature_c: 1490.85 })).toEqual([]);
  });

  test('a share of no pressure cannot be had', () => {
    for (const pressure_kpa of [0, -1])
      expect(reckoned('vapour', { temperature_c: 20, pressure_kpa }).saturated_ppm).toEqual(why('over-nothing'));
  });
});

describe('reckon room', () => {
  const base = { volume_m3: 60, supply_m3_h: 60, start_mg_m3: 0, source_mg_h: 3 };
  const minutes = (more: object) => reckoned('room', { ...base, ...more }).minutes_to_target;

  test('what is not asked for is not told', () => {
    expect(Object.keys(reckoned('room', base))).toEqual(['steady_mg_m3']);
    expect(Object.keys(reckoned('room', { ...base, hours: 1 }))).toEqual([
      'steady_mg_m3',
      'at_end_mg_m3',
      'mean_mg_m3',
      'dose_mg_h_m3',
    ]);
  });

  test('the dose is the curve added up in small steps, capped or not, with or without a supply', () => {
    for (const more of [
      {},
      { source_mg_h: 5000 },
      { supply_m3_h: 0 },
      { supply_m3_h: 0, source_mg_h: 4000 },
      { start_mg_m3: 5 },
      { supply_m3_h: 0.001 },
    ]) {
      const at = (hours: number) => reckoned('room', { ...base, ...more, hours }).at_end_mg_m3 as number;
      const steps = 4000;
      let dose = 0;
      for (let i = 0; i < steps; i += 1) dose += at(((i + 0.5) * 2) / steps) * (2 / steps);
      const got = reckoned('room', { ...base, ...more, hours: 2 });
      expect(got.dose_mg_h_m3 as number).toBeCloseTo(dose, 3);
      expect(got.mean_mg_m3).toBe((got.dose_mg_h_m3 as number) / 2);
    }
  });

  test('mixing divides the supply everywhere', () => {
    const poor = reckoned('room', { ...base, mixing: 3, hours: 1, target_mg_m3: 0.1 });
    expect(poor).toEqual(reckoned('room', { ...base, supply_m3_h: 20, hours: 1, target_mg_m3: 0.1 }));
    expect(refused('room', { ...base, mixing: 0.5 })).toEqual(['mixing mixing-below-one']);
  });

  test('nothing passes saturation, and a start above it is refused', () => {
    const full = reckoned('room', { ...base, source_mg_h: 1e6, hours: 10 });
    const saturated = reckoned('vapour', { temperature_c: 20 }).saturated_mg_m3;
    expect([full.steady_mg_m3, full.at_end_mg_m3]).toEqual([saturated, saturated]);
    expect(refused('room', { ...base, start_mg_m3: 14.1 })).toEqual(['start_mg_m3 above-saturation']);
    expect(refused('room', { ...base, start_mg_m3: 14.1, temperature_c: 25 })).toEqual([]);
  });

  test('without a supply it grows in a straight line and has no steady state', () => {
    const still = reckoned('room', { ...base, supply_m3_h: 0, hours: 2 });
    expect([still.steady_mg_m3, still.at_end_mg_m3, still.dose_mg_h_m3]).toEqual([why('no-air-supply'), 0.1, 0.1]);
  });

  test('falling: the time, or never when the steady state is not under the target', () => {
    expect(minutes({ source_mg_h: 0, start_mg_m3: 1, target_mg_m3: 0.5 })).toBeCloseTo(60 * Math.LN2, 10);
    expect(minutes({ start_mg_m3: 1, target_mg_m3: 0.05 })).toBe('never');
    expect(minutes({ start_mg_m3: 1, target_mg_m3: 0.04 })).toBe('never');
    expect(minutes({ supply_m3_h: 0, source_mg_h: 0, start_mg_m3: 1, target_mg_m3: 0.5 })).toBe('never');
  });

  test('rising: the time, or never when the steady state is not over the target or air cannot hold it', () => {
    expect(minutes({ target_mg_m3: 0.025 })).toBeCloseTo(60 * Math.LN2, 10);
    expect(minutes({ target_mg_m3: 0.05 })).toBe('never');
    expect(minutes({ source_mg_h: 1e6, target_mg_m3: 15 })).toBe('never');
    expect(minutes({ supply_m3_h: 0, target_mg_m3: 15 })).toBe('never');
  });

  test('met already: nothing', () => {
    expect(minutes({ start_mg_m3: 0.02, target_mg_m3: 0.02 })).toBe(0);
    expect(minutes({ source_mg_h: 0, start_mg_m3: 0.01, target_mg_m3: 0.02 })).toBe(0);
    expect(minutes({ supply_m3_h: 0, source_mg_h: 0, start_mg_m3: 0.01, target_mg_m3: 0.02 })).toBe(0);
  });

  test('over no time there is no mean, in no room no curve', () => {
    expect(reckoned('room', { ...base, hours: 0 })).toMatchObject({
      at_end_mg_m3: 0,
      dose_mg_h_m3: 0,
      mean_mg_m3: why('over-nothing'),
    });
    expect(reckoned('room', { ...base, volume_m3: 0, hours: 1, target_mg_m3: 0.01 })).toEqual({
      steady_mg_m3: 0.05,
      at_end_mg_m3: why('over-nothing'),
      mean_mg_m3: why('over-nothing'),
      dose_mg_h_m3: why('over-nothing'),
      minutes_to_target: why('over-nothing'),
    });
  });
});

describe('reckon hood and reading', () => {
  test('a flange saves a quarter', () => {
    const hood = { capture_m_s: 0.5, distance_m: 0.3, area_m2: 0.1 };
    expect(reckoned('hood', hood)).toMatchObject({ m3_s: 0.5, m3_h: 1800 });
    expect(reckoned('hood', { ...hood, flanged: true }).m3_s).toBe(0.375);
    expect(refused('hood', { ...hood, capture_m_s: -1, flanged: 'yes' })).toEqual([
      'capture_m_s below-zero',
      'flanged wrong-type',
    ]);
  });

  test('the raw reading is judged, not the normalised one', () => {
    const at = (mg_m3: number, temperature_c = 20, pressure_kpa = 101.325) =>
      reckoned('reading', { mg_m3, temperature_c, pressure_kpa });
    expect(at(9.99).findings).toEqual([]);
    expect(at(10).findings).toEqual(['at-or-above-idlh']);
    expect(at(9.99, 20, 50).findings).toEqual([]);
    expect(at(15).findings).toEqual(['above-saturation', 'at-or-above-idlh']);
    expect(at(3, 0).findings).toEqual(['above-saturation']);
    expect(at(-0.001).findings).toEqual(['negative']);
    expect(at(0.1, 20, 0)).toMatchObject({ normalised_mg_m3: why('over-nothing'), ppb: why('over-nothing') });
  });
});

test('a result too large for a number is a reason, never infinity', () => {
  expect(reckoned('hood', { capture_m_s: 1e308, distance_m: 1e200, area_m2: 1 })).toEqual({
    m3_s: why('beyond-number'),
    m3_h: why('beyond-number'),
    cfm: why('beyond-number'),
  });
});
