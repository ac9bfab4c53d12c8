/** Old money and old assays: every notation of one amount is one amount, what may be read two ways is refused, and nothing is rounded on the way. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { caratsOf, permilleOfCarats } from '../../app/core/old-assay.ts';
import { moneyText, poundsFromText } from '../../app/core/old-money.ts';
import { oldNumber } from '../../app/core/old-number.ts';
import { plusRatio, toDouble } from '../../app/core/ratio.ts';
import { reckon } from '../../app/core/reckon/index.ts';

const pounds = (text: string) => {
  const got = poundsFromText(text, 'money');
  return got.ok ? toDouble(got.value) : got.problems[0]?.code;
};

test('one amount in every notation is one amount', () => {
  for (const text of ['£3 17s 10½d', '£3 17s 10 1/2d', '£3 17 10½', '3 17 10 1/2', '3.17.10 1/2', '77s 10.5d', '934½d'])
    expect(pounds(text), text).toBe(3.89375);
  expect([pounds('9s 4d'), pounds('£934'), pounds('16d'), pounds('35s')]).toEqual([112 / 240, 934, 16 / 240, 1.75]);
});

test('two figures without signs, and coins that should have been carried, are asked about and never guessed', () => {
  for (const text of ['3 17', '3.17', '4/6', '1/2']) expect(pounds(text), text).toBe('old-money-two');
  for (const text of ['£3 20s 1d', '£3 17s 12d', '9s 12d', '3 17 12']) expect(pounds(text), text).toBe('old-money-carry');
  for (const text of ['', 'three pounds', '£-3', '-3s', '3 17 10 3/2', '3,5s', '1e3d', '£3 17s 10½d and more'])
    expect(pounds(text), text).toBe('old-money');
  expect(pounds('1'.repeat(5000))).toBe('old-money');
});

test('what is written as pounds, shillings and pence reads back to the same amount', () => {
  fc.assert(
    fc.property(fc.nat({ max: 1e6 }), fc.nat({ max: 19 }), fc.nat({ max: 11 }), fc.nat({ max: 3 }), (l, s, d, farthings) => {
      const got = poundsFromText(`${l} ${s} ${d}${['', ' 1/4', '½', ' 3/4'][farthings]}`, 'money');
      const again = got.ok ? poundsFromText(moneyText(got.value), 'money') : got;
      expect(again).toEqual(got);
      expect(got.ok && got.value.n * 960n).toBe(got.ok && BigInt(((l * 20 + s) * 12 + d) * 4 + farthings) * got.value.d);
    }),
  );
});

test('pence are carried when rounding makes twelve of them', () => {
  expect(moneyText({ n: 23_999_999n, d: 24_000_000n })).toBe('£1 0s 0d');
  expect(moneyText({ n: 1869n, d: 440n })).toBe('£4 4s 11.4545d');
});

test('better and worse by the same carats lie evenly about 22, and fine gold is where better ends', () => {
  const none = { n: 0n, d: 1n };
  fc.assert(
    fc.property(fc.nat({ max: 1 }), fc.nat({ max: 3 }), fc.nat({ max: 3 }), (carats, grains, quarters) => {
      const told = { carats, grains: { n: BigInt(grains), d: 1n }, quarters };
      const [up, down] = [caratsOf({ ...told, side: 'better' }), caratsOf({ ...told, side: 'worse' })];
      expect(up && down && plusRatio(up, down)).toEqual({ n: 44n, d: 1n });
    }),
  );
  const better = (carats: number, grains = none) => caratsOf({ side: 'better', carats, grains, quarters: 0 });
  expect(better(2)).toEqual({ n: 24n, d: 1n });
  expect(better(2, { n: 1n, d: 4n })).toBeNull();
  expect(caratsOf({ side: 'worse', carats: 22, grains: { n: 1n, d: 1n }, quarters: 0 })).toBeNull();
  expect(toDouble(permilleOfCarats({ n: 22n, d: 1n }))).toBe(916.6666666666666);
});

test('a fraction of a grain and its quarters say the same, and only one of them may speak', () => {
  const carats = (assay: object) => {
    const got = reckon('old-assay', { assay });
    return got.ok ? got.value.carats : got.problems.map((p) => `${p.field} ${p.code}`);
  };
  expect(carats({ side: 'worse', carats: 0, grains: '3 3/4' })).toBe(
    carats({ side: 'worse', carats: 0, grains: '3', quarters: 3 }),
  );
  expect(carats({ carats: 20, grains: '3½', quarters: 2 })).toEqual(['assay.quarters quarters-twice']);
  expect(carats({ carats: 20, grains: '4' })).toEqual(['assay.grains carat-grains']);
  expect(carats({ carats: 20, grains: '1 5/4' })).toEqual(['assay.grains old-number']);
  expect(carats({ side: 'better', carats: 3 })).toEqual(['assay.carats carats-range']);
  expect(oldNumber('0/4')).toBeNull();
});

test('a price is worked only when it is known what it is the price of, and what the metal holds', () => {
  const said = (more: object) => {
    const got = reckon('old-money', { money: '£3 17s 10½d', ...more });
    return got.ok ? Object.keys(got.value) : got.problems.map((p) => p.code);
  };
  expect(said({})).toEqual(['pounds', 'pence', 'text']);
  expect(said({ mass: '1 ozt' })).toEqual(['price-of-what']);
  expect(said({ mass: '1 ozt', per: 'fine-ounce' })).toEqual(['fineness-missing']);
  expect(said({ mass: '1 ozt', per: 'fine-ounce', gold_permille: 900, assay: { carats: 22 } })).toEqual(['fineness-twice']);
  expect(said({ mass: '1 ozt', per: 'ounce', gold_permille: 900 })).toEqual(['fineness-not-asked']);
  expect(said({ gold_permille: 900 })).toEqual(['fineness-of-nothing']);
});

test('the critical difference lies between the repeat limit shrunk by both means and the limit between laboratories', () => {
  const means = (site_results: number, other_results: number) => {
    const got = reckon('agreement', { repeat_s_permille: 0.1, between_s_permille: 0.2, site_results, other_results });
    return got.ok ? got.value : {};
  };
  expect(means(1, 1).critical_difference_permille).toBeCloseTo(0.56, 12);
  expect(means(1, 1).site_range_permille).toEqual({ not_computable: 'one-result' });
  expect(means(6, 3)).toMatchObject({ site_range_permille: 0.4, other_range_permille: 0.33 });
  const got = reckon('agreement', { repeat_s_permille: 0.2, between_s_permille: 0.1, site_results: 2, other_results: 2 });
  expect(got.ok ? '' : got.problems[0]?.code).toBe('between-below-repeat');
});
