import { expect, test } from 'vitest';
import { mercuryAccount } from '../../app/papers/mercury-account.ts';
import { BookMaker, stated } from '../core/book-maker.ts';
import mill from '../outside/data/mill-return.json' with { type: 'json' };
import { millReturn } from '../outside/mill-return-book.ts';
import { frameOf } from './site-of-runs.ts';
import { between, bookOf, fromLater, said, year } from './year.ts';

const whole = { from: null, to: null };
const account = (period: { from: string | null; to: string | null } = whole, maker = year().book) =>
  said(mercuryAccount(bookOf(maker), period, frameOf(maker)));
const ofMill = () => account(whole, millReturn());

/** Grams of so many troy ounces, added as hundredths of an ounce and rounded once to a hundredth of a gram. */
const grams = (ounces: readonly string[]) =>
  ((ounces.reduce((sum, n) => sum + Math.round(Number(n) * 100), 0) / 100) * 31.1034768).toFixed(2);

test('the month of a small mill comes to the figures it was constructed with, in grams', () => {
  const { opening, closing, drawn } = mill;
  const text = between(ofMill(), 'The account', 'What it says');
  // practice.md W7: 2,636.66 ozt at opening, 2,547.61 ozt at closing, 89.05 ozt not there
  const first = grams([...opening.flasks, opening.bottle, opening.plates, opening.mortar]);
  const last = grams([opening.flasks[0] ?? '', closing.partFlask, closing.bottle, closing.plates, closing.mortar]);
  expect(first).toBe('82009.29');
  expect(text).toContain(`Opening stock\n${first}\n`);
  expect(text).toContain(`less closing stock\n${last}\n`);
  expect(text).toContain(`Not accounted for\n${grams(['89.05'])}\n`);
  expect(Number(opening.flasks[1]) - Number(drawn)).toBeCloseTo(Number(closing.partFlask), 6);
});

test('the loss per tonne and the ore stand in tonnes, whatever ton was written', () => {
  // 520 long tons are 528.344 t; 2,769.76 g over them are 5.242 g
  const text = between(ofMill(), 'What it says', 'Closing stock by place');
  expect(text).toMatch(/Ore put through\n528 ± 53 t/);
  expect(text).toMatch(/Not accounted for, per tonne\n5\.2\d* ± /);
});

test('what was lost in the melt is shown as bounds, from nothing to the whole shrinkage', () => {
  const paths = between(ofMill(), 'Ways it was lost', 'Movements of the period by kind');
  // 205.67 − 201.10 = 4.57 ozt
  expect(paths).toMatch(new RegExp(`Lost at the melt\\n[\\d.]+\\n0\\.00\\n${grams(['4.57'])}`));
});

test('a year reckoned by hand adds up: opening, receipts, removals, spill, closing', () => {
  const text = between(account(), 'The account', 'What it says');
  expect(text).toContain('Opening stock\n2000.00\n');
  expect(text).toContain('Receipts\n34473.00\n');
  expect(text).toContain('less removals: handed over to others\n500.00\n');
  // 50 ran out, 44.5 was gathered up
  expect(text).toContain('less spilled and not gathered up, as weighed\n5.50\n');
});

test('every term with its sign leaves what is not accounted for', () => {
  const text = between(account(), 'The account', 'What it says');
  const value = (name: string) => Number(new RegExp(`\\n${name}\\n([−\\d.]+)\\n`).exec(text)?.[1]?.replace('−', '-'));
  const sum =
    value('Opening stock') +
    value('Receipts') +
    value('Found, on no book before') -
    value('less removals: handed over to others') -
    value('less spilled and not gathered up, as weighed') -
    value('less closing stock');
  expect(value('Not accounted for')).toBeCloseTo(sum, 1);
  const places = between(account(), 'Closing stock by place', 'Ways it was lost');
  const stocks = [...places.matchAll(/\n([\d.]+\.\d\d)\n±/g)].map(([, g]) => Number(g));
  const closing = stocks.pop();
  expect(stocks.reduce((a, b) => a + b, 0)).toBeCloseTo(closing ?? 0, 1);
  expect(closing).toBeCloseTo(value('less closing stock'), 6);
});

test('|z| is the difference over half its U, with its level in words, and the detectable loss beside it', () => {
  const text = between(account(), 'What it says', 'Closing stock by place');
  const [, value = '', U = ''] = /uncertainty \(k = 2\)\n([−\d.]+) ± ([\d.]+) g/.exec(text) ?? [];
  const z = Number(/\|z\| = ([\d.]+)/.exec(text)?.[1]);
  const difference = Math.abs(Number(value.replace('−', '-')));
  // U is shown to two digits: the quotient of what is shown lies within five in a hundred
  expect(Math.abs(z - difference / (Number(U) / 2))).toBeLessThan(0.05 * z + 0.02);
  const detectable = Number(/Detectable loss\n([\d.]+) g/.exec(text)?.[1]);
  expect(Math.abs(detectable / (Number(U) / 2) - 3.2897)).toBeLessThan(0.2);
  const level =
    z > 3
      ? 'above 3, the weighings do not explain'
      : z > 2
        ? 'above 2, the figures are hard'
        : 'up to 2, the figures do not show';
  expect(text).toContain(level);
});

test('it says that unaccounted is not vapour and that no balance measures the air', () => {
  const text = account();
  expect(text).toContain('Not accounted for means just that.');
  expect(text).toContain('No balance measures the air: 2.5 mg of mercury');
  expect(text).not.toMatch(/evaporat/i);
  expect(text).not.toMatch(/\b(safe|safely|approved|compliant|authori[sz]ed)\b/i);
});

