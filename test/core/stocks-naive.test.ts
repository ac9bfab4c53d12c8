/**
 * Every stock once more, the slow way: straight from the bodies of the sample site's entries, with plain numbers and no code of core, and held
 * against the stocks that the book works out.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { accountOf } from '../../app/core/book/account.ts';
import { readBook } from '../../app/core/book/book.ts';
import { stocksAt } from '../../app/core/book/movements/gathering.ts';
import { condenserPlace, isStock } from '../../app/core/book/places.ts';
import type { Entry } from '../../app/core/entry.ts';
import { eighteenMonths } from '../../main/host/sample/eighteen-months.ts';
import { generated } from '../../main/host/sample/large.ts';
import { journalOf } from '../../main/host/sample/write.ts';
import { BookMaker, scaled, stated } from './book-maker.ts';

// biome-ignore lint/suspicious/noExplicitAny: bodies are read here without the schemas on purpose
type Loose = Record<string, any>;

const entriesOf = (journal: string): Entry[] =>
  journal
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Entry);

/** Grams of a mass written with one unit. */
const grams = (text: string): number => {
  const [number = '', unit = ''] = text.split(' ');
  return Number(number) * ({ g: 1, kg: 1000, t: 1e6 }[unit] ?? Number.NaN);
};

const net = (weight: Loose): number =>
  weight.how === 'stated' ? grams(weight.mass) : grams(weight.gross) - (weight.tare === undefined ? 0 : grams(weight.tare));

/** What each vessel holds, walked through day by day; strained mercury counts without the gold in it (0.1 %). */
function vesselsBySteps(entries: readonly Entry[]): Map<string, number> {
  const held = new Map<string, number>();
  const strained = new Set<string>();
  const corrected = new Map(
    entries.filter((e) => e.kind === 'correction').map((e) => [String(e.body.corrects), e.body.body as Loose]),
  );
  const pour = (vessel: string, g: number) => held.set(vessel, (held.get(vessel) ?? 0) + g * (strained.has(vessel) ? 0.999 : 1));
  const ordered = [...entries].sort((a, b) => Date.parse(a.happened) - Date.parse(b.happened));
  for (const e of ordered) {
    const b: Loose = corrected.get(e.id) ?? (e.body as Loose);
    if (e.kind === 'vessel' && b.mercury === 'strained') strained.add(e.id);
    if (e.kind === 'receipt' || e.kind === 'return' || e.kind === 'found') pour(b.vessel, net(b.weight));
    if (e.kind === 'issue') {
      pour(b.vessel, -net(b.weight));
      if (b.into) pour(b.into, net(b.weight));
    }
    if (e.kind === 'clean-up' && b.strained) pour(b.strained.vessel, net(b.strained.weight));
    if (e.kind === 'firing' && b.mercury) pour(b.mercury.vessel, net(b.mercury.weight));
    if (e.kind === 'spill') {
      pour(b.vessel, -net(b.lost));
      pour(b.recovered.vessel, net(b.recovered.weight));
    }
    if (e.kind === 'waste') pour(b.drum, net(b.weight) * b.share.value);
    if (e.kind === 'transfer' && b.vessel && b.way === 'out') pour(b.vessel, -net(b.weight) * b.share.value);
    if (e.kind === 'retort' && b.brushed?.vessel) pour(b.brushed.vessel, net(b.brushed.got));
    if (e.kind === 'stock-take')
      for (const line of b.lines) {
        if (line.how === 'estimated' && line.place.startsWith('vessel:'))
          held.set(line.place.slice('vessel:'.length), Number(line.estimate.mass.replace(' g', '')));
        if (line.how === 'weighed')
          held.set(
            line.place.slice('vessel:'.length),
            net(line.weight) * (strained.has(line.place.slice('vessel:'.length)) ? 0.999 : 1),
          );
      }
  }
  return held;
}

