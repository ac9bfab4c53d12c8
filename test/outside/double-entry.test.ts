/** Two accounting programs from outside balance the same movements and find the same in every place, to the microgram. */
import { describe, expect, test } from 'vitest';
import { accountOf } from '../../app/core/book/account.ts';
import { type Book, readBook } from '../../app/core/book/book.ts';
import { type Movement, stocksAt } from '../../app/core/book/movements/gathering.ts';
import { periodsOf } from '../../app/core/book/periods.ts';
import { circuitPlace, foundPlace, isStock, lossPlace, outside, placeKinds, vesselPlace } from '../../app/core/book/places.ts';
import type { Entry } from '../../app/core/entry.ts';
import { eighteenMonths } from '../../main/host/sample/eighteen-months.ts';
import { generated } from '../../main/host/sample/large.ts';
import { journalOf as linesOf } from '../../main/host/sample/write.ts';
import data from './data/mill-return.json' with { type: 'json' };
import { balanced, type Engine, engines, isHere, journalOf } from './double-entry.ts';
import { millReturn } from './mill-return-book.ts';

const told = (story: Parameters<typeof linesOf>[0]): readonly Entry[] =>
  linesOf(story)
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Entry);

/** What the book has in each place, as an outside program would print it. */
const ours = (movements: readonly Movement[], upTo: string | null): ReadonlyMap<string, bigint> =>
  new Map([...stocksAt(movements, upTo)].map(([place, { ug }]) => [place, BigInt(ug)] as const).filter(([, ug]) => ug !== 0n));

const books: readonly { name: string; least: number; read: () => Book }[] = [
  { name: 'the mill return', least: 15, read: () => readBook(millReturn().entries) },
  { name: 'eighteen months of the sample site', least: 150, read: () => readBook(told(eighteenMonths())) },
  { name: 'a generated book', least: 1500, read: () => readBook(told(generated(2000, 7))) },
];

/** A test that needs the program, and says aloud where it is not installed. */
const withEngine = (engine: Engine, rule: string, run: () => void) =>
  test(rule, ({ skip }) => {
    if (!isHere(engine)) {
      console.warn(`SKIPPED: ${engine.name} is not installed here, so nothing was held against it: ${rule}`);
      skip(`${engine.name} is not installed here`);
    }
    run();
  });

describe.each(engines)('$name', (engine) => {
  for (const { name, least, read } of books)
    withEngine(engine, `finds what the book finds in every place: ${name}`, () => {
      const { all } = read().movements;
      expect(all.length).toBeGreaterThan(least);
      const journal = journalOf(all);
      const theirs = balanced(engine, journal);
      expect(new Map([...theirs].sort())).toEqual(new Map([...ours(all, null)].sort()));
      expect([...theirs.values()].reduce((s, ug) => s + ug, 0n)).toBe(0n);
    });

  withEngine(engine, 'finds the same at the end of any day of the sample site', () => {
    const { all } = readBook(told(eighteenMonths())).movements;
    const journal = journalOf(all);
    const nextDay = (day: string) => new Date(Date.parse(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);
    const days = [...new Set(all.map((m) => m.at.slice(0, 10)))];
    for (const share of [0.1, 0.35, 0.6, 0.85]) {
      const day = days[Math.floor(days.length * share)] ?? '';
      expect(new Map([...balanced(engine, journal, nextDay(day))].sort())).toEqual(new Map([...ours(all, day)].sort()));
    }
  });

  withEngine(engine, 'adds up the closing stock and the losses of the mill return as the return has them', () => {
    const month = millReturn();
    const book = readBook(month.entries);
    const theirs = balanced(engine, journalOf(book.movements.all));
    const kindOf = (place: string) => place.split(':')[0] ?? '';
    const sum = (chosen: (place: string) => boolean) =>
      [...theirs].filter(([place]) => chosen(place)).reduce((s, [, ug]) => s + ug, 0n);
    const ounces = (ug: bigint) => Number(ug) / 1e6 / 31.1034768;
    expect(ounces(sum((place) => placeKinds.some((k) => k === kindOf(place) && k !== 'loss')))).toBeCloseTo(
      data.expected.closing,
      5,
    );
    expect(ounces(sum((place) => kindOf(place) === 'loss'))).toBeCloseTo(data.expected.loss, 5);
    expect(ounces(-(theirs.get(outside) ?? 0n))).toBeCloseTo(data.expected.opening, 5);
    expect(theirs.get(foundPlace)).toBeUndefined();
    const account = accountOf(book, { from: null, to: null });
    expect(sum((place) => kindOf(place) === 'loss')).toBe(BigInt(account.unaccounted.ug));
    expect(ounces(theirs.get(circuitPlace('plates')) ?? 0n)).toBeCloseTo(Number(data.closing.plates), 5);
    expect(ounces(theirs.get(vesselPlace(month.bottle)) ?? 0n)).toBeCloseTo(Number(data.closing.bottle), 5);
    expect(ounces(theirs.get(lossPlace('retort')) ?? 0n)).toBeCloseTo(data.expected.retort, 5);
  });

  withEngine(engine, 'finds the closing stock of every counted period, place by place, and what it does not account for', () => {
    const entries = told(eighteenMonths());
    const whole = (e: Entry): Entry => (e.kind === 'stock-take' ? { ...e, body: { ...e.body, scope: 'whole' } } : e);
    const book = readBook(entries.map(whole));
    const periods = periodsOf(book);
    expect(periods.length).toBeGreaterThan(1);
    let before = 0n;
    for (const { period } of periods) {
      const account = accountOf(book, period);
      // chosen by the machine's own clock, not by the code under test
      const upTo = book.movements.all.filter((m) => Date.parse(m.at) <= Date.parse(period.to ?? ''));
      const theirs = balanced(engine, journalOf(upTo));
      const stock = [...theirs].filter(([place]) => isStock(place));
      const closing = account.stocks.map(({ place, mercury }) => [place, BigInt(mercury.ug)] as const);
      expect(new Map(stock.sort())).toEqual(new Map(closing.filter(([, ug]) => ug !== 0n).sort()));
      expect(stock.reduce((s, [, ug]) => s + ug, 0n)).toBe(BigInt(account.closing.ug));
      // every way of losing it, up to here less up to the count before, is what the account misses or had released
      const lost = [...theirs].filter(([place]) => place.startsWith('loss:')).reduce((s, [, ug]) => s + ug, 0n);
      expect(lost - before).toBe(BigInt(account.unaccounted.ug + account.released.ug));
      before = lost;
    }
  });

  withEngine(engine, 'would find one microgram', () => {
    const { all } = readBook(millReturn().entries).movements;
    const [first, ...rest] = all;
    if (!first) throw new Error('there are movements');
    const moved = [{ ...first, mercury: { ...first.mercury, ug: first.mercury.ug + 1 } }, ...rest];
    expect(new Map([...balanced(engine, journalOf(moved))].sort())).not.toEqual(new Map([...ours(all, null)].sort()));
  });
});
