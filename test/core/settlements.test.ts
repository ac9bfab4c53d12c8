/** A bar is settled by the rule of its contract; what is missing or does not fit is named, and the bar's own assays stay beside it. */
import { expect, test } from 'vitest';
import { barsOf } from '../../app/core/book/bars.ts';
import { readBook } from '../../app/core/book/book.ts';
import { settlementsOf } from '../../app/core/book/settlements.ts';
import type { Body } from '../../app/core/kinds/index.ts';
import { toDouble } from '../../app/core/ratio.ts';
import { flagText } from '../../app/words/flags.ts';
import data from '../outside/data/bullion-book.json' with { type: 'json' };
import { BookMaker, stated } from './book-maker.ts';

const { umpire: example } = data;

function site() {
  const book = BookMaker.site();
  const melt = book.add('melt one', 'melt', {
    sponges: [],
    added: [{ key: 'x', label: 'old metal', weight: stated('1500', '0.1') }],
    bars: [{ key: '1', label: 'Bar 7', weight: stated('1000', '0.05') }],
  });
  const bar = `${melt}/1`;
  const certificate = (name: string, gold: string) =>
    book.add(name, 'assay', { subject: 'bar', bar, method: 'outside', result: { unit: 'permille', gold } });
  const settle = (name: string, more: Partial<Body<'settlement'>> = {}) =>
    book.add(name, 'settlement', {
      bar,
      site: example.site,
      other: example.other,
      limit: example.limit,
      rule: 'nearer-mean',
      ...more,
    });
  const read = () => readBook(book.entries);
  const codes = (id: string) => (read().flags.get(id) ?? []).map((f) => f.code);
  return { book, bar, certificate, settle, read, codes };
}

const value = (r: { n: bigint; d: bigint } | null | undefined) => (r ? toDouble(r) : null);

test.each([
  ['nearer-mean', example.nearerMean],
  ['median', example.median],
  ['umpire-between', example.umpireBetween],
] as const)('by the rule "%s" the example settles at %s (WE-29)', (rule, wanted) => {
  const { settle, read, bar } = site();
  settle('settled', { rule, umpire: example.umpire });
  const [one] = settlementsOf(read()).all;
  expect(value(one?.settled)).toBe(Number(wanted));
  // 1000 g at so many parts per thousand
  expect(value(one?.fineGold)).toBe(Number(wanted));
  expect(one).toMatchObject({ bar, umpireNeeded: true, counts: true });
});

test('a difference of exactly the limit settles at the mean, without an umpire', () => {
  const { settle, read } = site();
  settle('settled', { other: '885.1' });
  expect(value(settlementsOf(read()).all[0]?.settled)).toBe(884.85);
  expect(settlementsOf(read()).flags).toEqual([]);
});

test('beyond the limit and with no umpire nothing is settled, and it is said', () => {
  const { settle, read, codes } = site();
  const id = settle('settled');
  const [one] = settlementsOf(read()).all;
  expect([one?.settled, one?.fineGold]).toEqual([null, null]);
  expect(codes(id)).toEqual(['umpire-needed']);
});

test('a figure that is not its assay rounded once is named; one that is passes', () => {
  const { certificate, settle, codes, read } = site();
  // 884.649 rounded to one place is 884.6; by way of 884.65 it would be 884.6 or 884.7 as the rule has it
  const ours = certificate('ours', '884.649');
  const theirs = certificate('theirs', '885.31');
  expect(codes(settle('right', { siteAssay: ours, otherAssay: theirs, umpire: '884.9' }))).toEqual([]);
  const wrong = settle('wrong', { siteAssay: ours, site: '884.7', other: '884.7' });
  expect(codes(wrong)).toEqual(['settled-twice', 'settlement-differs']);
  for (const flag of settlementsOf(read()).flags) expect(flagText(flag)).toMatch(/\.$/);
});

test('the last settlement of a bar counts, and its own fineness stays what its assays say', () => {
  const { bar, certificate, settle, read } = site();
  certificate('ours', '884.6');
  settle('first', { other: '884.8' });
  settle('second', { other: '884.9' });
  expect(settlementsOf(read()).all.map((s) => [value(s.settled), s.counts])).toEqual([
    [884.7, false],
    [884.75, true],
  ]);
  expect(value(barsOf(read()).all.get(bar)?.gold?.permille)).toBe(884.6);
});