test('every vessel of the sample site holds what a walk through its entries comes to', () => {
  const entries = entriesOf(journalOf(eighteenMonths()));
  const book = readBook(entries);
  const stocks = stocksAt(book.movements.all, null);
  const bySteps = vesselsBySteps(entries);
  expect(bySteps.size).toBe(5);
  for (const [vessel, g] of bySteps) expect((stocks.get(`vessel:${vessel}`)?.ug ?? Number.NaN) / 1e6, vessel).toBeCloseTo(g, 3);
});

test('what each fired charge held is the charge less what stayed behind, and what was caught is in the vessel', () => {
  const entries = entriesOf(journalOf(eighteenMonths()));
  const book = readBook(entries);
  for (const run of book.runs) {
    const bodies = run.charges.map((c) => c.reading.entry.body as Loose);
    const charged = bodies.flatMap((b) => b.rows as Loose[]).reduce((s, row) => s + net(row.weight), 0);
    const firings = [...new Set(run.charges.flatMap((c) => c.firings.map((f) => f.reading.entry)))];
    const last = new Map<string, number>();
    let caught = 0;
    let waterKnown = true;
    for (const f of firings.sort((a, b) => Date.parse(a.happened) - Date.parse(b.happened))) {
      for (const heat of f.body.heats as Loose[]) last.set(heat.charge, net(heat.sponge));
      caught += net((f.body.mercury as Loose).weight);
      waterKnown &&= f.body.water !== undefined;
    }
    const sponge = [...last.values()].reduce((s, g) => s + g, 0);
    const mercury = book.movements.runMercuries.get(run.id);
    const gap = charged - sponge - caught;
    // a wet charge whose water nobody weighed: what is missing may be water, and is no mercury of the charge
    const asMercury = waterKnown ? gap : 0;
    expect((mercury?.charged.ug ?? 0) / 1e6, run.id).toBeCloseTo(caught + asMercury + sponge * 0.0125, 3);
    expect((mercury?.gap.ug ?? 0) / 1e6, run.id).toBeCloseTo(asMercury, 3);
    expect((mercury?.waterOrMercuryUg ?? 0) / 1e6, run.id).toBeCloseTo(waterKnown ? 0 : gap, 3);
  }
});

describe('a generated book', () => {
  const books = fc.record({ seed: fc.integer({ min: 1, max: 1_000_000 }), entries: fc.integer({ min: 20, max: 90 }) });

  test('books every movement on both sides: all places together hold nothing', () => {
    fc.assert(
      fc.property(books, ({ seed, entries }) => {
        const stocks = stocksAt(readBook(entriesOf(journalOf(generated(entries, seed)))).movements.all, null);
        expect([...stocks.values()].reduce((s, v) => s + v.ug, 0)).toBe(0);
      }),
      { numRuns: 40 },
    );
  });

  test('comes to the same stocks and account whatever the order of its lines, and whichever desks wrote them', () => {
    fc.assert(
      fc.property(books, fc.infiniteStream(fc.integer({ min: 0, max: 1e6 })), ({ seed, entries }, dice) => {
        const list = entriesOf(journalOf(generated(entries, seed)));
        const shuffled = list
          .map((e) => ({ e: { ...e, desk: `desk-${e.n % 3}` }, at: dice.next().value as number }))
          .sort((a, b) => a.at - b.at)
          .map(({ e }) => e);
        const view = (some: readonly Entry[]) => {
          const book = readBook(some);
          const account = accountOf(book, { from: null, to: null });
          return [
            [...stocksAt(book.movements.all, null)].map(([place, v]) => `${place} ${v.ug}`).sort(),
            account.unaccounted.ug,
            account.closing.ug,
          ];
        };
        expect(view(shuffled)).toEqual(view(list));
      }),
      { numRuns: 25 },
    );
  });

  test('closes: opening, receipts and finds less what went, what was lost and what is there leave nothing', () => {
    fc.assert(
      fc.property(books, ({ seed, entries }) => {
        const book = readBook(entriesOf(journalOf(generated(entries, seed))));
        const account = accountOf(book, { from: null, to: null });
        const lost = book.movements.all.reduce(
          (s, m) => s + (m.to.startsWith('loss:') ? m.mercury.ug : 0) - (m.from.startsWith('loss:') ? m.mercury.ug : 0),
          0,
        );
        const there = book.movements.all.reduce(
          (s, m) => s + (isStock(m.to) ? m.mercury.ug : 0) - (isStock(m.from) ? m.mercury.ug : 0),
          0,
        );
        expect(account.unaccounted.ug + account.released.ug).toBe(lost);
        expect(account.closing.ug).toBe(there);
      }),
      { numRuns: 40 },
    );
  });
});

