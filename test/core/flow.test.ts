/** The flow of a period: mercury is neither made nor lost between its columns, nothing runs in a circle, and its ends are those of the account. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { accountOf, type Period } from '../../app/core/book/account.ts';
import { type Book, readBook } from '../../app/core/book/book.ts';
import { type Flow, flowKindOf, flowOf } from '../../app/core/book/flow.ts';
import { inPeriod } from '../../app/core/book/period.ts';
import type { Entry } from '../../app/core/entry.ts';
import { eighteenMonths } from '../../main/host/sample/eighteen-months.ts';
import { generated } from '../../main/host/sample/large.ts';
import { journalOf } from '../../main/host/sample/write.ts';
import { BookMaker, scaled, stated } from './book-maker.ts';

const bookOf = (journal: string): Book =>
  readBook(
    journal
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as Entry),
  );
const sample = bookOf(journalOf(eighteenMonths()));
const whole: Period = { from: null, to: null };

const stillUg = ({ still }: Flow): number => still.reduce((s, one) => s + one.mercury.ug, 0);

/** Micrograms at the ends of one sort, with what stands on the other side taken off. */
const atEnd = ({ nodes }: Flow, end: string, of?: (of: string) => boolean): number =>
  nodes.filter((n) => n.end === end && (of?.(n.of) ?? true)).reduce((s, n) => s + (n.below ? -n.mercury.ug : n.mercury.ug), 0);

/** Everything that must hold of any flow. */
function holds(book: Book, period: Period): void {
  const flow = flowOf(book, period);
  const account = accountOf(book, period);
  const column = new Map(flow.nodes.map((n) => [n.id, n]));
  // to scale: no band below nothing, each joining two nodes that are there, none twice
  expect(flow.bands.filter((b) => !(b.mercury.ug > 0))).toEqual([]);
  expect(new Set(flow.bands.map((b) => b.id)).size).toBe(flow.bands.length);
  for (const b of flow.bands) expect([column.has(b.from), column.has(b.to)], b.id).toEqual([true, true]);
  // inflow = outflow at every node within
  for (const n of flow.nodes) {
    const into = flow.bands.filter((b) => b.to === n.id).reduce((s, b) => s + b.mercury.ug, 0);
    const out = flow.bands.filter((b) => b.from === n.id).reduce((s, b) => s + b.mercury.ug, 0);
    if (n.side === 'through' || n.side === 'back') expect(into, n.id).toBe(out);
    if (n.side === 'left') expect([into, out], n.id).toEqual([0, n.mercury.ug]);
    if (n.side === 'right') expect([into, out], n.id).toEqual([n.mercury.ug, 0]);
  }
  // no circle: taking away whatever nothing runs into takes everything away
  let left = [...flow.bands];
  let ids = flow.nodes.map((n) => n.id);
  for (let step = 0; step <= flow.nodes.length && ids.length > 0; step += 1) {
    const free = new Set(ids.filter((id) => !left.some((b) => b.to === id)));
    left = left.filter((b) => !free.has(b.from));
    ids = ids.filter((id) => !free.has(id));
  }
  expect(ids).toEqual([]);
  // the ends, with what stood still, are the account's
  expect(atEnd(flow, 'opening') + stillUg(flow)).toBe(account.opening.ug);
  expect(atEnd(flow, 'receipts')).toBe(account.receipts.ug);
  expect(atEnd(flow, 'found')).toBe(account.found.ug);
  expect(atEnd(flow, 'removals')).toBe(account.removals.ug);
  expect(atEnd(flow, 'closing') + stillUg(flow)).toBe(account.closing.ug);
  // what stood still is a stock of the account, place for place, and no movement of the period but its entering touches it
  const stocks = new Map(account.stocks.map((line) => [line.place, line.mercury.ug]));
  for (const { places, mercury, kind } of flow.still) {
    expect(places.reduce((s, place) => s + (stocks.get(place) ?? Number.NaN), 0)).toBe(mercury.ug);
    for (const place of places) {
      expect(flowKindOf(book, place)).toBe(kind);
      const moved = book.movements.all.filter(
        (m) => (m.from === place) !== (m.to === place) && m.mercury.ug !== 0 && inPeriod(m.at, period) && m.from !== 'outside',
      );
      expect(moved, place).toEqual([]);
    }
  }
  expect(atEnd(flow, 'loss', (of) => of === 'spill')).toBe(account.released.ug);
  expect(atEnd(flow, 'loss', (of) => of !== 'spill')).toBe(account.unaccounted.ug);
  for (const { path, posted } of account.paths)
    expect(
      atEnd(flow, 'loss', (of) => of === path),
      path,
    ).toBe(posted.ug);
  const right = flow.nodes.filter((n) => n.side === 'right').reduce((s, n) => s + n.mercury.ug, 0);
  expect(flow.throughUg).toBe(right);
}

