/**
 * Accounts of periods: counted ones and any others. Splitting changes no total, the order of entries changes nothing, and a second, naive reckoning
 * with plain numbers and errors of its own agrees with every account of the sample and of generated books.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Account, accountOf, type Period } from '../../app/core/book/account.ts';
import { type Book, readBook } from '../../app/core/book/book.ts';
import { inPeriod, isBefore } from '../../app/core/book/period.ts';
import { periodsOf } from '../../app/core/book/periods.ts';
import { unaccountedIn } from '../../app/core/book/unaccounted.ts';
import type { Entry } from '../../app/core/entry.ts';
import { total, uOf } from '../../app/core/measured.ts';
import { eighteenMonths } from '../../main/host/sample/eighteen-months.ts';
import { generated } from '../../main/host/sample/large.ts';
import { journalOf } from '../../main/host/sample/write.ts';
import { BookMaker, stated } from './book-maker.ts';

/** Every count of these books counts the whole, so that there are periods between them. */
const entriesOf = (journal: string): Entry[] =>
  journal
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Entry)
    .map((e) => (e.kind === 'stock-take' ? { ...e, body: { ...e.body, scope: 'whole' } } : e));

const sample = readBook(entriesOf(journalOf(eighteenMonths())));
const books = fc.record({ seed: fc.integer({ min: 1, max: 1_000_000 }), entries: fc.integer({ min: 60, max: 160 }) });

/** The generated entries with a count of the whole on the evening of every other day that has any: what it finds is never quite the book. */
function counted(list: readonly Entry[]): Entry[] {
  const bottle = String(list.find((e) => e.kind === 'receipt')?.body.vessel);
  const days = [...new Set(list.filter((e) => e.kind === 'issue').map((e) => e.happened.slice(0, 10)))].sort();
  const first = list[0] as Entry;
  const counts = days
    .filter((_, i) => i % 2 === 0)
    .map(
      (day, i): Entry => ({
        ...first,
        desk: 'desk-of-counts',
        n: i + 1,
        id: `count-of-${day}`,
        kind: 'stock-take',
        happened: `${day}T23:50+00:00`,
        written: `${day}T23:55+00:00`,
        body: {
          scope: 'whole',
          lines: [
            { how: 'weighed', place: `vessel:${bottle}`, weight: { how: 'stated', mass: `${29_900 - i * 71} g`, u: '3 g' } },
            {
              how: 'estimated',
              place: 'circuit:plates',
              estimate: { mass: `${40 + i * 3} g`, method: 'by area', sharedU: 0.1, ownU: 0.05 },
            },
          ],
        },
      }),
    );
  return [...list, ...counts];
}
const generatedWith = (entries: number, seed: number): Entry[] => counted(entriesOf(journalOf(generated(entries, seed))));
const bookFrom = ({ seed, entries }: { seed: number; entries: number }): Book => readBook(generatedWith(entries, seed));
const flows = ['receipts', 'removals', 'found', 'released', 'unaccounted'] as const;
const sums = (accounts: readonly Account[]) => flows.map((name) => total(accounts.map((a) => a[name])));

/** Periods between every two days of entries on the book, so that the edges fall where something happened. */
const daysOf = (book: Book): string[] => [...new Set(book.entries.map((e) => e.happened.slice(0, 10)))].sort();

test('a period between counts begins after its first count and holds its last: neighbours share no moment and leave none out', () => {
  const period: Period = { from: '2026-03-01T10:00+13:00', to: '2026-04-01T10:00+13:00', after: true };
  const next: Period = { from: '2026-04-01T10:00+13:00', to: null, after: true };
  for (const [at, inside] of [
    ['2026-03-01T10:00+13:00', false],
    ['2026-02-28T22:01+01:00', true],
    ['2026-04-01T10:00+13:00', true],
    ['2026-04-01T10:01+13:00', false],
  ] as const) {
    expect(inPeriod(at, period), at).toBe(inside);
    if (!isBefore(at, period)) expect(inPeriod(at, next), at).toBe(!inside);
  }
});

