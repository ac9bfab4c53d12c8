import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { falseAlarm, pageThreshold } from '../../app/core/page-test.ts';
import { reckoned, refused } from './reckoned.ts';

describe('Page’s threshold', () => {
  const table: readonly (readonly [k: number, chance: number, thresholds: readonly number[]])[] = [
    [0, 0.05, [3.609, 4.564, 5.381, 6.767, 9.934]],
    [0, 0.01, [4.816, 6.012, 7.035, 8.771, 12.736]],
    [0.25, 0.05, [2.853, 3.483, 3.985, 4.763, 6.243]],
    [0.25, 0.01, [3.961, 4.781, 5.436, 6.456, 8.392]],
    [0.5, 0.05, [2.227, 2.63, 2.934, 3.375, 4.136]],
    [0.5, 0.01, [3.2, 3.731, 4.123, 4.679, 5.592]],
  ];

  test.each(table)('at k %s and a chance of %s it is what the table has for 4, 6, 8, 12 and 24 periods', (k, chance, wanted) => {
    [4, 6, 8, 12, 24].forEach((n, i) => {
      expect(Math.abs(pageThreshold(k, n, chance) - (wanted[i] ?? 0))).toBeLessThan(0.002);
    });
  });

  test('over one period it is a plain normal quantile', () => {
    expect(pageThreshold(0.5, 1, 0.05)).toBeCloseTo(1.6448536269514722 - 0.5, 8);
  });

  test('it holds the chance it was asked for, and is nothing where even nothing does', () => {
    for (const n of [1, 3, 40]) expect(falseAlarm(pageThreshold(0.5, n, 0.02), 0.5, n)).toBeCloseTo(0.02, 9);
    expect(pageThreshold(4, 2, 0.05)).toBe(0);
  });
});

describe('reckon series', () => {
  const plain = { differences_g: [10, 0], inventory_u_g: [3, 4, 3], throughput_u_g: [0, 0], shared: [] };

  test('neighbouring periods share a stock with opposite signs', () => {
    const got = reckoned('series', plain);
    expect(got.covariance_g2).toEqual([
      [25, -16],
      [-16, 25],
    ]);
    expect(got.z).toEqual([2, 0]);
    expect((got.y as number[])[1]).toBeCloseTo(6.4 / Math.sqrt(25 - 10.24), 12);
    expect([got.cumulative_g, got.cumulative_u_g]).toEqual([
      [10, 10],
      [5, Math.sqrt(18)],
    ]);
  });

  test('a running total’s uncertainty is what its covariance gives', () => {
    const n = 5;
    const u = fc.integer({ min: 1, max: 50 });
    fc.assert(
      fc.property(
        fc.array(u, { minLength: n + 1, maxLength: n + 1 }),
        fc.array(u, { minLength: n, maxLength: n }),
        fc.array(u, { minLength: n, maxLength: n }),
        (stock, through, coefficients) => {
          const got = reckoned('series', {
            differences_g: [1, 2, 3, 4, 5],
            inventory_u_g: stock,
            throughput_u_g: through,
            shared: [{ coefficients, u: 0.1 }],
          });
          const cov = got.covariance_g2 as number[][];
          for (let j = 0; j < n; j += 1) {
            let variance = 0;
            for (let a = 0; a <= j; a += 1) for (let b = 0; b <= j; b += 1) variance += cov[a]?.[b] ?? 0;
            expect((got.cumulative_u_g as number[])[j]).toBeCloseTo(Math.sqrt(variance), 9);
          }
        },
      ),
    );
  });

  test('no signal is null, and a signal names its period from 1', () => {
    expect(reckoned('series', { ...plain, differences_g: [1, 0] }).signal_at).toBeNull();
    expect(reckoned('series', { ...plain, differences_g: [1000, 0] }).signal_at).toBe(1);
  });

  test('a covariance that is not positive definite is refused, however the doubles round', () => {
    expect(refused('series', { ...plain, inventory_u_g: [0, 0, 0] })).toEqual(['not-positive-definite']);
    expect(refused('series', { ...plain, inventory_u_g: [0, 0, 0], shared: [{ coefficients: [0.1, 0.3], u: 0.7 }] })).toEqual([
      'not-positive-definite',
    ]);
    expect(refused('series', { ...plain, inventory_u_g: [0, 1e-6, 0], throughput_u_g: [1e-9, 1e-9] })).toEqual([]);
  });

  test('every list has its length', () => {
    expect(
      refused('series', {
        differences_g: [1, 2],
        inventory_u_g: [1, 1],
        throughput_u_g: [1],
        shared: [{ coefficients: [1], u: 0 }],
      }),
    ).toEqual(['inventory_u_g how-many', 'throughput_u_g how-many', 'shared[0].coefficients how-many']);
    expect(refused('series', { differences_g: [], inventory_u_g: [1], throughput_u_g: [], shared: [] })).toEqual([
      'differences_g no-periods',
    ]);
    expect(refused('series', { ...plain, inventory_u_g: [1, -1, 1], false_alarm: 1, k: '0.5' })).toEqual([
      'inventory_u_g[1] u-below-zero',
      'k wrong-type',
      'false_alarm chance-range',
    ]);
  });
});
