/**
 * The vapour of mercury step by step, held against printed steps and against the Antoine constants as a second method, and several substances in one air
 * (data/vapour-steps.json). Expected values are text and are met to the last figure printed.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { decimalFromText, zero } from '../../app/core/decimal.ts';
import { mixtureOf } from '../../app/core/mixture.ts';
import { ratioFromText } from '../../app/core/ratio.ts';
import { concentrationMgM3, vapourPressurePa, vapourSteps } from '../../app/core/vapour.ts';
import { marks, printed, type Source } from './cases.ts';

const data = JSON.parse(readFileSync(new URL('./data/vapour-steps.json', import.meta.url), 'utf8')) as {
  steps: { source: Source; temperatureC: number; terms: string[] } & Readonly<
    Record<'x' | 'series' | 'ratio' | 'exponent' | 'pressurePa' | 'saturatedMgM3', string>
  >;
  antoine: {
    source: Source;
    a: number;
    b: number;
    c: number;
    apart: { source: Source; percent: [number, string][]; most: string };
    boiling: { kelvin: number; bar: string };
    rangeK: [number, number];
  };
  boilingPoint: { source: Source; kelvin: string };
  ratios: { source: Source; of: [number, number, string][] };
  mixture: { source: Source; parts: [string, string][]; sum: string };
};

/** To the last figure printed. */
function meets(value: number, text: string, what: string): void {
  const { value: figure, half } = printed(text);
  expect(Math.abs(value - figure), `${what}: ${value} against ${text}`).toBeLessThanOrEqual(half);
}

test('every figure says who printed it, where, and how it came here', () => {
  const { steps, antoine, boilingPoint, ratios, mixture } = data;
  for (const { source } of [steps, antoine, antoine.apart, boilingPoint, ratios, mixture]) {
    for (const field of ['author', 'title', 'edition', 'page'] as const) expect(source[field]).toMatch(/\S/);
    expect(marks).toContain(source.mark);
    if (source.mark === 'read') expect(source.where).toMatch(/\S/);
  }
});

test('every step of the vapour at 20 °C is as a hand works it out (W7)', () => {
  const { steps } = data;
  const got = vapourSteps(steps.temperatureC);
  for (const key of ['x', 'series', 'ratio', 'exponent', 'pressurePa'] as const) meets(got[key], steps[key], key);
  expect(got.terms).toHaveLength(steps.terms.length);
  for (const [i, term] of steps.terms.entries()) meets(got.terms[i] ?? 0, term, `term ${i + 1}`);
  meets(concentrationMgM3(got.pressurePa, steps.temperatureC), steps.saturatedMgM3, 'saturated air');
});

describe('the Antoine constants, a second method worked out here (1.3)', () => {
  const { a, b, c, apart, boiling, rangeK } = data.antoine;
  const antoinePa = (kelvin: number) => 10 ** (a + 5 - b / (kelvin + c));
  const percentApart = (temperatureC: number) => (antoinePa(temperatureC + 273.15) / vapourPressurePa(temperatureC) - 1) * 100;

  test.each(apart.percent)('at %d °C they lie %s %% from the correlation', (temperatureC, percent) => {
    meets(percentApart(temperatureC), percent, String(temperatureC));
  });

  test('from 0 to 100 °C they are nowhere farther apart than printed', () => {
    const { value, half } = printed(apart.most);
    for (let t = 0; t <= 100; t += 0.5) expect(Math.abs(percentApart(t)), `${t} °C`).toBeLessThanOrEqual(value + half);
  });

  test('over the whole range printed for them the two methods stay within 2 %', () => {
    for (let k = rangeK[0]; k <= rangeK[1]; k += 1) expect(Math.abs(percentApart(k - 273.15)), `${k} K`).toBeLessThan(2);
  });

  test('at 629.77 K they give an atmosphere, and so does the correlation', () => {
    meets(antoinePa(boiling.kelvin) / 1e5, boiling.bar, 'bar');
    let [low, high] = [300, 400];
    for (let i = 0; i < 60; i += 1) {
      const middle = (low + high) / 2;
      if (vapourPressurePa(middle) < 101_325) low = middle;
      else high = middle;
    }
    meets(low + 273.15, data.boilingPoint.kelvin, 'boiling point');
  });
});

test.each(data.ratios.of)('vapour at %d °C stands to that at %d °C as %s', (warm, cold, ratio) => {
  meets(vapourPressurePa(warm) / vapourPressurePa(cold), ratio, 'ratio');
});

describe('several substances in one air (W1)', () => {
  const part = ([amount, limit]: readonly [string, string]) => ({
    amount: decimalFromText(amount) ?? zero,
    limit: decimalFromText(limit) ?? zero,
  });

  test('the printed example comes to 0.925, exactly', () => {
    const { parts, sum } = data.mixture;
    const got = mixtureOf(parts.map(part));
    const wanted = ratioFromText(sum);
    expect(got && got.sum.n * wanted.d).toBe(got && wanted.n * got.sum.d);
    expect(got?.shares).toHaveLength(parts.length);
  });

  test('without a limit, or with none above zero, there is no sum', () => {
    expect(mixtureOf([])).toBeNull();
    expect(mixtureOf([part(['1', '2']), part(['1', '0'])])).toBeNull();
  });
});
