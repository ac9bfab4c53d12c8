/** The flow drawing: to one scale, from left to right, no label on another; the table and what is copied say the same as the bands. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Book, readBook } from '../../app/core/book/book.ts';
import { flowOf } from '../../app/core/book/flow.ts';
import type { Entry } from '../../app/core/entry.ts';
import type { Box } from '../../app/drawings/flow-labels.ts';
import { type FlowLayout, type FlowRun, layFlow, leastWidth } from '../../app/drawings/flow-layout.ts';
import { flowSvg } from '../../app/drawings/flow-svg.ts';
import { csvText } from '../../app/papers/csv/cells.ts';
import { bandHref, shownFrom } from '../../app/screens/mercury/address.ts';
import { flowCsv, flowRows } from '../../app/screens/mercury/flow/rows.ts';
import { movementPage } from '../../app/screens/mercury/movements.ts';
import { partsOf } from '../../app/screens/shared/places.ts';
import { drawnFlow, flowWords, stayedSentence } from '../../app/words/flow.ts';
import { eighteenMonths } from '../../main/host/sample/eighteen-months.ts';
import { journalOf } from '../../main/host/sample/write.ts';

const sample: Book = readBook(
  journalOf(eighteenMonths())
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Entry),
);
const days = { from: '2025-07-01', to: '2025-12-31' };
const flow = flowOf(sample, days);

const place = (id: number) => ({ id: `p${id}`, name: `Place ${id} ${'x'.repeat(id % 9)}`, figure: `${id * 1000} ± 3 g` });
/** Places and bands that only run to a place of a higher number. */
const flows = fc
  .array(fc.record({ a: fc.nat(13), b: fc.nat(13), amount: fc.integer({ min: 1, max: 90_000 }) }), {
    minLength: 1,
    maxLength: 26,
  })
  .map((list) => {
    const runs = new Map<string, FlowRun>();
    for (const { a, b, amount } of list) {
      const [from, to] = a < b ? [a, b] : [b, a];
      if (from !== to) runs.set(`${from}>${to}`, { id: `${from}>${to}`, from: `p${from}`, to: `p${to}`, amount, tone: 'plain' });
    }
    return { places: Array.from({ length: 14 }, (_, i) => place(i)), runs: [...runs.values()] };
  });

const ug = (amount: number) => ({ ug: amount, parts: new Map() });
const band = (from: string, to: string, amount: number) => ({
  id: `${from}>${to}`,
  from,
  to,
  mercury: ug(amount),
  movements: [],
  balance: false,
});
const stayed = [
  {
    kind: 'vessels',
    mercury: ug(12_500e6),
    bands: ['left.opening.vessels>through.vessels', 'through.vessels>right.closing.vessels'],
  },
] as const;

const overlaps = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** The room about a path of ours: a band's curves stay between its ends' heights, a line has upright and level parts alone. */
function aboutPath(path: string): Box {
  let [x, y] = [0, 0];
  const points: [number, number][] = [];
  for (const [, letter, rest = ''] of path.matchAll(/([MLHVC])([^MLHVCZ]*)/g)) {
    const numbers = rest.split(/[ ,]/).filter(Boolean).map(Number);
    if (letter === 'H') x = numbers[0] ?? 0;
    else if (letter === 'V') y = numbers[0] ?? 0;
    else [x = 0, y = 0] = numbers.slice(-2);
    points.push([x, y]);
  }
  const [xs, ys] = [points.map(([at]) => at), points.map(([, at]) => at)];
  const [left, upper] = [Math.min(...xs), Math.min(...ys)];
  return { x: left, y: upper, width: Math.max(...xs) - left, height: Math.max(...ys) - upper };
}

