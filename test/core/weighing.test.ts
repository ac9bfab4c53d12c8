import { describe, expect, test } from 'vitest';
import { decimalFromText, zero } from '../../app/core/decimal.ts';
import { less, total, uOf } from '../../app/core/measured.ts';
import { byVolume, mercuryDensity, mercuryDensitySlope } from '../../app/core/volume.ts';
import { weighed } from '../../app/core/weighing.ts';
import { reckoned, refused, why } from './reckoned.ts';

const d = (text: string) => decimalFromText(text) ?? zero;
const bench = {
  d: '0.01 g',
  s: '0.018 g',
  certificate_U: '0.03 g',
  certificate_k: 2,
  certificate_at: '2000 g',
  linearity: '0.02 g',
};

describe('reckon weighing', () => {
  test('a tare of nothing is a second reading', () => {
    const plain = { d: '0.1 g', s: '0.2 g', linearity: '0.3 g' };
    const one = reckoned('weighing', { gross: '10 g', scale: plain });
    const two = reckoned('weighing', { gross: '10 g', tare: '0 g', scale: plain });
    expect(one.random_u_g).toBeCloseTo(Math.sqrt(0.04 + 0.01 / 12 + 0.09 / 3), 14);
    expect(two.random_u_g).toBeCloseTo(Math.sqrt(2) * Math.sqrt(0.04 + 0.01 / 12 + 0.09 / 3), 14);
  });

  test('repeatability is never below 0.41 of the division, and is that where none was found', () => {
    const none = reckoned('weighing', { gross: '10 g', scale: { d: '0.1 g' }, tolerance: 0.001 });
    const better = reckoned('weighing', { gross: '10 g', scale: { d: '0.1 g', s: '0.001 g' }, tolerance: 0.001 });
    expect(none).toEqual(better);
    expect(none.minimum_g).toBe(82);
    expect(none.random_u_g).toBeCloseTo(Math.hypot(0.041, 0.1 / Math.sqrt(12)), 14);
  });

  test('the span error is in proportion to the net, and without a certificate there is none', () => {
    expect(reckoned('weighing', { gross: '2000 g', scale: bench }).shared_u_g).toBe(0.015);
    expect(reckoned('weighing', { gross: '1000 g', scale: bench }).shared_u_g).toBe(0.0075);
    const { certificate_k: _, ...usual } = bench;
    expect(reckoned('weighing', { gross: '1000 g', scale: usual }).shared_u_g).toBe(0.0075);
    expect(reckoned('weighing', { gross: '1000 g', scale: { d: '1 g' } }).shared_u_g).toBe(0);
  });

  test('a net below nothing stays below nothing, with an uncertainty above it', () => {
    const net = reckoned('weighing', { gross: '1 g', tare: '3.3 g', scale: bench, tolerance: 0.001 });
    expect(net.net_g).toBe(-2.3);
    expect(net.shared_u_g).toBeGreaterThan(0);
    expect(net.below_minimum).toBe(true);
  });

  test('a net exactly at the minimum is not below it', () => {
    const at = (gross: string) => reckoned('weighing', { gross, scale: { d: '0.01 g' }, tolerance: 0.001 }).below_minimum;
    expect(at('8.2 g')).toBe(false);
    expect(at('8.19 g')).toBe(true);
  });

  test('without a tolerance above nothing there is no minimum', () => {
    const none = reckoned('weighing', { gross: '1 g', scale: { d: '1 g' } });
    expect([none.minimum_g, none.below_minimum]).toEqual([why('no-tolerance'), why('no-tolerance')]);
    for (const tolerance of [0, -1]) {
      const got = reckoned('weighing', { gross: '1 g', scale: { d: '1 g' }, tolerance });
      expect([got.minimum_g, got.below_minimum]).toEqual([why('over-nothing'), why('over-nothing')]);
    }
  });

  test('a certificate without its load is refused, with a load or a factor of nothing it says nothing', () => {
    expect(refused('weighing', { gross: '1 g', scale: { d: '1 g', certificate_U: '1 g' } })).toEqual([
      'scale.certificate_at certificate-load',
    ]);
    for (const wrong of [{ certificate_at: '0 g' }, { certificate_k: 0 }, { certificate_k: -2 }]) {
      const got = reckoned('weighing', { gross: '1 g', scale: { ...bench, ...wrong } });
      expect([got.shared_u_g, got.u_g]).toEqual([why('certificate-divisor'), why('certificate-divisor')]);
      expect(got.random_u_g).toBeGreaterThan(0);
    }
  });

  test('every refused field is told by its path', () => {
    expect(refused('weighing', { gross: 1, scale: { s: '1 oz', e: '1 g' }, tolerance: '0.1' })).toEqual([
      'gross mass-not-text',
      'scale.d missing',
      'scale.s mass-bare-ounce',
      'scale.e unknown-field',
      'tolerance wrong-type',
    ]);
  });
});

