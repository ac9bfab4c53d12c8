import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shareOut } from '../../app/core/sharing.ts';

test('the parts make the whole again, whatever it is shared by', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -9e15, max: 9e15 }),
      fc.array(fc.integer({ min: 0, max: 9e15 }), { minLength: 1, maxLength: 40 }),
      (whole, weights) => {
        const parts = shareOut(whole, weights);
        const wanted = weights.some((w) => w > 0) ? BigInt(whole) : 0n;
        expect(parts.reduce((s, p) => s + BigInt(p), 0n)).toBe(wanted);
      },
    ),
  );
});

test('no part is further than one from its quota, and a weight of nothing gets nothing', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 1e6 }),
      fc.array(fc.integer({ min: 0, max: 1e6 }), { minLength: 1, maxLength: 20 }),
      (whole, weights) => {
        const sum = weights.reduce((s, w) => s + w, 0);
        for (const [i, part] of shareOut(whole, weights).entries()) {
          const weight = weights[i] ?? 0;
          if (weight === 0) expect(part).toBe(0);
          else expect(Math.abs(part - (whole * weight) / sum)).toBeLessThan(1);
        }
      },
    ),
  );
});

test('what is left over goes to the largest remainder, of equals to the first', () => {
  expect(shareOut(10, [1, 1, 1])).toEqual([4, 3, 3]);
  expect(shareOut(-10, [1, 1, 1])).toEqual([-4, -3, -3]);
  // quotas 1.25, 2.75, 6: the second has the larger remainder
  expect(shareOut(10, [5, 11, 24])).toEqual([1, 3, 6]);
  expect(shareOut(5, [0, 0])).toEqual([0, 0]);
});