describe('the flow of a book', () => {
  test.each([
    ['whole', whole],
    ['half a year', { from: '2025-07-01', to: '2025-12-31' }],
    ['from a day on', { from: '2026-01-01', to: null }],
    ['up to a day', { from: null, to: '2025-09-30' }],
    ['before the book', { from: null, to: '2020-01-01' }],
  ] as const)('of the sample, %s, is whole, without a circle, and ends as the account does', (_, period) => {
    holds(sample, period);
  });

  test('is so for generated books and any period', () => {
    const day = fc.integer({ min: 0, max: 40 }).map((n) => new Date(Date.UTC(1990, 0, 1 + n)).toISOString().slice(0, 10));
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.integer({ min: 10, max: 80 }),
        fc.option(day),
        fc.option(day),
        (seed, entries, from, to) => {
          const period = from !== null && to !== null && to < from ? { from: to, to: from } : { from, to };
          holds(bookOf(journalOf(generated(entries, seed))), period);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('is so whatever is issued, returned, gathered, counted, spilled and sent away, below nothing too', () => {
    const grams = fc.integer({ min: 1, max: 900 }).map(String);
    const step = fc.record({ what: fc.integer({ min: 0, max: 8 }), g: grams, day: fc.integer({ min: 1, max: 28 }) });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 14 }), fc.integer({ min: 1, max: 28 }), (steps, first) => {
        const book = BookMaker.site();
        const flask = book.add('flask', 'vessel', { label: 'Flask', use: 'flask', mercury: 'new' });
        const drum = book.add('drum', 'vessel', { label: 'Drum', use: 'drum' });
        for (const [i, { what, g, day }] of steps.entries()) {
          const at = { happened: `2026-04-${String(day).padStart(2, '0')}T09:00+13:00` };
          const name = `step ${i}`;
          const { bench, bottle } = book;
          const weight = scaled(g, bench);
          if (what === 0) book.add(name, 'receipt', { vessel: flask, way: 'bought', weight: stated(g, '1') }, at);
          if (what === 1) book.add(name, 'issue', { vessel: flask, to: 'vessel', into: bottle, weight }, at);
          if (what === 2) book.add(name, 'issue', { vessel: bottle, to: 'plates', weight }, at);
          if (what === 3) book.add(name, 'return', { vessel: bottle, from: 'plates', weight }, at);
          if (what === 4) book.add(name, 'found', { vessel: bottle, what: 'mercury', where: 'Drain', weight }, at);
          if (what === 5) book.add(name, 'spill', { where: 'Bench', vessel: bottle, lost: weight, insideIssue: 'no' }, at);
          if (what === 6) book.add(name, 'waste', { what: 'Sweepings', drum, weight, share: { value: 0.2, u: 0.05 } }, at);
          if (what === 7) book.add(name, 'stock-take', { lines: [{ how: 'weighed', place: `vessel:${bottle}`, weight }] }, at);
          if (what === 8)
            book.add(
              name,
              'clean-up',
              { type: 'routine', lots: [{ key: '1', label: name, weight, state: 'squeezed', source: 'outside-plate' }] },
              at,
            );
        }
        const read = readBook(book.entries);
        holds(read, whole);
        holds(read, { from: `2026-04-${String(first).padStart(2, '0')}`, to: '2026-04-28' });
      }),
      { numRuns: 120 },
    );
  });
});