describe('the layout', () => {
  test('draws every band to one scale, or at the least width and marked', () => {
    fc.assert(
      fc.property(flows, ({ places, runs }) => {
        const { runs: laid, amountPerUnit } = layFlow(places, runs, 1000);
        expect(laid).toHaveLength(runs.length);
        for (const run of laid) {
          const exact = run.amount / amountPerUnit;
          expect(run.thin).toBe(exact < leastWidth);
          expect(run.thickness).toBeCloseTo(Math.max(exact, leastWidth), 6);
        }
      }),
    );
  });

  test('sets every band from left to right, inside the drawing, and changes nothing it is given', () => {
    fc.assert(
      fc.property(flows, ({ places, runs }) => {
        const before = structuredClone({ places, runs });
        const laid = layFlow(places, runs, 1000);
        expect({ places, runs }).toEqual(before);
        const x = new Map(laid.places.map((p) => [p.id, p]));
        for (const run of laid.runs) expect((x.get(run.from)?.x ?? 0) < (x.get(run.to)?.x ?? 0), run.id).toBe(true);
        for (const p of laid.places) expect(p.y >= 0 && p.y + p.height <= laid.height + 1, p.id).toBe(true);
      }),
    );
  });

  test('lays no label on a band, a node or another label, runs no line through a label, and breaks a name without losing a word', () => {
    const check = ({ places, runs, width, height }: FlowLayout) => {
      for (const { name, label } of places) expect(label.name.join(' ')).toBe(name);
      const labels = places.map((p) => p.label);
      const bands = runs.map(({ path }) => aboutPath(path));
      for (const [i, a] of labels.entries()) {
        for (const b of [...labels.slice(i + 1), ...places, ...bands]) expect(overlaps(a, b), JSON.stringify([a, b])).toBe(false);
        for (const { leader, label } of places)
          if (leader !== null && label !== a) expect(overlaps(a, aboutPath(leader)), JSON.stringify([a, leader])).toBe(false);
        expect(a.x >= 0 && a.x + a.width <= width && a.y >= 0 && a.y + a.height <= height, JSON.stringify(a)).toBe(true);
      }
    };
    fc.assert(fc.property(flows, ({ places, runs }) => check(layFlow(places, runs, 1000))));
    for (const period of [days, { from: null, to: null }]) {
      const { places, runs } = drawnFlow(flowOf(sample, period));
      for (const width of [800, 1020, 1400]) check(layFlow(places, runs, width));
    }
  });

  test('has a bar of a round amount, as high as a band of that amount', () => {
    // two ends of 3 and 1 above one another, 2 × 42 + 200 = 284 high; less 42 between the two, 242 are 4, and of 1, 2, 5 and their tenths 0.5 is the most
    // that is not higher than 48
    const { amountPerUnit, scale, runs, height } = layFlow(
      [place(0), place(1), place(2)],
      [
        { id: 'a', from: 'p0', to: 'p1', amount: 3, tone: 'plain' },
        { id: 'b', from: 'p0', to: 'p2', amount: 1, tone: 'plain' },
      ],
      1000,
    );
    expect(amountPerUnit).toBeCloseTo(4 / 242, 9);
    expect(scale?.amount).toBe(0.5);
    expect(scale?.height).toBeCloseTo(30.25, 6);
    expect(runs.map(({ thickness }) => thickness)).toEqual([expect.closeTo(181.5, 6), expect.closeTo(60.5, 6)]);
    expect((scale?.y ?? 0) + (scale?.height ?? 0)).toBeLessThan(height);
    expect(flowWords.scale(500e6)).toBe('As high as this: 500\u00a0g');
    expect(flowWords.scale(20e3)).toBe('As high as this: 0.02\u00a0g');
  });

  test('is given no mercury that stayed where it was: it is taken out of the bands, told, and whole in the table', () => {
    const drawn = drawnFlow({
      nodes: [
        { id: 'left.opening.vessels', side: 'left', end: 'opening', of: 'vessels', below: false, mercury: ug(14_000e6) },
        { id: 'through.vessels', side: 'through', end: null, of: 'vessels', below: false, mercury: ug(14_000e6) },
        { id: 'through.circuit', side: 'through', end: null, of: 'circuit', below: false, mercury: ug(1_500e6) },
        { id: 'right.closing.vessels', side: 'right', end: 'closing', of: 'vessels', below: false, mercury: ug(12_500e6) },
      ],
      bands: [
        band('left.opening.vessels', 'through.vessels', 14_000e6),
        band('through.vessels', 'through.circuit', 1_500e6),
        band('through.vessels', 'right.closing.vessels', 12_500e6),
      ],
      stayed,
    });
    expect(drawn.runs.map(({ id, amount }) => [id, amount])).toEqual([
      ['left.opening.vessels>through.vessels', 1_500e6],
      ['through.vessels>through.circuit', 1_500e6],
    ]);
    expect(drawn.places.map(({ figure }) => figure)).toEqual([
      '1\u202f500.00 of 14\u202f000.00\u00a0g',
      '1\u202f500.00 of 14\u202f000.00\u00a0g',
      '1\u202f500.00\u00a0g',
    ]);
    expect(stayedSentence({ stayed })).toMatch(/^Not drawn: 12\u202f500\.00\u00a0g that stayed in working vessels\./);
  });

  test('of no bands is empty', () => {
    expect(layFlow([place(1)], [], 1000)).toMatchObject({ places: [], runs: [] });
  });
});

