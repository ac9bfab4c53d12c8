import { describe, expect, test } from 'vitest';
import { reckoned, refused, why } from './reckoned.ts';

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