describe('splitting a period', () => {
  const holds = (book: Book, periods: readonly Period[], whole: Period) => {
    const parts = sums(periods.map((p) => accountOf(book, p)));
    const all = sums([accountOf(book, whole)]);
    expect(parts.map((v) => v.ug)).toEqual(all.map((v) => v.ug));
    for (const [i, v] of parts.entries()) expect(uOf(v)).toBeCloseTo(uOf(all[i] ?? v), 0);
  };

  test('changes no total, at the counts of the sample', () => {
    const periods = periodsOf(sample).map((p) => p.period);
    expect(periods.length).toBeGreaterThan(2);
    holds(sample, periods, { from: null, to: periods.at(-1)?.to ?? null });
    expect(unaccountedIn(sample, periods).map((v) => v.ug)).toEqual(periods.map((p) => accountOf(sample, p).unaccounted.ug));
  });

  test('changes no total, at any day of any book', () => {
    fc.assert(
      fc.property(books, fc.nat(), (made, at) => {
        const book = bookFrom(made);
        const days = daysOf(book);
        const day = days[at % days.length] ?? '';
        const next = new Date(Date.parse(day) + 86_400_000).toISOString().slice(0, 10);
        holds(
          book,
          [
            { from: null, to: day },
            { from: next, to: null },
          ],
          { from: null, to: null },
        );
      }),
      { numRuns: 20 },
    );
  });
});

test('the order in which entries were written up changes no account of a period and none of its uncertainty', () => {
  fc.assert(
    fc.property(books, fc.infiniteStream(fc.integer({ min: 0, max: 1e6 })), ({ seed, entries }, dice) => {
      const list = generatedWith(entries, seed);
      const shuffled = list.map((e) => ({ e, at: dice.next().value as number })).sort((a, b) => a.at - b.at);
      const view = (some: readonly Entry[]) => {
        const book = readBook(some);
        return periodsOf(book).map((p) => {
          const { unaccounted, opening, closing } = accountOf(book, p.period);
          return [p.key, unaccounted.ug, opening.ug, closing.ug, (uOf(unaccounted) / 1e6).toFixed(5)];
        });
      };
      expect(view(shuffled.map(({ e }) => e))).toEqual(view(list));
    }),
    { numRuns: 15 },
  );
});

/** The slow way: two stocks walked place by place with plain numbers, flows summed by hand, and every error kept by name in a plain object. */
function naive(book: Book, period: Period) {
  const started = new Set(
    book.entries.filter((e) => e.kind === 'stock-take' || e.kind === 'retort' || e.body.way === 'already-here').map((e) => e.id),
  );
  const sum = { opening: 0, receipts: 0, removals: 0, found: 0, released: 0, closing: 0 };
  const errors: Record<string, number> = {};
  const stands = (place: string) => !/^(outside|found|loss:)/.test(place);
  // what an error does to the unaccounted: it comes in with opening, receipts and finds, and goes out with the rest
  const book1 = (line: keyof typeof sum, sign: 1 | -1, m: Book['movements']['all'][number]) => {
    sum[line] += sign * m.mercury.ug;
    const into = line === 'opening' || line === 'receipts' || line === 'found' ? 1 : -1;
    for (const [source, u] of m.mercury.parts) errors[source] = (errors[source] ?? 0) + into * sign * u;
  };
  const time = (at: string) => Date.parse(at);
  for (const m of book.movements.all) {
    const day = m.at.slice(0, 10);
    const early =
      period.from !== null &&
      (period.from.length === 10
        ? day < period.from
        : period.after
          ? time(m.at) <= time(period.from)
          : time(m.at) < time(period.from));
    const late = period.to !== null && (period.to.length === 10 ? day > period.to : time(m.at) > time(period.to));
    if (late) continue;
    if (stands(m.to)) book1('closing', 1, m);
    if (stands(m.from)) book1('closing', -1, m);
    if (early) {
      if (stands(m.to)) book1('opening', 1, m);
      if (stands(m.from)) book1('opening', -1, m);
      continue;
    }
    if (m.from === 'outside') book1(started.has(m.entry) && m.basis !== 'invoice-against-weighed' ? 'opening' : 'receipts', 1, m);
    if (m.to === 'outside') book1('removals', 1, m);
    if (m.from === 'found') book1('found', 1, m);
    if (m.to === 'loss:spill') book1('released', 1, m);
    if (m.from === 'loss:spill') book1('released', -1, m);
  }
  const unaccounted = sum.opening + sum.receipts + sum.found - sum.removals - sum.released - sum.closing;
  return { ...sum, unaccounted, u: Math.sqrt(Object.values(errors).reduce((s, e) => s + e * e, 0)) };
}