describe('the picture', () => {
  const { places, runs } = drawnFlow(flow);

  test('has every band and name as text, losses hatched, and no markup from a name', () => {
    const svg = flowSvg(layFlow(places, runs, 900), { title: 'x', font: 'SourceSans3', scale: flowWords.scale });
    expect(svg.match(/fill="url\(#loss\)"/g)).toHaveLength(runs.filter((r) => r.tone === 'loss').length);
    const drawnWords = [...svg.matchAll(/<text[^>]*>([^<]*)</g)].map(([, words]) => words).join(' ');
    for (const p of places) expect(drawnWords).toContain(`${p.name} ${p.figure}`);
    const hostile = flowSvg(
      layFlow(
        [
          { id: 'a', name: '<script>"&', figure: '' },
          { id: 'b', name: 'b', figure: '' },
        ],
        [{ id: 'r', from: 'a', to: 'b', amount: 1, tone: 'plain' }],
        900,
      ),
      { title: '<t>', font: '"x', scale: () => '<b>' },
    );
    expect(hostile).toContain('&lt;script&gt;&quot;&amp;');
    expect(hostile).not.toMatch(/<script|<t>|<b>|""x/);
  });
});

describe('the table', () => {
  const rows = flowRows(flow, days);

  test('has a row for every band, then for what stood still, and each leads to the movements it is the sum of', () => {
    expect(rows.map((r) => r.id)).toEqual([...flow.bands, ...flow.still].map((b) => b.id));
    expect(flow.still.length).toBeGreaterThan(0);
    for (const [i, band] of [...flow.bands, ...flow.still].entries()) {
      expect(shownFrom(partsOf(rows[i]?.href ?? '').slice(1))).toEqual({
        page: 'movements',
        place: '',
        number: 1,
        band: { id: band.id, ...days },
      });
      const shown = movementPage(sample, '', 1, band.movements);
      expect(shown.count, band.id).toBeLessThanOrEqual(band.movements.length);
      expect(shown.count, band.id).toBeGreaterThan(0);
    }
    expect(shownFrom(partsOf(bandHref('a>b', days, 3)).slice(1))).toMatchObject({ number: 3, band: { id: 'a>b' } });
  });

  test('is copied cell for cell, numbers as numbers, and no cell begins a formula', () => {
    const lines = flowCsv(rows).trimEnd().split('\n');
    expect(lines).toHaveLength(rows.length + 1);
    for (const [i, row] of rows.entries()) expect(lines[i + 1]).toContain(`"${row.from}","${row.to}",`);
    expect(lines[1]).toMatch(/^"At first: flasks","Flasks","\d+(\.\d+)?",/);
    const [hostile] = rows;
    if (!hostile) throw new Error('no row');
    const names = ['=1+1', '-2+3', '@x', '+1', '\ttab', 'plain "quoted"'];
    for (const name of names) {
      const cell = flowCsv([{ ...hostile, from: name }]).split('\n')[1] ?? '';
      // the papers' own writer of cells says what becomes of it
      const papers = csvText(['h'], [[name]]).split('\n')[1] ?? '';
      expect(cell.startsWith(`"${papers.replace(/^"|"$/g, '')}",`), name).toBe(true);
    }
  });
});
