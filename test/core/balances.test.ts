import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { falseAlarm, pageThreshold } from '../../app/core/page-test.ts';
import { reckoned, refused, why } from './reckoned.ts';

interface Item {
  name: string;
  role: string;
  g: number;
  u_g?: number;
  group?: string;
  coefficient?: number;
  sealed_id?: string;
}
const item = (role: string, g: number, more: object = {}): Item => ({ name: role, role, g, ...more });
const balance = (items: readonly Item[], more: object = {}) => reckoned('balance', { items, groups: {}, ...more });

describe('reckon balance', () => {
  test('found mercury comes in, a release is a measured loss and a removal is not', () => {
    const got = balance([
      item('opening', 10),
      item('receipt', 5),
      item('found', 0.1),
      item('removal', 2),
      item('release', 0.3),
      item('closing', 12.5),
    ]);
    expect(got).toMatchObject({ found_g: 0.1, released_g: 0.3, unaccounted_g: 0.3, lost_g: 0.6 });
  });

  test('a sealed flask in both stocks adds nothing to the variance and counts in the sums', () => {
    const flask = { u_g: 5, group: 'S1', sealed_id: 'K-17' };
    const open = [item('opening', 100, { u_g: 3 }), item('closing', 90, { u_g: 4 })];
    const got = balance([...open, item('opening', 34473, flask), item('closing', 34473, flask)], { groups: { S1: 1e-3 } });
    expect(got).toMatchObject({
      opening_g: 34573,
      unaccounted_g: 10,
      random_variance_g2: 25,
      u_g: 5,
      group_coefficients_g: { S1: 0 },
    });
    const sold = balance([...open, item('receipt', 34473, flask), item('removal', 34473, flask)], { groups: { S1: 1e-3 } });
    expect(sold.u_g).toBe(5);
  });

  test('a seal on one side only, or twice on one side, is weighed like anything else', () => {
    const sealed = { u_g: 5, sealed_id: 'K-17' };
    expect(balance([item('opening', 10, sealed)]).random_variance_g2).toBe(25);
    expect(
      balance([item('opening', 10, sealed), item('receipt', 10, sealed), item('closing', 10, sealed)]).random_variance_g2,
    ).toBe(75);
    expect(balance([item('opening', 10, sealed), item('release', 10, sealed)]).random_variance_g2).toBe(50);
  });

  test('unequal grams under one seal are refused', () => {
    expect(
      refused('balance', {
        items: [item('opening', 10, { sealed_id: 'K' }), item('closing', 10.01, { sealed_id: 'K' })],
        groups: {},
      }),
    ).toEqual(['items[1].g seal-unequal']);
  });

  test('a coefficient stands in for the grams, zero and below included', () => {
    const at = (coefficient: number) =>
      balance([item('opening', 100, { group: 'A', coefficient })], { groups: { A: 0.01, B: 1 } });
    expect(at(0)).toMatchObject({ u_g: 0, group_coefficients_g: { A: 0, B: 0 } });
    expect(at(-50)).toMatchObject({ u_g: 0.5, group_coefficients_g: { A: -50 } });
  });

  test('the release’s own errors drop out of what is lost', () => {
    const got = balance([item('opening', 100, { u_g: 3 }), item('release', 10, { u_g: 4, group: 'T' })], { groups: { T: 0.1 } });
    expect(got).toMatchObject({ u_g: Math.sqrt(26), lost_u_g: 3, lost_g: 100, unaccounted_g: 90 });
  });

  test('levels are compared exactly, either sign: 2 is none, 3 is a warning', () => {
    const level = (g: number) => balance([item(g > 0 ? 'opening' : 'closing', Math.abs(g), { u_g: 0.1 })]).loss_level;
    expect([0.2, 0.2001, 0.3, 0.3001].map(level)).toEqual(['none', 'warn', 'warn', 'act']);
    expect([-0.2, -0.2001, -0.3, -0.3001].map(level)).toEqual(['none', 'warn', 'warn', 'act']);
  });

  test('without any uncertainty there is nothing to hold a loss against', () => {
    expect(balance([item('opening', 1)])).toMatchObject({
      u_g: 0,
      detectable_g: 0,
      z: why('no-uncertainty'),
      loss_level: why('no-uncertainty'),
      per_tonne_g: why('no-ore'),
      per_tonne_u_g: why('no-ore'),
    });
  });

  test('the excess stands only where a usual rate and ore are given', () => {
    const items = [item('opening', 100, { u_g: 3 })];
    for (const more of [{}, { ore_t: 10 }, { usual_g_t: 9, usual_u_g_t: 0.4 }]) {
      const got = balance(items, more);
      for (const name of ['expected_g', 'excess_g', 'excess_u_g', 'excess_z', 'excess_level'])
        expect(got).not.toHaveProperty(name);
    }
    expect(balance(items, { ore_t: 10, usual_g_t: 9, usual_u_g_t: 0.4 })).toMatchObject({
      expected_g: 90,
      excess_g: 10,
      excess_u_g: 5,
      excess_z: 2,
      excess_level: 'none',
      loss_level: 'act',
    });
  });

  test('a second, naive reckoning agrees on any list of items', () => {
    const some = fc.record({
      role: fc.constantFrom('opening', 'receipt', 'found', 'removal', 'release', 'closing'),
      g: fc.integer({ min: 0, max: 50_000 }),
      u_g: fc.integer({ min: 0, max: 60 }),
      group: fc.constantFrom('A', 'B'),
    });
    fc.assert(
      fc.property(fc.array(some, { maxLength: 20 }), (list) => {
        const sign = (role: string) => (['opening', 'receipt', 'found'].includes(role) ? 1 : -1);
        let [left, variance, lost] = [0, 0, 0];
        const together: Record<string, number> = { A: 0, B: 0 };
        for (const i of list) {
          left += sign(i.role) * i.g;
          variance += i.u_g ** 2;
          together[i.group] = (together[i.group] ?? 0) + sign(i.role) * i.g;
          if (i.role !== 'release') lost += sign(i.role) * i.g;
        }
        variance += ((together.A ?? 0) * 2e-4) ** 2 + ((together.B ?? 0) * 0.15) ** 2;
        const got = balance(
          list.map((i) => ({ name: 'x', ...i })),
          { groups: { A: 2e-4, B: 0.15 } },
        );
        expect(got.unaccounted_g).toBe(left === 0 ? 0 : left);
        expect(got.lost_g).toBe(lost === 0 ? 0 : lost);
        expect(got.u_g as number).toBeCloseTo(Math.sqrt(variance), 7);
      }),
    );
  });

  test('a group nobody described and an uncertainty below nothing are refused', () => {
    expect(
      refused('balance', { items: [item('opening', -1, { u_g: -1 }), item('loss', 1, { weight: 2 })], groups: { A: -1 } }),
    ).toEqual([
      'items[0].g below-zero',
      'items[0].u_g u-below-zero',
      'items[1].role not-one-of',
      'items[1].weight unknown-field',
      'groups.A u-below-zero',
    ]);
    expect(refused('balance', { items: [item('opening', 1, { group: 'A' })], groups: {} })).toEqual([
      'items[0].group group-not-given',
    ]);
    expect(refused('balance', { items: [] })).toEqual(['groups missing']);
  });
});

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