describe('a weighing in the balance', () => {
  const scale = { d: d('0.01'), certificateU: d('0.03'), certificateAt: d('2000') };
  const at = (gross: string, id: string) => {
    const value = weighed({ gross: d(gross), tare: d('0'), scale }, { scatter: id, epoch: 'S2/2025' });
    if (!value) throw new Error('no span error');
    return value;
  };

  test('what went in and came out over one scale leaves only the scatter', () => {
    const gap = less(at('1500', 'in'), at('1500', 'out'));
    expect([...gap.parts.keys()]).toEqual(['in', 'out']);
    expect(gap.ug).toBe(0);
  });

  test('ten flasks over one scale share its span error ten times over', () => {
    const ten = total(Array.from({ length: 10 }, (_, i) => at('1500', `flask ${i}`)));
    expect(ten.parts.get('S2/2025')).toBeCloseTo((10 * 1500 * 0.015 * 1e6) / 2000, 3);
  });
});

describe('reckon volume', () => {
  test('the slope of the density is its derivative', () => {
    for (const t of [-38, 0, 20, 100, 350]) {
      const h = 1e-3;
      expect(mercuryDensitySlope(t)).toBeCloseTo((mercuryDensity(t + h) - mercuryDensity(t - h)) / (2 * h), 9);
    }
  });

  test('one uncertainty missing counts as nothing, both missing leave none', () => {
    const at = (more: object) => reckoned('volume', { volume: '100 ml', temperature_c: 20, ...more });
    expect(at({}).u_g).toEqual(why('no-volume-uncertainty'));
    expect(at({ volume_u_ml: 1 }).u_g).toBeCloseTo(mercuryDensity(20), 12);
    expect(at({ temperature_u_c: 1 }).u_g).toBeCloseTo(-100 * mercuryDensitySlope(20), 12);
    expect(at({ volume_u_ml: 0 }).u_g).toBe(0);
  });

  test('mercury is a liquid from −38.83 to 356.62 °C, ends included', () => {
    const at = (temperature_c: number) => refused('volume', { volume: '1 ml', temperature_c });
    expect(at(-38.83)).toEqual([]);
    expect(at(356.62)).toEqual([]);
    expect(at(-38.84)).toEqual(['temperature_c not-liquid']);
    expect(at(356.63)).toEqual(['temperature_c not-liquid']);
  });

  test('a bare fluid ounce is refused, and an uncertainty below nothing', () => {
    expect(refused('volume', { volume: '2 fl-oz', volume_u_ml: -1, temperature_c: 20, temperature_u_c: -0.1 })).toEqual([
      'volume volume-bare-ounce',
      'volume_u_ml u-below-zero',
      'temperature_u_c u-below-zero',
    ]);
    expect(refused('volume', { volume: '2 g', temperature_c: 20 })).toEqual(['volume volume-unit']);
  });

  test('two volumes share the density and nothing else', () => {
    const one = (id: string) =>
      byVolume(
        { volumeMl: d('100'), temperatureC: 20, volumeUMl: 1 },
        { reading: id, temperature: `${id} t`, density: 'mercury density' },
      );
    expect([...less(one('a'), one('b')).parts.keys()]).toEqual(['a', 'b']);
    expect(uOf(one('a'))).toBeGreaterThan(13.5e6);
  });
});