test('what every condenser’s own book says it holds is what stands in it by the movements', () => {
  for (const entries of [entriesOf(journalOf(eighteenMonths())), entriesOf(journalOf(generated(400, 3)))]) {
    const book = readBook(entries);
    const stocks = stocksAt(book.movements.all, null);
    expect(book.condensers.size).toBeGreaterThan(0);
    for (const { retort, heldUg } of book.condensers.values()) expect(stocks.get(condenserPlace(retort))?.ug ?? 0).toBe(heldUg);
  }
});

test('the sample and a generated book are written with the same bytes every time', () => {
  expect(journalOf(eighteenMonths())).toBe(journalOf(eighteenMonths()));
  expect(journalOf(generated(60, 7))).toBe(journalOf(generated(60, 7)));
  expect(journalOf(generated(60, 8))).not.toBe(journalOf(generated(60, 7)));
});

test('the sample tells its story: a re-fire, a leak, a wet charge, wet mercury, two caught together, two corrections, a find', () => {
  const book = readBook(entriesOf(journalOf(eighteenMonths())));
  const findings = book.runs.map((run) => run.last?.figures?.findings ?? []);
  expect(book.runs).toHaveLength(8);
  expect(book.current.of('clean-up')).toHaveLength(14);
  expect(book.runs.filter((run) => !run.together && run.openings.length === 2)).toHaveLength(1);
  const short = findings.filter((f) => f.includes('short-of-mercury'));
  expect(short.map((f) => f.includes('water-not-known'))).toEqual([false, true]);
  expect(findings.filter((f) => f.includes('more-out-than-in'))).toHaveLength(1);
  expect(book.runs.filter((run) => run.together)).toHaveLength(1);
  expect(book.current.of('correction')).toHaveLength(2);
  expect(book.current.of('found')).toHaveLength(1);
});

test('a flask poured from by weight before its first weighing, recounted by plain sums: its figure was the supplier’s, and nothing is lost', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 1, max: 900 }), { maxLength: 12 }),
      fc.integer({ min: -400, max: 400 }),
      (draws, over) => {
        const book = BookMaker.site();
        const flask = book.add('flask', 'vessel', { label: 'Flask', use: 'flask', mercury: 'new' });
        book.add('bought', 'receipt', { vessel: flask, weight: stated('34473', '5'), way: 'bought', seal: 'S 7' });
        for (const [i, g] of draws.entries())
          book.add(`draw ${i}`, 'issue', { vessel: flask, to: 'plates', weight: scaled(String(g)) });
        const drawn = draws.reduce((s, g) => s + g, 0);
        const place = `vessel:${flask}`;
        const there = String(34473 - drawn + over);
        book.add('count', 'stock-take', { lines: [{ how: 'weighed', place, weight: scaled(there) }] });
        const read = readBook(book.entries);
        const stocks = stocksAt(read.movements.all, null);
        const account = accountOf(read, { from: null, to: null });
        expect((stocks.get(place)?.ug ?? 0) / 1e6).toBe(Number(there));
        expect((stocks.get('circuit:plates')?.ug ?? 0) / 1e6).toBe(drawn);
        expect([account.invoiced.ug / 1e6, account.unaccounted.ug]).toEqual([over, 0]);
      },
    ),
    { numRuns: 40 },
  );
});
