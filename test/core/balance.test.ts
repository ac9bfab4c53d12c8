import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
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
