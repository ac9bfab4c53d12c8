/** The Mercury room: every figure is the core's, opens to the movements it is a sum of, and nothing is clipped or hidden. */
import { describe, expect, test } from 'vitest';
import { accountOf, detectableFactor, type Period } from '../../app/core/book/account.ts';
import { type Book, readBook } from '../../app/core/book/book.ts';
import { stocksAt } from '../../app/core/book/movements/gathering.ts';
import { periodsOf } from '../../app/core/book/periods.ts';
import { isStock } from '../../app/core/book/places.ts';
import type { Entry } from '../../app/core/entry.ts';
import { uOf } from '../../app/core/measured.ts';
import { dayOf } from '../../app/core/time.ts';
import { accountRows, verdictOf } from '../../app/screens/mercury/account.ts';
import { daysOf, movementsHref, periodHref, periodOf, shownFrom } from '../../app/screens/mercury/address.ts';
import { scaleOf, sumOf, usualAnswer } from '../../app/screens/mercury/answer.ts';
import { countedChoices } from '../../app/screens/mercury/counted.ts';
import { doubtRows } from '../../app/screens/mercury/doubted.ts';
import { figureOf, figureText } from '../../app/screens/mercury/figures.ts';
import { movementPage, perPage, placesMoved } from '../../app/screens/mercury/movements.ts';
import { pageOf, pagesOfRoom } from '../../app/screens/mercury/pages.ts';
import { goldOf, movementsOf, stocksOf, toPlace } from '../../app/screens/mercury/stocks.ts';
import { yieldRows } from '../../app/screens/mercury/yields.ts';
import { partsOf } from '../../app/screens/shared/places.ts';
import { eighteenMonths } from '../../main/host/sample/eighteen-months.ts';
import { journalOf } from '../../main/host/sample/write.ts';
import { BookMaker, scaled, stated } from '../core/book-maker.ts';

const sample: Book = readBook(
  journalOf(eighteenMonths())
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Entry),
);
const whole: Period = { from: null, to: null };
const half: Period = { from: '2025-07-01', to: '2025-12-31' };
const number = (text: string): number => Number(text.replace(/[\u202f\u00a0 ]/g, '').replace('−', '-'));
const plain = (text: string): string => text.replace(/[\u202f\u00a0]/g, ' ');

describe('a figure', () => {
  test('is shown with at most two digits of its expanded uncertainty, the value to the same place, rounded once', () => {
    expect(figureOf({ ug: 12_345_678, parts: new Map([['a', 320_000]]) })).toEqual({ value: '12.35', U: '0.64' });
    expect(figureOf({ ug: -1_005_000, parts: new Map() })).toEqual({ value: '−1.00', U: '' });
    // half a fifth: two errors of one source have been taken together before, here they stand apart
    expect(
      plain(
        figureText({
          ug: 297_000_000,
          parts: new Map([
            ['a', 60e6],
            ['b', 80e6],
          ]),
        }),
      ),
    ).toBe('297 ± 200 g');
  });
});

