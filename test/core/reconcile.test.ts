import { describe, expect, test } from 'vitest';
import { reckoned, refused, why } from './reckoned.ts';

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
