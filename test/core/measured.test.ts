import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { added, exactly, less, measured, scaled, total, uOf } from '../../app/core/measured.ts';

describe('measured values', () => {
  const inAndOut = fc.tuple(
    fc.integer({ min: 1, max: 1e9 }),
    fc.double({ min: 1e-6, max: 1e3, noNaN: true }),
    fc.integer({ min: 1, max: 20 }),
  );

  test('what two values share cancels when one is taken from the other', () => {
    fc.assert(
      fc.property(inAndOut, ([ug, u]) => {
        const a = measured(ug, [['scale', u]]);
        expect(uOf(less(a, a))).toBe(0);
        expect(less(a, a).ug).toBe(0);
      }),
    );
  });

  test('what n values share counts n-fold when they are added, and their scatter by the root of n', () => {
    fc.assert(
      fc.property(inAndOut, ([ug, u, n]) => {
        const shared = total(Array.from({ length: n }, () => measured(ug, [['scale', u]])));
        const apart = total(Array.from({ length: n }, (_, i) => measured(ug, [[`reading ${i}`, u]])));
        expect(uOf(shared) / (n * u)).toBeCloseTo(1, 12);
        expect(uOf(apart) / (Math.sqrt(n) * u)).toBeCloseTo(1, 12);
        expect(shared.ug).toBe(n * ug);
      }),
    );
  });

  test('any sum has the variance that its parts give when they are squared one source at a time', () => {
    const value = fc.record({
      ug: fc.integer({ min: -1e9, max: 1e9 }),
      scatter: fc.integer({ min: 0, max: 9 }),
      group: fc.constantFrom('a', 'b', 'c'),
    });
    fc.assert(
      fc.property(fc.array(fc.tuple(value, fc.constantFrom(1, -1)), { maxLength: 12 }), (items) => {
        const sum = total(
          items.map(([v, sign], i) =>
            scaled(
              measured(v.ug, [
                [`own ${i}`, v.scatter],
                [v.group, v.ug * 1e-4],
              ]),
              sign,
            ),
          ),
        );
        let variance = 0;
        for (const [v] of items) variance += v.scatter ** 2;
        for (const group of ['a', 'b', 'c']) {
          let together = 0;
          for (const [v, sign] of items) if (v.group === group) together += sign * v.ug * 1e-4;
          variance += together ** 2;
        }
        expect(uOf(sum)).toBeCloseTo(Math.sqrt(variance), 6);
      }),
    );
  });

  test('an exact value adds no uncertainty', () => {
    const sum = added(exactly(5), measured(7, [['x', 2]]));
    expect([sum.ug, ...sum.parts]).toEqual([12, ['x', 2]]);
  });
});