describe('reckon reconcile', () => {
  const parts = { names: ['whole', 'a', 'b'], values: [100, 40, 59], u: [1, 1, 1], constraints: [{ whole: 1, a: -1, b: -1 }] };

  test('parts and whole are drawn together, and the adjusted values meet the constraint', () => {
    const got = reckoned('reconcile', parts) as {
      adjusted: Record<string, number>;
      passes: boolean;
      adjusted_u: Record<string, number>;
    };
    expect(got.passes).toBe(true);
    expect(got).not.toHaveProperty('suspect');
    expect(got.adjusted.whole).toBeCloseTo(100 - 1 / 3, 12);
    expect((got.adjusted.whole ?? 0) - (got.adjusted.a ?? 0) - (got.adjusted.b ?? 0)).toBeCloseTo(0, 12);
    expect(got.adjusted_u.a).toBeCloseTo(Math.sqrt(2 / 3), 12);
  });

  test('with one constraint a failure cannot be located, and nothing is adjusted', () => {
    const got = reckoned('reconcile', { ...parts, values: [100, 40, 50] });
    expect(got).toMatchObject({ passes: false, adjusted: why('group-test-failed'), adjusted_u: why('group-test-failed') });
    expect(got).not.toHaveProperty('suspect');
  });

  test('a scale shared by parts and whole cancels between them', () => {
    const shared = [{ names: ['whole', 'a', 'b'], relative_u: 0.1 }];
    const got = reckoned('reconcile', { ...parts, values: [100, 40, 60], shared, u: [0.01, 0.01, 0.01] });
    expect(got.global).toBe(0);
    const off = reckoned('reconcile', { ...parts, values: [100, 40, 59], shared, u: [0.01, 0.01, 0.01] });
    expect(off.global as number).toBeCloseTo(1 / (3e-4 + 0.01), 6);
  });

  test('a constraint that follows from the others adds no freedom', () => {
    const constraints = [...parts.constraints, { whole: 2, a: -2, b: -2 }, { a: 1, b: -1 }, { whole: 1, a: -2 }];
    expect(reckoned('reconcile', { ...parts, values: [100, 50, 50], constraints })).toMatchObject({
      freedom: 2,
      global: 0,
      passes: true,
    });
  });

  test('a reading no constraint looks at has no statistic and keeps its value', () => {
    const got = reckoned('reconcile', {
      ...parts,
      names: ['whole', 'a', 'b', 'c'],
      values: [100, 40, 59, 7],
      u: [1, 1, 1, 2],
    }) as Record<string, Record<string, unknown>>;
    expect(got.statistics?.c).toEqual(why('over-nothing'));
    expect([got.adjusted?.c, got.adjusted_u?.c]).toEqual([7, 2]);
  });

  test('the square of a statistic is what the global test loses when that reading is left free', () => {
    const names = ['p', 'q', 'r', 's'];
    const base = {
      names,
      values: [10, 6.3, 3.1, 9.2],
      u: [0.5, 0.3, 0.2, 0.4],
      constraints: [
        { p: 1, q: -1, r: -1 },
        { p: 1, s: -1 },
      ],
    };
    const all = reckoned('reconcile', base) as { global: number; statistics: Record<string, number> };
    names.forEach((name, i) => {
      const free = reckoned('reconcile', { ...base, u: base.u.map((u, j) => (j === i ? 1e5 : u)) }) as { global: number };
      expect(all.global - free.global).toBeCloseTo((all.statistics[name] ?? 0) ** 2, 5);
    });
  });

  test('a zero uncertainty, a stranger and an empty constraint are refused', () => {
    expect(
      refused('reconcile', {
        names: ['a', 'a'],
        values: [1],
        u: [0, 1],
        shared: [{ names: ['x'], relative_u: 0 }],
        constraints: [{}, { y: 1 }],
      }),
    ).toEqual([
      'names[1] name-twice',
      'values how-many',
      'u[0] u-zero',
      'shared[0].names[0] name-not-given',
      'constraints[0] empty-constraint',
      'constraints[1].y name-not-given',
    ]);
    expect(refused('reconcile', { names: [], values: [], u: [], constraints: [] })).toEqual([
      'names no-readings-named',
      'constraints no-constraint',
    ]);
    expect(refused('reconcile', { ...parts, u: [1, -1, 1] })).toEqual(['u[1] u-below-zero']);
  });
});