describe('what stood still', () => {
  test('is on no band and at no end, and is told with its places', () => {
    const book = BookMaker.site();
    const sealed = book.add('sealed', 'vessel', { label: 'Flask 1', use: 'flask', mercury: 'new', seal: 'S 1' });
    const opened = book.add('opened', 'vessel', { label: 'Flask 2', use: 'flask', mercury: 'new' });
    const at = (day: number) => ({ happened: `2026-04-0${day}T09:00+13:00` });
    for (const vessel of [sealed, opened])
      book.add(`stock ${vessel}`, 'receipt', { vessel, way: 'already-here', weight: stated('34500', '5') }, at(1));
    book.add('issue', 'issue', { vessel: opened, to: 'plates', weight: scaled('300', book.bench) }, at(3));
    const read = readBook(book.entries);
    for (const period of [whole, { from: '2026-04-02', to: '2026-04-09' }]) {
      holds(read, period);
      const flow = flowOf(read, period);
      expect(flow.still.map(({ id, places, mercury }) => [id, places, mercury.ug])).toEqual([
        ['still.flasks', [`vessel:${sealed}`], 34_500e6],
      ]);
      expect(flow.throughUg).toBe(34_500e6);
      expect(flow.bands.flatMap((b) => b.movements).some((m) => m.to === `vessel:${sealed}`)).toBe(false);
    }
  });

  test('is the flask again where it was filled from another before the period, and not in the period it was filled in', () => {
    const book = BookMaker.site();
    const flask = book.add('flask', 'vessel', { label: 'Flask', use: 'flask', mercury: 'new' });
    const other = book.add('other', 'vessel', { label: 'Other', use: 'flask', mercury: 'new' });
    const at = (day: number) => ({ happened: `2026-04-0${day}T09:00+13:00` });
    book.add('stock', 'receipt', { vessel: flask, way: 'bought', weight: stated('1000', '1') }, at(1));
    book.add('fill', 'issue', { vessel: flask, to: 'vessel', into: other, weight: scaled('400', book.bench) }, at(2));
    book.add('issue', 'issue', { vessel: flask, to: 'plates', weight: scaled('100', book.bench) }, at(4));
    const read = readBook(book.entries);
    holds(read, { from: '2026-04-03', to: null });
    expect(flowOf(read, { from: '2026-04-03', to: null }).still.map((s) => [s.places, s.mercury.ug])).toEqual([
      [[`vessel:${other}`], 400e6],
    ]);
    holds(read, whole);
    expect(flowOf(read, whole).still).toEqual([]);
  });

  test('leaves the sample a drawing of what moved: the sealed flasks are most of the stock and are not on it', () => {
    const flow = flowOf(sample, { from: '2026-01-01', to: null });
    expect(flow.still.find((s) => s.kind === 'flasks')?.places).toHaveLength(2);
    expect(stillUg(flow)).toBeGreaterThan(5 * flow.throughUg);
    expect(flow.nodes.some((n) => n.of === 'flasks')).toBe(false);
  });
});

describe('what stayed where other mercury moved', () => {
  const at = (day: number) => ({ happened: `2026-04-0${day}T09:00+13:00` });

  test('is the least that stood there at any moment, is named with its bands, and is in them', () => {
    const book = BookMaker.site();
    book.add('stock', 'receipt', { vessel: book.bottle, way: 'already-here', weight: stated('1000', '1') }, at(1));
    book.add('issue', 'issue', { vessel: book.bottle, to: 'plates', weight: scaled('300', book.bench) }, at(2));
    book.add('return', 'return', { vessel: book.bottle, from: 'plates', weight: scaled('120', book.bench) }, at(3));
    book.add('more', 'issue', { vessel: book.bottle, to: 'plates', weight: scaled('50', book.bench) }, at(4));
    const read = readBook(book.entries);
    for (const period of [whole, { from: '2026-04-02', to: '2026-04-04' }]) {
      holds(read, period);
      const flow = flowOf(read, period);
      // 1000, then 700, 820, 770: the least is 700; on the plates nothing stood at first
      expect(flow.stayed.map(({ kind, mercury, bands }) => [kind, mercury.ug, bands])).toEqual([
        ['vessels', 700e6, ['left.opening.vessels>through.vessels', 'through.vessels>right.closing.vessels']],
      ]);
      expect(flow.bands.find((b) => b.id === 'left.opening.vessels>through.vessels')?.mercury.ug).toBe(1000e6);
    }
  });

  test('is nothing where a place was emptied and filled again, and never more than any of its bands', () => {
    const book = BookMaker.site();
    book.add('stock', 'receipt', { vessel: book.bottle, way: 'already-here', weight: stated('1000', '1') }, at(1));
    book.add('issue', 'issue', { vessel: book.bottle, to: 'plates', weight: scaled('1000', book.bench) }, at(2));
    book.add('bought', 'receipt', { vessel: book.bottle, way: 'bought', weight: stated('900', '1') }, at(3));
    expect(flowOf(readBook(book.entries), whole).stayed).toEqual([]);
    for (const period of [whole, { from: '2025-07-01', to: '2025-12-31' }]) {
      const flow = flowOf(sample, period);
      expect(flow.stayed.length).toBeGreaterThan(0);
      for (const { mercury, bands } of flow.stayed)
        for (const id of bands) expect(flow.bands.find((b) => b.id === id)?.mercury.ug ?? 0).toBeGreaterThanOrEqual(mercury.ug);
    }
  });
});