describe('a naive reckoning agrees', () => {
  const agrees = (book: Book, period: Period) => {
    const account = accountOf(book, period);
    const { u, ...plain } = naive(book, period);
    for (const [name, ug] of Object.entries(plain)) expect(account[name as 'opening'].ug, name).toBe(ug);
    expect(Math.abs(uOf(account.unaccounted) - u)).toBeLessThan(1);
  };

  test('with every counted period of the sample, and with each of its months', () => {
    for (const { period } of periodsOf(sample)) agrees(sample, period);
    const months = [...new Set(daysOf(sample).map((day) => day.slice(0, 7)))];
    for (const month of months) agrees(sample, { from: `${month}-01`, to: `${month}-31` });
  });

  test('with every counted period and any days of generated books', () => {
    fc.assert(
      fc.property(books, fc.nat(), fc.nat(), (made, a, b) => {
        const book = bookFrom(made);
        const periods = periodsOf(book);
        expect(periods.length).toBeGreaterThan(0);
        for (const { period } of periods) agrees(book, period);
        const days = daysOf(book);
        const [from = '', to = ''] = [days[a % days.length] ?? '', days[b % days.length] ?? ''].sort();
        agrees(book, { from, to });
      }),
      { numRuns: 20 },
    );
  });
});

describe('reservations of the ends', () => {
  const made = () => {
    const book = BookMaker.site();
    const at = (day: string) => ({ happened: `2026-04-${day}T09:00+13:00` });
    const count = (name: string, day: string) =>
      book.add(
        name,
        'stock-take',
        { scope: 'whole', lines: [{ how: 'weighed', place: `vessel:${book.bottle}`, weight: stated('500', '0.1') }] },
        at(day),
      );
    book.add('here', 'receipt', { vessel: book.bottle, weight: stated('500', '0.1'), way: 'already-here' }, at('01'));
    count('first one', '02');
    book.add('into the pan', 'issue', { vessel: book.bottle, to: 'pan', weight: stated('10', '0.1') }, at('10'));
    book.add('out of it', 'return', { vessel: book.bottle, from: 'pan', weight: stated('10', '0.1') }, at('11'));
    count('second', '20');
    return readBook(book.entries);
  };

  test('none where a count stands there, or where nothing moved between the count and the day', () => {
    const book = made();
    for (const { period } of periodsOf(book)) expect(accountOf(book, period).uncounted).toEqual([]);
    expect(accountOf(book, { from: '2026-04-05', to: '2026-04-25' }).uncounted).toEqual([]);
    expect(accountOf(book, { from: null, to: null }).uncounted).toEqual([]);
  });

  test('named where mercury moved between the nearest counts and the day', () => {
    const book = made();
    expect(accountOf(book, { from: '2026-04-11', to: null }).uncounted).toEqual(['start']);
    expect(accountOf(book, { from: '2026-04-03', to: '2026-04-10' }).uncounted).toEqual(['end']);
  });
});

test('issues and returns cancel and stand in no sum', () => {
  const book = BookMaker.site();
  book.add('here', 'receipt', { vessel: book.bottle, weight: stated('500', '0.1'), way: 'already-here' });
  const before = accountOf(readBook(book.entries), { from: null, to: null });
  book.add('into the pan', 'issue', { vessel: book.bottle, to: 'pan', weight: stated('123.456', '5') });
  book.add('out of it', 'return', { vessel: book.bottle, from: 'pan', weight: stated('100.1', '4') });
  const after = accountOf(readBook(book.entries), { from: null, to: null });
  for (const name of ['opening', ...flows, 'closing'] as const) expect(after[name].ug, name).toBe(before[name].ug);
  expect(uOf(after.unaccounted)).toBe(uOf(before.unaccounted));
});

test('sweepings sent away without a word on what they count as are handed over, bounded as lost, and asked about first', () => {
  const sent = (counts: 'disposal' | 'loss' | undefined) => {
    const book = BookMaker.site();
    const drum = book.add('drum one', 'vessel', { label: 'Drum', use: 'drum' });
    book.add('here', 'receipt', { vessel: drum, weight: stated('100', '0'), way: 'already-here' });
    book.add('sent', 'transfer', {
      way: 'out',
      what: 'waste',
      party: 'Refiner',
      vessel: drum,
      weight: stated('320', '0'),
      share: { value: 0.1, u: 0.01 },
      ...(counts === undefined ? {} : { counts }),
    });
    const account = accountOf(readBook(book.entries), { from: null, to: null });
    const path = account.paths.find((p) => p.path === 'sent-away');
    const asked = account.reservations.some((r) => r.code === 'loss-or-disposal');
    return [account.removals.ug / 1e6, account.unaccounted.ug / 1e6, (path?.lowUg ?? 0) / 1e6, (path?.highUg ?? 0) / 1e6, asked];
  };
  expect(sent(undefined)).toEqual([32, 0, 0, 32, true]);
  expect(sent('disposal')).toEqual([32, 0, 0, 0, false]);
  expect(sent('loss')).toEqual([0, 32, 32, 32, false]);
});