describe('the stocks', () => {
  test('are the sums of the movements of each place, recomputed by hand, and none is left out', () => {
    const rows = stocksOf(sample, null).flatMap((g) => g.rows);
    for (const row of rows) {
      let ug = 0;
      for (const m of sample.movements.all) ug += (m.to === row.key ? m.mercury.ug : 0) - (m.from === row.key ? m.mercury.ug : 0);
      expect(Math.abs(number(row.value) - ug / 1e6), row.label).toBeLessThanOrEqual(row.U === '' ? 0.005 : number(row.U));
    }
    const held = [...stocksAt(sample.movements.all, null)].filter(
      ([place, m]) => isStock(place) && (Math.round(m.ug) !== 0 || uOf(m) >= 0.5),
    );
    expect(rows.map((row) => row.key).sort()).toEqual(held.map(([place]) => place).sort());
  });

  test('stand in groups, each with how its last amount is known', () => {
    const groups = stocksOf(sample, null);
    expect(groups.map((g) => g.group)).toEqual(['store', 'circuit', 'condenser', 'waste']);
    const notes = new Map(groups.flatMap((g) => g.rows.map((row) => [row.label, row.note] as const)));
    expect(notes.get('Working bottle')).toBe('by a count');
    expect(notes.get('Flask 1')).toBe('stated by another');
    expect(notes.get('Waste drum 1')).toBe('by a count');
  });

  test('open to their movements, each leading to its trace, the early ones in one sum', () => {
    const bottle = stocksOf(sample, null)[0]?.rows.find((row) => row.label === 'Working bottle');
    const all = movementsOf(sample, bottle?.key ?? '', null);
    const lines = bottle?.lines() ?? [];
    expect(lines[0]).toMatchObject({
      sort: 'formula',
      text: `${all.length - 12} movements before these`,
      href: movementsHref(bottle?.key),
    });
    const single = lines.filter((line) => line.sort === 'reading');
    expect(single.map((line) => line.href)).toEqual(all.slice(-12).map((m) => `#/mercury/trace/${m.entry}`));
    const sum = all.reduce((s, m) => s + toPlace(m, bottle?.key ?? '').ug, 0);
    expect(Math.abs(number((lines.at(-1)?.figure ?? '').split('±')[0] ?? '') - sum / 1e6)).toBeLessThan(0.01);
  });

  test('below nothing are shown below nothing and marked', () => {
    const book = BookMaker.site();
    book.add('issue', 'issue', { vessel: book.bottle, to: 'plates', weight: scaled('100', book.bench) });
    const [store, circuit] = stocksOf(readBook(book.entries), null);
    expect(store?.rows[0]).toMatchObject({ label: 'Working bottle', value: '−100.000', negative: true });
    expect(circuit?.rows[0]).toMatchObject({ value: '100.000', negative: false });
  });

  test('of strained mercury carry gold between 0.03 and 0.17 parts in a hundred of what was weighed', () => {
    const book = BookMaker.site();
    const jar = book.add('jar', 'vessel', { label: 'Jar', use: 'jar', mercury: 'strained' });
    book.add('receipt', 'receipt', { vessel: jar, way: 'already-here', weight: stated('5000', '0.1') });
    const [gold] = goldOf(readBook(book.entries));
    expect(gold?.place).toBe(`vessel:${jar}`);
    expect((gold?.lowUg ?? 0) / 1e6).toBeCloseTo(1.5, 6);
    expect((gold?.highUg ?? 0) / 1e6).toBeCloseTo(8.5, 6);
    expect(goldOf(readBook(BookMaker.site().entries))).toEqual([]);
  });
});

