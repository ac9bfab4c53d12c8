/** What a run comes to while it is typed must be what the book makes of it once it is kept: the page never shows another figure first. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readBook, runOf } from '../../app/core/book/book.ts';
import { type Weighed, weighedFrom } from '../../app/core/book/weights.ts';
import { toText } from '../../app/core/decimal.ts';
import { uOf } from '../../app/core/measured.ts';
import type { Weight } from '../../app/core/shapes.ts';
import { closingOf, groundOf } from '../../app/screens/retort/closing.ts';
import { BookMaker, scaled, stated } from '../core/book-maker.ts';

type Book = ReturnType<typeof BookMaker.site>;

function charged(book: Book, name: string, grams: string): string {
  const [lot = ''] = book.lots(name, [grams], book.bench);
  return book.add(`charge ${name}`, 'charge', {
    retort: book.pot,
    rows: [{ take: 'whole', key: 'l1', lot, weight: scaled(grams, book.bench) }],
  });
}

/** A typed weight, worked out as the page does it. */
const typed = (book: Book, weight: Weight, path: string): Weighed =>
  weighedFrom(weight, { entry: 'typed', path, at: '2026-03-02T08:00+13:00' }, readBook(book.entries).registers);

/** Keeps the firing and hands back what the book makes of it. */
function kept(book: Book, name: string, sponges: readonly (readonly [string, Weight])[], mercury: Weight, water?: Weight) {
  book.add(name, 'firing', {
    heats: sponges.map(([charge, sponge]) => ({ charge, sponge })),
    mercury: { weight: mercury, vessel: book.bottle, state: 'dry' },
    ...(water ? { water } : {}),
  });
  const run = runOf(readBook(book.entries), sponges[0]?.[0] ?? '');
  if (!run?.last?.gap) throw new Error('the run is closed');
  return run.last;
}

test('the figures as typed are the figures as kept, for any weights, with and without water', () => {
  const tenths = (least: number, most: number) => fc.integer({ min: least, max: most }).map((n) => (n / 10).toFixed(1));
  fc.assert(
    fc.property(
      tenths(5000, 9000),
      tenths(1000, 4900),
      tenths(10, 9000),
      fc.option(tenths(0, 300)),
      (charge, sponge, mercury, water) => {
        const book = BookMaker.site();
        const id = charged(book, 'may', charge);
        const run = runOf(readBook(book.entries), id);
        const ground = groundOf(run ? [run] : [], [id]);
        if (!ground) throw new Error('there is a run');
        const weights = { sponge: scaled(sponge, book.bench), mercury: scaled(mercury, book.bench) };
        const wet = water === null ? null : scaled(water, book.bench);
        const live = closingOf(ground, {
          sponges: [typed(book, weights.sponge, 'sponge')],
          mercury: typed(book, weights.mercury, 'mercury'),
          water: wet ? typed(book, wet, 'water') : null,
        });
        const last = kept(book, 'firing may', [[id, weights.sponge]], weights.mercury, wet ?? undefined);
        expect(live?.figures).toEqual(last.figures);
        expect(toText(live?.gap.grams ?? { digits: 0n, places: 0 })).toBe(toText(last.gap?.grams ?? { digits: 1n, places: 0 }));
        expect(uOf(live?.gap.net ?? { ug: 0, parts: new Map() })).toBeCloseTo(
          uOf(last.gap?.net ?? { ug: 0, parts: new Map() }),
          6,
        );
      },
    ),
    { numRuns: 60 },
  );
});

test('nothing is shown until sponge and mercury are both in', () => {
  const book = BookMaker.site();
  const id = charged(book, 'june', '600.0');
  const run = runOf(readBook(book.entries), id);
  const ground = groundOf(run ? [run] : [], [id]);
  if (!ground) throw new Error('there is a run');
  const sponge = typed(book, scaled('230.0', book.bench), 'sponge');
  const mercury = typed(book, scaled('361.0', book.bench), 'mercury');
  expect(closingOf(ground, { sponges: [sponge], mercury: null, water: null })).toBeNull();
  expect(closingOf(ground, { sponges: [null], mercury, water: null })).toBeNull();
  expect(closingOf(ground, { sponges: [sponge], mercury, water: null })?.figures.findings).toContain('water-not-known');
});

test('a re-fire counts its own sponge, and the mercury of both firings', () => {
  const book = BookMaker.site();
  const id = charged(book, 'july', '800.0');
  kept(book, 'firing july', [[id, stated('380', '0.1')]], stated('415', '0.2'), stated('0', '0'));
  const run = runOf(readBook(book.entries), id);
  const ground = groundOf(run ? [run] : [], [id]);
  if (!ground) throw new Error('there is a run');
  const live = closingOf(ground, {
    sponges: [typed(book, stated('305', '0.1'), 'sponge')],
    mercury: typed(book, stated('73', '0.2'), 'mercury'),
    water: typed(book, stated('0', '0'), 'water'),
  });
  const last = kept(book, 'refire july', [[id, stated('305', '0.1')]], stated('73', '0.2'), stated('0', '0'));
  expect(live?.figures).toEqual(last.figures);
  expect(toText(live?.gap.grams ?? { digits: 0n, places: 0 })).toBe('7.0');
});

test('charges caught together are judged as one group while they are typed, as they are once kept', () => {
  const book = BookMaker.site();
  const one = charged(book, 'august', '500.0');
  const two = charged(book, 'september', '300.0');
  const before = readBook(book.entries);
  const runs = [one, two].map((id) => runOf(before, id)).filter((run) => run !== undefined);
  const ground = groundOf(runs, [one, two]);
  if (!ground) throw new Error('there are runs');
  const sponges = [stated('190', '0.1'), stated('114', '0.1')] as const;
  const live = closingOf(ground, {
    sponges: sponges.map((s, i) => typed(book, s, `heats[${i}].sponge`)),
    mercury: typed(book, stated('490', '0.2'), 'mercury'),
    water: null,
  });
  const last = kept(
    book,
    'firing of two',
    [
      [one, sponges[0]],
      [two, sponges[1]],
    ],
    stated('490', '0.2'),
  );
  expect(live?.figures).toEqual(last.figures);
  expect(live?.figures.gapOfCharge).toBeCloseTo(6 / 800, 9);
});
