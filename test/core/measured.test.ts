import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  added,
  exactly,
  less,
  type Measured,
  measured,
  measuredBy,
  nothing,
  RunningTotal,
  scaled,
  total,
  uOf,
  whole,
  withMass,
} from '../../app/core/measured.ts';

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

  type Naive = Record<string, number>;
  const sources = ['a', 'b', 'c', 'd', 'e'] as const;
  const weighing = fc
    .tuple(fc.constantFrom(...sources), fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 }))
    .map(([source, u, shared]): { value: Measured; naive: Naive } => ({
      value: measuredBy(10, source, u, 'scale', shared),
      naive: { [source]: u, scale: shared },
    }));
  const plain = (value: Measured): Naive => Object.fromEntries(value.parts);
  const merged = (x: Naive, y: Naive, sign: number): Naive => {
    const sum = { ...x };
    for (const [source, u] of Object.entries(y)) sum[source] = (sum[source] ?? 0) + sign * u;
    return Object.fromEntries(Object.entries(sum).filter(([, u]) => u !== 0));
  };

  test('however sums, differences and doublings are nested, each source counts as if it were written out', () => {
    const step = fc.tuple(fc.constantFrom('add', 'less', 'double', 'round', 'total'), weighing);
    fc.assert(
      fc.property(weighing, fc.array(step, { maxLength: 40 }), (start, steps) => {
        let value = start.value;
        let naive = merged({}, start.naive, 1);
        for (const [how, other] of steps) {
          if (how === 'double') {
            value = scaled(value, 2);
            naive = merged(naive, naive, 1);
          } else if (how === 'round') value = whole(withMass(value, value.ug + 0.25));
          else {
            value =
              how === 'add'
                ? added(value, other.value)
                : how === 'less'
                  ? less(value, other.value)
                  : total([value, other.value, nothing]);
            naive = merged(naive, other.naive, how === 'less' ? -1 : 1);
          }
        }
        const u = uOf(value);
        expect(plain(value)).toEqual(naive);
        expect(u).toBeCloseTo(Math.sqrt(Object.values(naive).reduce((s, n) => s + n * n, 0)), 6);
      }),
    );
  });

  test('what is made of a running total keeps what that was, whatever is added to it later', () => {
    const running = new RunningTotal().add(measuredBy(5, 'x', 2)).add(measuredBy(5, 'y', 1));
    const [copy, sum, share] = [whole(running), added(running, exactly(1)), scaled(running, 3)];
    running.add(measuredBy(7, 'x', 40));
    for (const [value, ug, x, y] of [
      [copy, 10, 2, 1],
      [sum, 11, 2, 1],
      [share, 30, 6, 3],
    ] as const)
      expect([value.ug, plain(value)]).toEqual([ug, { x, y }]);
    expect([running.ug, plain(running)]).toEqual([17, { x: 42, y: 1 }]);
  });

  test('a sum added up one by one is as long as it likes', () => {
    let sum: Measured = exactly(0);
    for (let i = 0; i < 50_000; i++) sum = added(sum, measuredBy(1, 'scale', 1));
    expect([sum.ug, uOf(sum)]).toEqual([50_000, 50_000]);
  });
});
