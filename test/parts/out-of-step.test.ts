/** The list of what is out of step as it is shown, copied and printed; and the trace of an entry in words. */
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { accountOf } from '../../app/core/book/account.ts';
import { readBook } from '../../app/core/book/book.ts';
import { outOfStepOf } from '../../app/core/book/out-of-step.ts';
import { tracesOf } from '../../app/core/book/trace.ts';
import { mercuryAccount } from '../../app/papers/mercury-account.ts';
import { standsIn } from '../../app/screens/daybook/stands-in.ts';
import { accountRows, verdictOf } from '../../app/screens/mercury/account.ts';
import { csvOf, sectionsOf } from '../../app/screens/mercury/out-of-step/list.ts';
import { amountLines, weightLines } from '../../app/screens/mercury/trace/lines.ts';
import { BookMaker, scaled, stated } from '../core/book-maker.ts';
import { frameOf } from '../papers/site-of-runs.ts';
import { said } from '../papers/year.ts';

const at = '2026-06-01T12:00+13:00';
const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

/** A run with two corrections of its charge side by side, and a lot whose label begins like a formula. */
function site() {
  const book = BookMaker.site();
  book.add('stock', 'receipt', { vessel: book.bottle, way: 'already-here', weight: stated('1000', '0.1') });
  const [lot = ''] = book.lots('march', ['400'], book.bench);
  book.lots('=1+1, "old"', ['100'], book.bench);
  const body = (g: string) => ({ retort: book.pot, rows: [{ take: 'whole', key: '1', lot, weight: scaled(g, book.bench) }] });
  const charge = book.add('charge', 'charge', body('400') as never);
  const firing = book.add('firing', 'firing', {
    heats: [{ charge, sponge: scaled('152', book.bench) }],
    mercury: { weight: { ...scaled('659.00', book.bench), tare: '412.00 g' }, vessel: book.bottle },
    water: stated('0', '0.01'),
  });
  const one = book.add('correction one', 'correction', { corrects: charge, body: body('401.5'), why: 'misread' });
  const two = book.add(
    'correction two',
    'correction',
    { corrects: charge, body: body('399.0'), why: 'misread' },
    { desk: 'desk-two' },
  );
  return { book, charge, firing, one, two };
}

describe('the list', () => {
  test('stands in groups, each line a sentence that leads to its entry or thing', () => {
    const { book, charge } = site();
    const read = readBook(book.entries);
    const sections = sectionsOf(read, outOfStepOf(read, { at, lotDays: 30 }));
    expect(sections.map((s) => s.group)).toEqual(['contested', 'runs', 'lots']);
    const runs = sections.find((s) => s.group === 'runs');
    expect(runs?.lines.map((l) => l.href)).toEqual([`#/daybook/${charge}`, `#/daybook/${charge}`]);
    const [lot] = sections.find((s) => s.group === 'lots')?.lines ?? [];
    expect(plain(lot?.text ?? '')).toBe('“=1+1, "old" A”, 100.00 g, has lain in the safe for 92 days.');
  });

  test('shows what the book comes to under each of two corrections', () => {
    const { book, one, two } = site();
    const read = readBook(book.entries);
    const [contested] = sectionsOf(read, outOfStepOf(read, { at, lotDays: 30 }))[0]?.lines ?? [];
    const rows = contested?.under?.() ?? [];
    expect(rows.map((r) => [r.id, r.counts])).toEqual([
      [one, false],
      [two, true],
    ]);
    const charges = rows.map((r) => plain(r.cells.find((c) => c.label.startsWith('Charge'))?.text ?? ''));
    expect(charges[0]).toMatch(/^401\.5\d* ± /);
    expect(charges[1]).toMatch(/^399\.0\d* ± /);
  });

  test('copies as CSV: a row for each, quoted where it must be, and no cell that a spreadsheet would run', () => {
    const { book } = site();
    const read = readBook(book.entries);
    const items = outOfStepOf(read, { at, lotDays: 30 });
    const { data, errors } = Papa.parse<string[]>(csvOf(read, items).trimEnd());
    expect(errors).toEqual([]);
    expect(data.length).toBe(items.length + 1);
    expect(new Set(data.map((row) => row.length))).toEqual(new Set([6]));
    expect(data.flat().filter((cell) => /^[=+\-@]/.test(cell))).toEqual([]);
    expect(data.find((row) => row[1] === 'lot-old')?.[5]).toContain('“=1+1, "old" A”');
  });
});

