/** The month of a small mill, from flask to bar and back to the count: practice.md W7, whose hidden truth is known because it was constructed. */
import { expect, test } from 'vitest';
import { accountOf, perTonne } from '../../app/core/book/account.ts';
import { readBook } from '../../app/core/book/book.ts';
import { lossPlace } from '../../app/core/book/places.ts';
import data from './data/mill-return.json' with { type: 'json' };
import { millReturn } from './mill-return-book.ts';

const gramsPerOunce = 31.1034768;

test('the month closes to the loss, the paths and the loss per tonne that it was built with', () => {
  const book = readBook(millReturn().entries);
  const account = accountOf(book, { from: null, to: null });
  const ounces = (ug: number) => ug / 1e6 / gramsPerOunce;
  const { expected } = data;
  expect(ounces(account.opening.ug)).toBeCloseTo(expected.opening, 6);
  expect(ounces(account.closing.ug)).toBeCloseTo(expected.closing, 6);
  expect(ounces(account.unaccounted.ug)).toBeCloseTo(expected.loss, 6);
  expect(perTonne(account.unaccounted, account.ore)?.g).toBeCloseTo(expected.lossGPerTonne, 3);
  const path = (name: string) => ounces(account.paths.find((p) => p.path === name)?.posted.ug ?? 0);
  expect(path('retort')).toBeCloseTo(expected.retort, 6);
  expect(path('melt')).toBeCloseTo(expected.melt, 2);
  expect(path('unaccounted')).toBeCloseTo(expected.rest, 2);
});

test('what was lost in the melt is only bounded: the weighings cannot split the shrinkage', () => {
  const account = accountOf(readBook(millReturn().entries), { from: null, to: null });
  const melt = account.paths.find((p) => p.path === 'melt');
  expect(melt?.lowUg).toBe(0);
  expect((melt?.highUg ?? 0) / 1e6 / gramsPerOunce).toBeCloseTo(4.57, 6);
});

test('the run of the month has the ratios of the return', () => {
  const book = readBook(millReturn().entries);
  const figures = book.runs[0]?.last?.figures;
  expect(((figures?.spongeRatio ?? 0) * 100).toFixed(2)).toBe(String(data.expected.spongeRatioPercent));
  expect(((figures?.gapOfCharge ?? 0) * 100).toFixed(4)).toBe(String(data.expected.gapPercent));
  expect(((figures?.caughtUpper ?? 0) * 100).toFixed(2)).toBe(String(data.expected.caughtUpperPercent));
});

test('a sealed flask adds nothing to the unaccounted and nothing to its uncertainty', () => {
  const account = accountOf(readBook(millReturn().entries), { from: null, to: null });
  expect([...account.unaccounted.parts.keys()].filter((s) => s.startsWith('opening-one'))).toEqual([]);
  expect(account.stocks.some((s) => s.place === lossPlace('unaccounted'))).toBe(false);
});