test('reservations stand first, each with the entry it is about', () => {
  const text = between(account(), 'Reservations', 'The account');
  expect(text).toMatch(/Stock-take of 30 June 2026: A place could not be counted: bolted shut\./);
});

test('a period of days holds its first and last day, and neighbouring periods join', () => {
  const { book } = year();
  const text = (from: string | null, to: string | null) => between(account({ from, to }, book), 'The account', 'What it says');
  const value = (of: string, name: string) => /[\d.]+/.exec(of.slice(of.indexOf(`\n${name}\n`) + name.length + 2))?.[0];
  const first = text(null, '2026-03-02');
  const second = text('2026-03-03', null);
  expect(value(first, 'less closing stock')).toBe(value(second, 'Opening stock'));
  expect(value(text('2026-04-02', '2026-04-02'), 'less removals: handed over to others')).toBe('500.00');
  expect(value(text('2026-04-03', '2026-04-30'), 'less removals: handed over to others')).toBe('0.00');
});

test('a weight nobody knows the uncertainty of is told before every figure', () => {
  const maker = year().book;
  maker.add('bare', 'issue', { vessel: 'bottle', to: 'plates', weight: { how: 'stated', mass: '10 g' } });
  const text = between(account(whole, maker), 'Reservations', 'The account');
  expect(text).toContain('One weight on this paper has no known uncertainty.');
});

test('an entry of an unknown kind inside or before the period keeps the account from being printed; a later one is a reservation', () => {
  const maker = year().book;
  fromLater(maker, {});
  const print = (to: string | null) => mercuryAccount(bookOf(maker), { from: null, to }, frameOf(maker));
  expect(print(null)).toMatchObject({ ok: false, problems: [{ code: 'paper-not-understood' }] });
  expect(print('2026-05-01')).toMatchObject({ ok: false });
  expect(said(print('2026-04-30'))).toContain('1 entry of a kind this program does not know (smelting)');
});

test('it draws where the mercury went, hatched where it was lost, and tells the same bands in a table that adds up to the account', () => {
  const { book } = year();
  const made = mercuryAccount(bookOf(book), whole, frameOf(book));
  if (!made.ok) throw new Error('no account');
  const [svg = ''] = /<svg[\s\S]*?<\/svg>/.exec(JSON.stringify(made.value.content)) ?? [];
  expect(svg).toContain('url(#loss)');
  const text = between(said(made), 'Where it went', 'Movements of the period by kind');
  const sum = (end: RegExp) => [...text.matchAll(end)].reduce((s, [, g]) => s + Number((g ?? '').replace(/[\s\u202f]/g, '')), 0);
  expect(sum(/^At first: .*\n.*\n([\d\u202f.]+)$/gm)).toBeCloseTo(2000, 1);
  expect(sum(/^Receipts\n.*\n([\d\u202f.]+)$/gm)).toBeCloseTo(34473, 1);
  expect(sum(/\nHanded over\n([\d\u202f.]+)$/gm)).toBeCloseTo(500, 1);
  expect(sum(/\nSpilled and not gathered up\n([\d\u202f.]+)$/gm)).toBeCloseTo(5.5, 1);
});

test('runs of periods stand on it from three counted periods on: drawn, in a table, with the verdict and the false alarm it is tested at', () => {
  const counts = (grams: readonly number[], falseAlarm?: number) => {
    const maker = BookMaker.site();
    const known = (g: number) => stated(String(g), '60');
    const at = (i: number) => ({ happened: `2026-0${i + 2}-01T09:00+13:00` });
    maker.add('stock', 'receipt', { vessel: maker.bottle, way: 'already-here', weight: known(5000) }, at(-1));
    const ids = grams.map((g, i) =>
      maker.add(
        `count ${i}`,
        'stock-take',
        { scope: 'whole', lines: [{ how: 'weighed', place: `vessel:${maker.bottle}`, weight: known(g) }] },
        at(i),
      ),
    );
    const noFigures = {
      opening_g: '',
      receipts_g: '',
      found_g: '',
      removals_g: '',
      released_g: '',
      closing_g: '',
      unaccounted_g: '',
      u_g: '',
    };
    if (falseAlarm !== undefined)
      maker.add(
        'closing',
        'closing',
        { closing: ids.at(-1) ?? '', version: 1, ends: [], figures: noFigures, statement: '', paper: '', falseAlarm },
        at(grams.length - 1),
      );
    return maker;
  };
  expect(account(whole, counts([5000, 4965, 5045]))).not.toContain('Runs of periods');
  const six = [5000, 4965, 5045, 4935, 4875, 4780, 4660];
  const text = between(account(whole, counts(six)), 'Runs of periods', 'Movements of the period by kind');
  // methods.md WE-5 without what its periods share: the first two figures of each difference are those it was made from
  for (const g of [35, -80, 110, 60, 95, 120])
    expect(text).toMatch(new RegExp(`\n${String(g).replace('-', '−')} ± 1[67]\\d\\s*g\n`));
  expect(text).toContain('Signal in the period to');
  expect(text).toContain('starting value of this program');
  expect(between(account(whole, counts(six, 0.01)), 'Runs of periods', 'Movements of the period by kind')).toContain(
    'chosen with the last closing',
  );
  // an account that ends earlier knows nothing of later counts
  expect(account({ from: null, to: '2026-04-30' }, counts(six))).not.toContain('Runs of periods');
});