describe('a band', () => {
  test('between kinds of place is the balance of what went and came back, with the movements of both', () => {
    const book = BookMaker.site();
    book.add('stock', 'receipt', { vessel: book.bottle, way: 'already-here', weight: stated('1000', '1') });
    book.add('issue', 'issue', { vessel: book.bottle, to: 'plates', weight: scaled('300', book.bench) });
    book.add('return', 'return', { vessel: book.bottle, from: 'plates', weight: scaled('120', book.bench) });
    const { bands } = flowOf(readBook(book.entries), whole);
    const issued = bands.find((b) => b.id === 'through.vessels>through.circuit');
    expect(issued?.mercury.ug).toBe(180e6);
    expect(issued?.movements.map((m) => m.entry)).toHaveLength(2);
    expect(bands.map((b) => b.id)).toEqual([
      'left.opening.vessels>through.vessels',
      'through.vessels>through.circuit',
      'through.vessels>right.closing.vessels',
      'through.circuit>right.closing.circuit',
    ]);
  });

  test('of mercury that had come back and went out again stands on both sides with the same amount', () => {
    const flow = flowOf(bookOf(journalOf(generated(40, 3))), { from: '1990-01-02', to: null });
    const round = flow.nodes.filter((n) => n.end === 'round');
    expect(round.filter((n) => n.side === 'left').map((n) => n.mercury.ug)).toEqual(
      round.filter((n) => n.side === 'right').map((n) => n.mercury.ug),
    );
    // a book that begins with little and turns it over
    const book = BookMaker.site();
    const at = (day: number) => ({ happened: `2026-04-0${day}T09:00+13:00` });
    book.add('stock', 'receipt', { vessel: book.bottle, way: 'already-here', weight: stated('100', '1') }, at(1));
    for (const day of [2, 4]) {
      book.add(`issue ${day}`, 'issue', { vessel: book.bottle, to: 'plates', weight: scaled('100', book.bench) }, at(day));
      const [lot = ''] = book.lots(`clean ${day}`, ['100'], book.bench);
      const charge = book.add(
        `charge ${day}`,
        'charge',
        { retort: book.pot, rows: [{ take: 'whole', key: '1', lot, weight: scaled('100', book.bench) }], dry: 'yes' },
        at(day + 1),
      );
      book.add(
        `firing ${day}`,
        'firing',
        {
          heats: [{ charge, sponge: scaled('5', book.bench) }],
          mercury: { weight: scaled('94', book.bench), vessel: book.bottle, state: 'dry' },
          water: scaled('0', book.bench),
        },
        at(day + 1),
      );
    }
    const read = readBook(book.entries);
    holds(read, whole);
    const turned = flowOf(read, whole).nodes.filter((n) => n.end === 'round');
    // 200 g went out of 100 g
    expect(turned.map((n) => [n.side, n.of, n.mercury.ug])).toEqual([
      ['left', 'vessels', 100e6],
      ['right', 'vessels', 100e6],
    ]);
  });

  test('of a place with more than the book says enters on the left', () => {
    const book = BookMaker.site();
    book.add('stock', 'receipt', { vessel: book.bottle, way: 'already-here', weight: stated('100', '1') });
    book.add('count', 'stock-take', {
      lines: [{ how: 'weighed', place: `vessel:${book.bottle}`, weight: scaled('130', book.bench) }],
    });
    const flow = flowOf(readBook(book.entries), whole);
    expect(flow.nodes.find((n) => n.end === 'loss')).toMatchObject({
      side: 'left',
      below: true,
      of: 'unaccounted',
      mercury: { ug: 30e6 },
    });
  });
});

test('a drum is waste, a flask stands apart from working vessels, and a way of losing is no place', () => {
  const kinds = new Set([...sample.movements.all].flatMap((m) => [flowKindOf(sample, m.from), flowKindOf(sample, m.to)]));
  expect(kinds.has('flasks') && kinds.has('vessels') && kinds.has('waste') && kinds.has(null)).toBe(true);
  expect(flowKindOf(sample, 'loss:retort')).toBeNull();
});
