import { describe, expect, test } from 'vitest';
import { reckon } from '../../app/core/reckon/index.ts';
import { type Case, cases, marks, member, printed } from './cases.ts';

function holds(one: Case): void {
  const got = reckon(one.reckon, one.input);
  if (!got.ok) throw new Error(JSON.stringify(got.problems));
  for (const [path, wanted] of Object.entries(one.expect)) {
    const value = member(got.value, path);
    if (wanted === null) expect(value, path).toBeUndefined();
    else if (typeof wanted === 'string' && typeof value === 'number') {
      const { value: figure, half } = printed(wanted);
      const apart = one.within ?? (one.relative === undefined ? half : one.relative * Math.abs(figure));
      expect(Math.abs(value - figure), `${path}: ${value} against ${wanted}`).toBeLessThanOrEqual(apart);
    } else expect(value, path).toEqual(wanted);
  }
}

describe.each(['weighing', 'units', 'runs', 'bullion', 'balances', 'air', 'air-more', 'rounding'])('%s', (name) => {
  test.each(cases(name).map((one) => [one.rule, one] as const))('%s', (_, one) => {
    holds(one);
  });

  test('every example says who printed it, where, and how it came here', () => {
    for (const { source, rule } of cases(name)) {
      for (const field of ['author', 'title', 'edition', 'page'] as const) expect(source[field], rule).toMatch(/\S/);
      expect(marks, rule).toContain(source.mark);
      if (source.mark.startsWith('read')) expect(source.where, rule).toMatch(/\S/);
    }
  });
});

test('an example that is a figure off in its last place is noticed', () => {
  const one = cases('balances')[0] as Case;
  expect(() => holds({ ...one, expect: { u_g: '1.00001' } })).toThrow();
});
