/** The two-product formula against the copper of Wills' Mineral Processing Technology, chapter 3 (from memory); the uncertainties are computed by hand. */
import { expect, test } from 'vitest';
import { twoProduct } from '../../app/core/two-product.ts';

const part = (value: number, relative: number) => ({ value, u: value * relative });

test('feed 0.8 %, concentrate 25 % and tail 0.15 % copper recover 81.74 %, and the tail makes most of the doubt', () => {
  const got = twoProduct(part(0.8, 0.02), part(25, 0.01), part(0.15, 0.04));
  if (!got.ok) throw new Error('refused');
  const { recovery, u, contributions, ratioOfConcentration, enrichment } = got.value;
  expect(100 * recovery).toBeCloseTo(81.740443, 6);
  expect(ratioOfConcentration).toBeCloseTo(38.230769, 6);
  expect(enrichment).toBeCloseTo(31.25, 10);
  expect(100 * contributions.feed).toBeCloseTo(0.377264, 6);
  expect(100 * contributions.concentrate).toBeCloseTo(-0.00493403, 7);
  expect(100 * contributions.tail).toBeCloseTo(-0.734791, 5);
  expect(100 * u).toBeCloseTo(0.825996, 5);
});

test('assays that tell of no separation are refused', () => {
  for (const [f, c, t] of [
    [1, 1, 0.5],
    [1, 5, 1],
    [1, 5, -0.1],
    [0, 5, 0],
    [Number.NaN, 5, 0],
  ] as const)
    expect(twoProduct(part(f, 0), part(c, 0), part(t, 0))).toMatchObject({
      ok: false,
      problems: [{ code: 'two-product-order' }],
    });
});
