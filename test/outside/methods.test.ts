import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { decimalFromText, minus, sum, zero } from '../../app/core/decimal.ts';
import { cholesky } from '../../app/core/linear.ts';
import { gramsFromText } from '../../app/core/mass.ts';
import { allowedG, uncertifiedG } from '../../app/core/maximum-permissible-error.ts';
import { measured, scaled, total, uOf } from '../../app/core/measured.ts';
import { chiSquareQuantile, normalBelow } from '../../app/core/normal.ts';
import { pageSums } from '../../app/core/page-test.ts';
import { quotient } from '../../app/core/ratio.ts';
import { vapourPressurePa } from '../../app/core/vapour.ts';
import { marks, printed, type Source } from './cases.ts';

/** Examples that use the core's methods without a reckoning of their own. */
interface Examples {
  readonly [name: string]: { readonly source: Source; readonly given: never; readonly printed: Readonly<Record<string, string>> };
}
const examples = JSON.parse(readFileSync(new URL('./data/methods.json', import.meta.url), 'utf8')) as Examples;

const example = <T>(name: string): { given: T; printed: Readonly<Record<string, string>> } => {
  const one = examples[name];
  if (!one) throw new Error(`no example ${name}`);
  return one;
};

/** Meets the printed figure to half of its last place. */
function meets(value: number, text: string | undefined): void {
  const { value: wanted, half } = printed(text ?? '');
  expect(Math.abs(value - wanted), `${value} against ${text}`).toBeLessThanOrEqual(half);
}

test('every example says who printed it, where, and how it came here', () => {
  for (const [name, { source }] of Object.entries(examples)) {
    for (const field of ['author', 'title', 'edition', 'page'] as const) expect(source[field], name).toMatch(/\S/);
    expect(marks, name).toContain(source.mark);
    if (source.mark.startsWith('read')) expect(source.where, name).toMatch(/\S/);
  }
});

test('resistance, reactance and impedance from correlated readings', () => {
  const { given, printed: wanted } = example<Record<'V' | 'I' | 'phi', number[]>>('gum-h2');
  const columns = [given.V, given.I.map((mA) => mA / 1000), given.phi];
  const means = columns.map((c) => c.reduce((a, b) => a + b, 0) / c.length);
  const covariance = columns.map((a, i) =>
    columns.map((b, j) => a.reduce((t, x, n) => t + (x - (means[i] ?? 0)) * ((b[n] ?? 0) - (means[j] ?? 0)), 0) / 20),
  );
  // one independent source for each row of the decomposition: what the readings share cancels or adds by itself
  const lower = cholesky(covariance) ?? [];
  const [v, i, phi] = means.map((m, row) =>
    measured(
      m,
      (lower[row] ?? []).map((u, k) => [`source ${k}`, u] as const),
    ),
  );
  if (!v || !i || !phi) throw new Error('three quantities');
  const [V, I, p] = [v.ug, i.ug, phi.ug];
  const combined = (dV: number, dI: number, dPhi: number) => uOf(total([scaled(v, dV), scaled(i, dI), scaled(phi, dPhi)]));
  meets((V / I) * Math.cos(p), wanted.R);
  meets(combined(Math.cos(p) / I, (-V / I ** 2) * Math.cos(p), (-V / I) * Math.sin(p)), wanted.uR);
  meets((V / I) * Math.sin(p), wanted.X);
  meets(combined(Math.sin(p) / I, (-V / I ** 2) * Math.sin(p), (V / I) * Math.cos(p)), wanted.uX);
  meets(V / I, wanted.Z);
  meets(combined(1 / I, -V / I ** 2, 0), wanted.uZ);
});

test.each(['quam-a1', 'ea-4-02-s2', 'gum-h1'])('the components of %s combine to what is printed', (name) => {
  const { given, printed: wanted } = example<number[]>(name);
  meets(
    uOf(
      measured(
        0,
        given.map((u, i) => [`component ${i}`, u] as const),
      ),
    ),
    wanted.u,
  );
});

describe('a tabular cusum', () => {
  const { given, printed: wanted } = example<{ target: number; k: number; h: number; data: number[] }>('nist-cusum');
  const from = given.data.map((x) => x - given.target);
  const upper = pageSums(from, given.k);
  const lower = pageSums(
    from.map((x) => -x),
    given.k,
  );

  test('runs as printed and signals first at the fourteenth value', () => {
    for (const [n, text] of Object.entries(wanted)) if (/^\d+$/.test(n)) meets(upper[Number(n) - 1] ?? 0, text);
    expect(upper.slice(0, 12).filter((s) => s > 1e-9)).toHaveLength(1);
    expect(upper.findIndex((s) => s > given.h)).toBe(13);
    meets(Math.max(...lower), wanted.lowest);
    expect(lower.indexOf(Math.max(...lower))).toBe(7);
  });

  test('its plain running sum ends as printed', () => {
    const exact = given.data.map((x) => minus(decimalFromText(String(x)) ?? zero, decimalFromText(String(given.target)) ?? zero));
    meets(quotient(sum(exact), decimalFromText('1') ?? zero), wanted.plain);
  });
});

test('errors a scale may have, with each step including its upper end', () => {
  const { given, printed: wanted } = example<number[]>('oiml-r76');
  for (const load of given) meets(allowedG('III', 1, load), wanted[String(load)]);
  meets(allowedG('III', 5, 34470), wanted['34470 of e 5']);
  meets(uncertifiedG('III', 5, 34470), wanted['u of 34470 of e 5']);
});

test('quantiles of the normal and the chi-square distribution', () => {
  const { printed: wanted } = example('quantiles');
  meets(chiSquareQuantile(0.95, 1), wanted['chi-square 1']);
  meets(chiSquareQuantile(0.95, 4), wanted['chi-square 4']);
  meets(2 * normalBelow(-2), wanted['beyond 2']);
  meets(2 * normalBelow(-3), wanted['beyond 3']);
  meets(1 - normalBelow(1.644854), wanted['above 1.644854']);
  meets(1 - normalBelow(1.644853627 - 3), wanted['power at 3']);
  meets(1 - normalBelow(1.644853627 - 1), wanted['power at 1']);
});

test('a simple vapour equation agrees with the correlation within 1.7 % from 0 to 200 °C', () => {
  const { given } = example<{ A: number; B: number; C: number }>('antoine');
  for (let t = 0; t <= 200; t += 5) {
    const simple = 1e5 * 10 ** (given.A - given.B / (t + 273.15 + given.C));
    expect(Math.abs(simple / vapourPressurePa(t) - 1), `${t} °C`).toBeLessThan(0.017);
  }
});

test('old yields to the area, the fill of a retort and the loss of a sluice come out as printed', () => {
  const share = (part: string, whole: string) => {
    const [a, b] = [gramsFromText(part, ''), gramsFromText(whole, '')];
    return a.ok && b.ok ? quotient(a.value, b.value) : Number.NaN;
  };
  meets(share('500 lb', '1000 lb'), example('hofman').printed.fill);
  meets(share('36.8 ozt', '191 ozt'), example('wilkinson').printed['oz a square foot']);
  meets(share('36.8 ozt', '191 g') / 0.09290304, example('wilkinson').printed['g a square metre']);
  meets(share('553.75 lb', '2275967 g'), example('bowie').printed['g a cubic yard']);
});