describe.each([
  ['the whole book', whole],
  ['half a year', half],
])('the account of %s', (_, period) => {
  const account = accountOf(sample, period);
  const rows = accountRows(sample, account);
  const keys = ['opening', 'receipts', 'found', 'removals', 'released', 'closing', 'unaccounted'] as const;

  test('shows the core’s figures in order, and nothing else', () => {
    expect(rows.map((row) => row.key).filter((key) => key !== 'invoiced')).toEqual(keys);
    expect(rows.some((row) => row.key === 'invoiced')).toBe(Math.round(account.invoiced.ug) !== 0);
    for (const row of rows)
      expect([row.value, row.U], row.key).toEqual(
        Object.values(figureOf(account[row.key as (typeof keys)[number] | 'invoiced'])),
      );
  });

  test('adds up', () => {
    const ug = Object.fromEntries(keys.map((key) => [key, account[key].ug])) as Record<(typeof keys)[number], number>;
    expect(ug.unaccounted).toBe(ug.opening + ug.receipts + ug.found - ug.removals - ug.released - ug.closing);
  });

  test('opens each line to what it is a sum of', () => {
    for (const row of rows) {
      const said = row.lines().at(-1);
      expect(said, row.key).toMatchObject({
        sort: 'result',
        figure: figureText(account[row.key as (typeof keys)[number] | 'invoiced']),
      });
    }
    const closing =
      rows
        .find((row) => row.key === 'closing')
        ?.lines()
        .slice(0, -1) ?? [];
    const sum = closing.reduce((s, line) => s + number((line.figure ?? '').replace(/g$/, '').split('±')[0] ?? ''), 0);
    expect(Math.abs(sum - account.closing.ug / 1e6)).toBeLessThan(2);
  });

  test('leads from what is not accounted for to each movement that makes it, told outward, and they add up to it', () => {
    const lines = rows.at(-1)?.lines() ?? [];
    const from = lines.findIndex((line) => line.sort === 'note');
    const told = lines.slice(
      from + 1,
      lines.findIndex((line, i) => i > from && line.figure?.startsWith('u = ')),
    );
    const sum = told.reduce((s, line) => s + number((line.figure ?? '').replace(/g$/, '').split('±')[0] ?? ''), 0);
    expect(told.length).toBeGreaterThan(0);
    expect(Math.abs(sum - account.unaccounted.ug / 1e6)).toBeLessThan(told.length);
    for (const line of told) expect(line.href ?? '', line.text).toMatch(/^#\/mercury\//);
  });

  test('says |z|, the detectable loss and the loss a tonne as they follow from it', () => {
    const { level, gain, rows: said } = verdictOf(account);
    const z = account.unaccounted.ug / uOf(account.unaccounted);
    expect(said[0]?.figure).toBe(`|z| = ${Math.abs(z).toFixed(2)}`);
    expect(level).toBe(Math.abs(z) > 3 ? 'act' : Math.abs(z) > 2 ? 'warn' : 'none');
    expect(gain).toBe(account.unaccounted.ug < 0);
    expect(number((said[1]?.figure ?? '').replace('g', ''))).toBe(
      Math.round((detectableFactor * uOf(account.unaccounted)) / 1e6),
    );
    const shown = (said[3]?.figure ?? '').split('±')[0]?.trim() ?? '';
    const half = 0.5 / 10 ** (shown.split('.')[1]?.length ?? 0);
    const perTonne = account.unaccounted.ug / 1e6 / ((account.ore?.ug ?? 0) / 1e12);
    expect(Math.abs(number(shown) - perTonne)).toBeLessThanOrEqual(half + 1e-9);
  });
});

test('two periods side by side take every movement once, and the second opens where the first closes', () => {
  const first = accountOf(sample, { from: null, to: '2025-12-31' });
  const second = accountOf(sample, { from: '2026-01-01', to: null });
  expect(second.opening.ug).toBe(first.closing.ug);
  expect(first.unaccounted.ug + second.unaccounted.ug).toBe(accountOf(sample, whole).unaccounted.ug);
});

test('an account in which nothing is known to be uncertain has no |z|, no detectable loss and no loss a tonne, in words', () => {
  const { level, rows } = verdictOf(accountOf(readBook([]), whole));
  expect(level).toBeNull();
  for (const i of [0, 1, 3]) expect(rows[i]?.figure).toMatch(/^not computable: /);
});

describe('the answer', () => {
  const newest = periodsOf(sample).at(-1)?.period ?? whole;

  test('adds up in sight: five figures, the last of them what the others leave over', () => {
    const [there, came, went, left, gone] = sumOf(accountOf(sample, newest)).map((part) =>
      number((part.figure.split('±')[0] ?? '').replace('g', '')),
    );
    expect(Math.abs((there ?? 0) + (came ?? 0) - (went ?? 0) - (left ?? 0) - (gone ?? 0))).toBeLessThan(2);
  });

  test('tells both questions, and where the second has no answer says why in the same place', () => {
    const late = usualAnswer(sample, accountOf(sample, newest));
    const first = usualAnswer(sample, accountOf(sample, whole));
    expect([first.level, first.rows]).toEqual([null, []]);
    expect(first.text).toContain('not computable');
    for (const { text } of [late, ...(late.level === null ? [] : [late])]) expect(text.length).toBeGreaterThan(20);
    if (late.level !== null) expect(late.text).toContain('Usual is not acceptable');
  });

  test('is drawn only where something is uncertain', () => {
    expect(scaleOf(accountOf(readBook([]), whole), null)).toBeNull();
    const account = accountOf(sample, newest);
    expect(scaleOf(account, null)?.detectableUg).toBeCloseTo(3.289707254 * uOf(account.unaccounted), 3);
  });

  test('shows the largest doubts with what would cut them, and what is left together: the shares make one variance', () => {
    const { rows, rest } = doubtRows(sample, accountOf(sample, newest).unaccounted);
    const percent = (text: string) => number(text.replace('%', ''));
    const told = rows.map((r) => percent(r.share));
    expect(told).toEqual(told.toSorted((a, b) => b - a));
    expect(Math.abs(told.reduce((s, p) => s + p, 0) + (rest ? percent(rest.share) : 0) - 100)).toBeLessThan(0.6);
    for (const row of rows) expect(row.cut.length).toBeGreaterThan(10);
  });
});

test('the counted periods are offered newest first, each by its two counts and whether it is closed', () => {
  const choices = countedChoices(sample);
  expect(choices.map((c) => c.key)).toEqual(
    periodsOf(sample)
      .map((p) => p.key)
      .toReversed(),
  );
  for (const { label } of choices)
    expect(label).toMatch(
      /^(beginning of the book|count of \d+ \w+ \d{4}) → count of \d+ \w+ \d{4} \((not closed|closed, version \d+)\)$/,
    );
});

describe('the movements', () => {
  test('are told newest first, a page at a time, and every one of them once', () => {
    const first = movementPage(sample, '', 1);
    expect(first.pages).toBe(Math.ceil(first.count / perPage));
    const all = Array.from({ length: first.pages }, (_, i) => movementPage(sample, '', i + 1).rows).flat();
    expect(all).toHaveLength(first.count);
    expect(movementPage(sample, '', 999).number).toBe(first.pages);
    expect(first.rows[0]?.day.replace(/\u00a0/g, ' ')).toBe('30 June 2026');
  });

  test('of a place are those that came to it or left it, in exact grams', () => {
    const place = 'circuit:trap';
    const { rows } = movementPage(sample, place, 1);
    expect(rows.every((m) => m.fromHref === movementsHref(place) || m.toHref === movementsHref(place))).toBe(true);
    const drained = rows.find((m) => m.entry.startsWith('Return'));
    expect([drained?.grams, drained?.to]).toEqual(['136.4', 'Working bottle']);
    expect(placesMoved(sample).map((p) => p.value)).toContain(place);
    expect(movementPage(sample, 'vessel:nowhere', 1)).toMatchObject({ rows: [], count: 0, number: 1 });
  });
});

test('of very many places those that last are offered, and the one that is looked at', () => {
  const book = BookMaker.site();
  const spans = Array.from({ length: 210 }, (_, i) => book.lots(`clean-up ${i}`, ['10'], book.bench)[0] ?? '');
  const place = `lot:${spans[7]}`;
  const offered = placesMoved(readBook(book.entries), place).map((p) => p.value);
  expect(offered.filter((p) => p.startsWith('lot:'))).toEqual([place]);
  expect(offered).toContain('circuit:plates');
});

describe('the yields', () => {
  test('are gross grams a tonne, or in words why there is none', () => {
    const rows = yieldRows(sample);
    expect(rows).toHaveLength(sample.current.of('clean-up').length);
    for (const row of rows) {
      if (row.perTonne === '') expect(row.note, row.name).not.toBe('');
      else expect(number(row.perTonne)).toBeCloseTo(number(row.bar) / number(row.ore), 1);
    }
    expect(rows.some((row) => row.note.startsWith('none: no ore'))).toBe(true);
    expect(rows.every((row) => row.lines.length > 1)).toBe(true);
  });
});

describe('the address', () => {
  const read = (href: string) => shownFrom(partsOf(href).slice(1));

  test('keeps the period, the place and the page', () => {
    const half = { page: 'account', chosen: true, from: '2025-07-01', to: '' };
    expect(read(periodHref({ from: '2025-07-01', to: '' }))).toEqual(half);
    expect(read(periodHref({ from: '', to: '' }))).toEqual({ page: 'account', chosen: true, from: '', to: '' });
    const moments = { from: '2026-05-03T12:00+10:00', to: '2026-06-02T17:30+10:00' };
    expect(read(periodHref(moments))).toEqual({ page: 'account', chosen: true, ...moments });
    expect(read(movementsHref('lot:clean-up-one/1a', 3))).toEqual({ page: 'movements', place: 'lot:clean-up-one/1a', number: 3 });
    expect(read(movementsHref())).toEqual({ page: 'movements', place: '', number: 1 });
    expect(read('#/mercury/movements/page=-2')).toMatchObject({ number: 1 });
  });

  test('of the room alone is its front page; an account nobody chose a period for says so, and links from before lead to the account', () => {
    expect(read('#/mercury')).toEqual({ page: 'room' });
    expect(read('#/mercury/account')).toEqual({ page: 'account', chosen: false, from: '', to: '' });
    expect(read('#/mercury/from=2025-07-01/to=2025-12-31')).toEqual({
      page: 'account',
      chosen: true,
      from: '2025-07-01',
      to: '2025-12-31',
    });
    expect(pagesOfRoom.map((page) => [page.key, pageOf(partsOf(page.href).slice(1), read(page.href))])).toEqual(
      pagesOfRoom.map((page) => [page.key, page.key]),
    );
  });

  test('of a period that begins at a count holds nothing of that count', () => {
    const [, , second] = periodsOf(sample);
    if (!second?.period.from) throw new Error('the sample has three counted periods');
    expect(periodOf(daysOf(second.period), sample)).toEqual({ ok: true, value: second.period });
    expect(periodOf({ from: '2025-07-01', to: '' }, sample)).toEqual({ ok: true, value: { from: '2025-07-01', to: null } });
  });

  test('that asks for no period there can be says so, and guesses none', () => {
    expect(periodOf({ from: '2025-02-30', to: '' })).toMatchObject({
      ok: false,
      problems: [{ code: 'not-a-day', field: 'from' }],
    });
    expect(periodOf({ from: '2025-03-02', to: '2025-03-01' })).toMatchObject({
      ok: false,
      problems: [{ code: 'period-reversed' }],
    });
    expect(periodOf({ from: '', to: dayOf('2025-03-01T10:00+10:00') })).toEqual({
      ok: true,
      value: { from: null, to: '2025-03-01' },
    });
  });
});