describe('the account’s paper', () => {
  test('counts what is out of step after the reservations and lists it at the end, with both results of a contested entry', () => {
    const { book } = site();
    const text = said(mercuryAccount(readBook(book.entries), { from: null, to: null }, frameOf(book)));
    const [counts, account, list] = ['\nOut of step\n', '\nThe account\n', '\nOut of step, one by one\n'].map((t) =>
      text.indexOf(t),
    );
    expect(counts).toBeGreaterThan(0);
    expect(account).toBeGreaterThan(counts ?? 0);
    expect(list).toBeGreaterThan(account ?? 0);
    expect(text.slice(counts, account)).toMatch(/\nTwo corrections of one entry\n1\n/);
    expect(text.slice(counts, account)).toMatch(/\nRuns\n2\n/);
    const under = text.slice(text.indexOf('Under each correction of: '));
    expect(under).toMatch(/\nCharge of its run, g\n401\.5\d* ± [\d.]+ g\n399\.0\d* ± [\d.]+ g\n/);
  });

  test('of a period leaves out what began after it', () => {
    const { book } = site();
    book.add('late one', 'note', { text: 'x' }, { happened: '2026-05-01T09:00+13:00', written: '2026-05-20T09:00+13:00' });
    const paper = (to: string | null) => said(mercuryAccount(readBook(book.entries), { from: null, to }, frameOf(book)));
    expect(paper(null)).toContain('\nWritten late\n1\n');
    expect(paper('2026-04-30')).not.toContain('Written late');
  });
});

describe('the account’s figures', () => {
  test('open to the rule and its source, and every movement they name leads to its trace', () => {
    const { book } = site();
    const read = readBook(book.entries);
    const account = accountOf(read, { from: null, to: null });
    const rows = accountRows(read, account);
    const [z, detectable] = verdictOf(account).rows;
    const sources = [rows.at(-1)?.lines() ?? [], z?.lines ?? [], detectable?.lines ?? []];
    for (const lines of sources)
      expect(lines.some((l) => l.sort === 'source' && /\((read|from memory)\)$/.test(l.text))).toBe(true);
    const movements = rows.flatMap((row) => row.lines()).filter((l) => l.text.includes(' → '));
    expect(movements.length).toBeGreaterThan(1);
    for (const { href } of movements) {
      const entry = href?.replace('#/mercury/trace/', '') ?? '';
      expect([href, tracesOf(read, entry).length > 0]).toEqual([`#/mercury/trace/${entry}`, true]);
    }
  });
});

describe('a trace', () => {
  test('tells gross, tare, scale, certificate with its days and who entered it, each part of the uncertainty, and the methods', () => {
    const { book, firing } = site();
    const read = readBook(book.entries);
    const trace = tracesOf(read, firing).find((t) => t.movement.basis === 'weighed');
    const weight = trace?.weights.find((w) => w.path === 'mercury.weight');
    if (!trace || !weight) throw new Error('the mercury was weighed');
    const lines = weightLines(read, weight);
    const of = (sort: string) => lines.filter((l) => l.sort === sort).map((l) => plain(`${l.text} ${l.figure ?? ''}`).trim());
    expect(of('reading')).toEqual(['Gross 659.00 g', 'Tare 412.00 g']);
    expect(of('scale')).toEqual([
      'bench scale, reads to 0.01 g',
      'Entered in this state on 1 March 2026, by nobody named',
      'Certificate: U 0.03 g (k = 2) at 2 000 g',
      'made on 10 January 2026, next due on 10 January 2027',
    ]);
    expect(of('result')).toEqual([expect.stringMatching(/^Net, .* 247\.00\d* ± /)]);
    expect(of('source').join('\n')).toMatch(/F\.2\.2\.1 \(from memory\)[\s\S]*4\.3\.3 \(from memory\)/);
    const amount = amountLines(read, trace);
    expect(amount[0]?.text).toContain('gross − tare');
    expect(amount.at(-1)?.text).toContain('JCGM 100:2008, equation (13)');
    expect(amount.filter((l) => l.href !== undefined).length).toBeGreaterThan(1);
  });

  test('of an entry ends in links to every statement it touches', () => {
    const { book, charge, firing } = site();
    const groups = standsIn(readBook(book.entries), firing);
    expect(groups.map((g) => g.title)).toEqual([
      'Movements',
      'Movements of other entries that rest on it',
      'Runs',
      'Yields',
      'Papers',
    ]);
    const hrefs = groups.flatMap((g) => g.links.map((l) => l.href));
    expect(hrefs).toEqual(
      expect.arrayContaining([
        `#/retort/${charge}`,
        '#/papers/mercury-account',
        `#/papers/run-sheet/${charge}`,
        `#/mercury/trace/${firing}`,
      ]),
    );
  });
});
