/** `account`, `movements` and `export` against the contract: what they print, that the figures add up, and what they refuse. */
import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Papa from 'papaparse';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { lossPaths } from '../../app/core/book/places.ts';
import { kinds } from '../../app/core/kinds/index.ts';
import { BookMaker, stated } from '../core/book-maker.ts';
import returned from '../outside/data/mill-return.json' with { type: 'json' };
import { millReturn } from '../outside/mill-return-book.ts';
import { problemsIn } from './built.ts';
import { called, everything, refused } from './called.ts';
import { writeBook } from './written-book.ts';

const gramsPerOunce = 31.1034768;
let home: string;
let dir: string;

beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'account-'));
  dir = join(home, 'book');
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

const table = (text: string): string[][] => Papa.parse<string[]>(text.trimEnd()).data;

/** The account as JSON. */
async function account(...options: string[]) {
  const { code, out, err } = await called(['account', dir, '--json', ...options]);
  expect([code, err]).toEqual([0, '']);
  expect(out.trimEnd().split('\n')).toHaveLength(1);
  return JSON.parse(out);
}

/** A bottle filled at both ends of midnight and of the earth: 100 g, 20 g, 3 g. */
function midnight(): BookMaker {
  const book = BookMaker.site();
  const receive = (name: string, g: string, happened: string) =>
    book.add(name, 'receipt', { vessel: book.bottle, weight: stated(g, '0.01'), way: 'given' }, { happened });
  receive('first one', '100', '2026-03-31T23:59:59+13:00');
  receive('second', '20', '2026-04-01T00:00+13:00');
  // the same day on the wall, though a whole day later in time
  receive('third one', '3', '2026-03-31T22:00-11:00');
  return book;
}

describe('account', () => {
  it('has every member of the contract, in grams, and the month it was built with', async () => {
    const ends = writeBook(dir, millReturn().entries);
    const a = await account();
    for (const name of [
      'from to standing opening_g receipts_g removals_g closing_g found_g released_g unaccounted_g u_g z detectable_g',
      'loss_level excess_level ore_t per_tonne_g stocks paths reservations end_marks',
    ].flatMap((names) => names.split(' ')))
      expect(a).toHaveProperty(name);
    const { expected } = returned;
    expect(a.opening_g / gramsPerOunce).toBeCloseTo(expected.opening, 6);
    expect(a.closing_g / gramsPerOunce).toBeCloseTo(expected.closing, 6);
    expect(a.unaccounted_g / gramsPerOunce).toBeCloseTo(expected.loss, 6);
    expect(a.per_tonne_g).toBeCloseTo(expected.lossGPerTonne, 3);
    expect(a.ore_t).toBeCloseTo(520 * 1.0160469088, 6);
    expect(a.z).toBeCloseTo(a.unaccounted_g / a.u_g, 9);
    expect(a.detectable_g).toBeCloseTo(3.289707254 * a.u_g, 9);
    expect(a.loss_level).toBe(Math.abs(a.z) > 3 ? 'act' : Math.abs(a.z) > 2 ? 'warn' : 'none');
    expect(a.paths.map((p: { path: string }) => p.path)).toEqual([...lossPaths]);
    expect(a.end_marks).toEqual([{ desk: 'desk-one', entries: expect.any(Number), end_mark: ends.get('desk-one') }]);
    expect(a.standing).toContain('clearing legacy mercury');
  });

  it('adds up: the sum to the unaccounted, and the places to the closing stock', async () => {
    writeBook(dir, millReturn().entries);
    const a = await account();
    const sum = a.opening_g + a.receipts_g + a.found_g - a.removals_g - a.released_g - a.closing_g;
    expect(a.unaccounted_g).toBeCloseTo(sum, 6);
    const places: { g: number; place: string }[] = a.stocks;
    expect(places.reduce((s, p) => s + p.g, 0)).toBeCloseTo(a.closing_g, 6);
    expect(new Set(places.map((p) => p.place)).size).toBe(places.length);
    expect(places.map((p) => p.place)).toEqual(expect.arrayContaining(['flask one', 'plates (in circuit)']));
  });

  it('says in words what cannot be computed, never nothing and never a number', async () => {
    writeBook(dir, midnight().entries);
    const a = await account();
    for (const name of ['ore_t', 'per_tonne_g', 'excess_level'])
      expect(a[name]).toEqual({ not_computable: expect.stringMatching(/^.{20,}$/) });
    writeBook(join(home, 'empty'), []);
    const { out } = await called(['account', join(home, 'empty'), '--json']);
    const empty = JSON.parse(out);
    expect(empty).toMatchObject({ opening_g: 0, closing_g: 0, unaccounted_g: 0, stocks: [], reservations: [] });
    for (const name of ['z', 'loss_level']) expect(empty[name]).toEqual({ not_computable: expect.stringMatching(/^.{20,}$/) });
    expect(empty.standing).toContain('no standing');
  });

  it('takes whole days as they stood on the wall, so that neighbouring periods hold every entry once', async () => {
    writeBook(dir, midnight().entries);
    const march = await account('--to', '2026-03-31');
    const april = await account('--from', '2026-04-01');
    expect([march.receipts_g, march.closing_g]).toEqual([103, 103]);
    expect([april.opening_g, april.receipts_g, april.closing_g]).toEqual([103, 20, 123]);
    const one = await account('--from', '2026-03-31', '--to', '2026-03-31');
    expect([one.from, one.to, one.opening_g, one.receipts_g]).toEqual(['2026-03-31', '2026-03-31', 0, 103]);
    const before = await account('--to', '2026-03-30');
    expect([before.receipts_g, before.closing_g]).toEqual([0, 0]);
  });

  /** A bottle counted at the end of four months: 100 g gone in 20 t, 240 g in 40 t, 300 g in 40 t. */
  function fourCounts(): ReturnType<typeof BookMaker.site> {
    const book = BookMaker.site();
    const battery = book.add('battery', 'battery', { label: 'Battery', stamps: 5 });
    book.add('here', 'receipt', { vessel: book.bottle, weight: stated('10000', '0'), way: 'already-here' });
    for (const [i, [left, tonnes]] of [
      ['10000', 0] as const,
      ['9900', 20] as const,
      ['9660', 40] as const,
      ['9360', 40] as const,
    ].entries()) {
      if (tonnes > 0)
        book.add(
          `crushed ${i}`,
          'crushing',
          { battery, feed: 'concentrate', mercuryFed: 'mortar', ore: { mass: `${tonnes} t`, u: 0.01 } },
          { happened: `2026-0${i + 4}-10T09:00+13:00` },
        );
      book.add(
        `count ${i}`,
        'stock-take',
        { scope: 'whole', lines: [{ how: 'weighed', place: `vessel:${book.bottle}`, weight: stated(left, '3') }] },
        { happened: `2026-0${i + 4}-28T18:00+13:00` },
      );
    }
    return book;
  }

  it('answers both questions: against nothing, and against the usual rate of the periods before, which it names', async () => {
    writeBook(dir, fourCounts().entries);
    const a = await account('--from', '2026-06-29', '--to', '2026-07-28');
    expect(a.unaccounted_g).toBe(300);
    expect(a.reservations).toEqual([]);
    expect(a.usual).toMatchObject({ per: 'tonne', amount: 40 });
    expect(a.usual.periods.map((p: { closing: string }) => p.closing)).toEqual(['count-1', 'count-2']);
    expect(a.usual.rate_g).toBeCloseTo(340 / 60, 9);
    expect(a.expected_g).toBeCloseTo((340 / 60) * 40, 6);
    expect(a.excess_g).toBeCloseTo(300 - a.expected_g, 6);
    expect(a.excess_z).toBeCloseTo(a.excess_g / a.excess_u_g, 9);
    expect(a.loss_level).toBe('act');
    expect(a.excess_level).toBe(Math.abs(a.excess_z) > 3 ? 'act' : Math.abs(a.excess_z) > 2 ? 'warn' : 'none');
    expect(a.doubts.reduce((s: number, d: { share: number }) => s + d.share, 0)).toBeCloseTo(1, 9);
    const { out } = await called(['account', dir, '--from', '2026-06-29', '--to', '2026-07-28']);
    expect(out).toContain('Usual here');
    expect(out).toContain('Usual is not acceptable.');
  });

  it('says which end has no count of the whole, and how many periods are wanting for a usual rate', async () => {
    writeBook(dir, fourCounts().entries);
    const early = await account('--from', '2026-05-29', '--to', '2026-06-28');
    expect(early).not.toHaveProperty('excess_g');
    expect(early.excess_level.not_computable).toContain('there is one');
    const book = fourCounts();
    book.add(
      'taken after',
      'issue',
      { vessel: book.bottle, to: 'pan', weight: stated('10', '0.1') },
      { happened: '2026-08-05T09:00+13:00' },
    );
    writeBook(join(home, 'later'), book.entries);
    const { out } = await called(['account', join(home, 'later'), '--json', '--from', '2026-08-06']);
    expect(JSON.parse(out).reservations.map((r: { code: string }) => r.code)).toEqual(['no-count-at-start', 'no-count-at-end']);
  });

  it('prints reservations first, and never says evaporated', async () => {
    const book = BookMaker.site();
    book.add('unsure', 'receipt', { vessel: book.bottle, weight: stated('50'), way: 'given' });
    writeBook(dir, book.entries);
    const a = await account();
    expect(a.reservations.filter((r: { entry: string }) => r.entry === 'unsure').map((r: { code: string }) => r.code)).toEqual([
      'outside-standing',
      'u-unknown',
    ]);
    const { code, out } = await called(['account', dir]);
    expect(code).toBe(0);
    const [reserved, opening] = [out.indexOf('Reservations'), out.indexOf('Opening stock')];
    expect(reserved).toBeGreaterThan(0);
    expect(opening).toBeGreaterThan(reserved);
    expect(out).toContain('50');
    expect(out).toContain('no measure of the air');
    expect(out).not.toMatch(/evaporat/i);
    expect(out).not.toMatch(/\b(safe|compliant|approved|authorised)\b/i);
  });

  it('tells mercury it cannot count, because a newer program wrote the entry', async () => {
    const book = midnight();
    book.add('strange', 'distilled' as never, { weight: '5 g' } as never);
    writeBook(dir, book.entries);
    const a = await account();
    expect(a.reservations).toContainEqual(expect.objectContaining({ entry: 'strange', code: 'not-understood' }));
  });

  it('refuses days that are none, a period that ends before it begins, an option it has not, a folder that is not there', async () => {
    writeBook(dir, midnight().entries);
    await refused(home, ['account', dir, '--from', '2026-02-30'], ['--from']);
    await refused(home, ['account', dir, '--from', 'monday', '--to', '31.3.2026'], ['--from', '--to']);
    await refused(home, ['account', dir, '--from', '2026-04-01', '--to', '2026-03-31', '--json'], ['--to']);
    await refused(home, ['account', dir, '--since', '2026-04-01'], ['--since', '']);
    await refused(home, ['account', join(home, 'nowhere'), '--json'], ['DIR']);
  });
});

describe('movements', () => {
  it('lists every movement under the header of the contract, and the places sum to the closing stock', async () => {
    writeBook(dir, millReturn().entries);
    const { code, out, err } = await called(['movements', dir, '--csv']);
    expect([code, err]).toEqual([0, '']);
    const [header, ...rows] = table(out);
    expect(header).toEqual(['date', 'from', 'to', 'grams', 'entry']);
    for (const [date, , , grams] of rows) {
      expect(date).toMatch(/^2026-03-\d\d$/);
      expect(grams).toMatch(/^-?\d+\.\d{6}$/);
    }
    // whole micrograms, so that nothing is left over
    const ug = (text = '') => BigInt(text.replace('.', ''));
    const held = new Map<string, bigint>();
    for (const [, from = '', to = '', grams] of rows) {
      held.set(from, (held.get(from) ?? 0n) - ug(grams));
      held.set(to, (held.get(to) ?? 0n) + ug(grams));
    }
    const a = await account();
    for (const { place, g } of a.stocks) expect(Number(held.get(place)) / 1e6).toBe(g);
  });

  it('keeps names with commas, quotes and line starts of a formula as the text they are', async () => {
    const book = BookMaker.site();
    const odd = ['=1+1', '@SUM(A1)', '+flask', 'a, b "c"'];
    for (const [i, label] of odd.entries()) {
      const vessel = book.add(`odd vessel ${i}`, 'vessel', { label, use: 'flask' });
      book.add(`odd receipt ${i}`, 'receipt', { vessel, weight: stated('1', '0.1'), way: 'given' });
    }
    writeBook(dir, book.entries);
    const { out } = await called(['movements', dir, '--csv']);
    expect(
      table(out)
        .slice(1)
        .map((row) => row[2]),
    ).toEqual(["'=1+1", "'@SUM(A1)", "'+flask", 'a, b "c"']);
    for (const cell of table(out).flat()) expect(cell).not.toMatch(/^[=+@\t]/);
  });

  it('leaves an amount below nothing the number it is', async () => {
    const book = BookMaker.site();
    const count = (name: string, g: string, day: number) =>
      book.add(
        name,
        'stock-take',
        { lines: [{ how: 'weighed', place: `vessel:${book.bottle}`, weight: stated(g, '0.1') }] },
        { happened: `2026-03-0${day}T09:00+13:00` },
      );
    count('count one', '100', 2);
    count('count two', '112.5', 3);
    count('count three', '90', 4);
    writeBook(dir, book.entries);
    const { out } = await called(['movements', dir, '--csv']);
    expect(
      table(out)
        .slice(1)
        .map((row) => [row[1], row[3]]),
    ).toEqual([
      ['outside this book', '100.000000'],
      ['difference found by a count', '12.500000'],
      ['difference found by a count', '-22.500000'],
    ]);
  });

  it('tells places of one name apart', async () => {
    const book = BookMaker.site();
    for (const name of ['twin one', 'twin two']) {
      const vessel = book.add(name, 'vessel', { label: 'Twin', use: 'flask' });
      book.add(`${name} receipt`, 'receipt', { vessel, weight: stated('1', '0.1'), way: 'given' });
    }
    writeBook(dir, book.entries);
    const { out } = await called(['movements', dir, '--csv']);
    expect(
      table(out)
        .slice(1)
        .map((row) => row[2]),
    ).toEqual(['Twin [vessel:twin-one]', 'Twin [vessel:twin-two]']);
  });

  it('needs --csv, and refuses what it does not know', async () => {
    writeBook(dir, midnight().entries);
    await refused(home, ['movements', dir], ['--csv']);
    await refused(home, ['movements', dir, '--csv', '--json'], ['--json']);
    await refused(home, ['movements', join(home, 'nowhere'), '--csv'], ['DIR']);
  });
});

describe('export', () => {
  it('writes a table for every kind, the movements, and a manifest that holds every byte of them', async () => {
    const ends = writeBook(dir, millReturn().entries);
    const before = everything(dir);
    const out = join(home, 'away', 'record');
    const { code, err } = await called(['export', dir, '--out', out]);
    expect([code, err]).toEqual([0, '']);
    expect(everything(dir)).toEqual(before);
    const names = [
      ...Object.keys(kinds).map((k) => `${k}.csv`),
      'as-first-written.csv',
      'bars.csv',
      'yields.csv',
      'movements.csv',
      'manifest.json',
    ];
    const others = ['VERIFY.md', 'journal-desk-one.jsonl'];
    expect(readdirSync(out).sort()).toEqual([...names, ...others].sort());
    const manifest = JSON.parse(readFileSync(join(out, 'manifest.json'), 'utf8'));
    expect(manifest.end_marks).toEqual([expect.objectContaining({ desk: 'desk-one', end_mark: ends.get('desk-one') })]);
    expect(manifest.files.map((f: { file: string }) => f.file).sort()).toEqual(names.filter((n) => n !== 'manifest.json').sort());
    expect(manifest.others.map((f: { file: string }) => f.file).sort()).toEqual(others);
    let rows = 0;
    for (const { file, sha256, bytes, rows: told } of manifest.files) {
      const content = readFileSync(join(out, file));
      expect([file, createHash('sha256').update(content).digest('hex'), content.length]).toEqual([file, sha256, bytes]);
      expect(table(content.toString('utf8')).length - 1).toBe(told);
      if (!['movements.csv', 'as-first-written.csv', 'bars.csv', 'yields.csv'].includes(file)) rows += told;
    }
    expect(rows).toBe(manifest.entries);
    const { out: printed } = await called(['movements', dir, '--csv']);
    expect(readFileSync(join(out, 'movements.csv'), 'utf8')).toBe(printed);
  });

  it('reads each entry as it stands now, and says what was corrected or struck', async () => {
    const book = BookMaker.site();
    const receipt = book.add('receipt one', 'receipt', { vessel: book.bottle, weight: stated('50', '0.1'), way: 'given' });
    const second = book.add('receipt two', 'receipt', { vessel: book.bottle, weight: stated('60', '0.1'), way: 'bought' });
    book.add('fix it', 'correction', {
      corrects: receipt,
      body: { vessel: book.bottle, weight: stated('55', '0.1'), way: 'given', from: '=HYPERLINK("x")' },
      why: 'Misread.',
    });
    book.add('strike it', 'strike', { strikes: second, why: 'Written twice.' });
    writeBook(dir, book.entries);
    await called(['export', dir, '--out', join(home, 'out')]);
    const [header = [], ...rows] = table(readFileSync(join(home, 'out', 'receipt.csv'), 'utf8'));
    const cell = (row: string[], name: string) => row[header.indexOf(name)];
    expect(
      rows.map((row) => [cell(row, 'id'), cell(row, 'body.weight.mass'), cell(row, 'corrected'), cell(row, 'struck')]),
    ).toEqual([
      [receipt, '55 g', 'fix-it', ''],
      [second, '60 g', '', 'strike-it'],
    ]);
    expect(cell(rows[0] ?? [], 'body.from')).toBe('\'=HYPERLINK("x")');
  });

  it('takes along what a newer program wrote', async () => {
    const book = midnight();
    book.add('strange', 'movements' as never, { weight: { gross: '5 g' } } as never);
    writeBook(dir, book.entries);
    await called(['export', dir, '--out', join(home, 'out')]);
    const [header = [], row = []] = table(readFileSync(join(home, 'out', 'not-understood.csv'), 'utf8'));
    expect(row[header.indexOf('body.kind')]).toBe('movements');
    expect(row[header.indexOf('body.weight.gross')]).toBe('5 g');
  });

  it('fills an empty folder, and refuses one that holds anything, a file, and a place inside the daybook', async () => {
    writeBook(dir, midnight().entries);
    const full = join(home, 'full');
    mkdirSync(full);
    writeFileSync(join(full, 'letter.txt'), 'kept');
    writeFileSync(join(home, 'file'), 'kept');
    const [problem] = await refused(home, ['export', dir, '--out', full], ['--out']);
    expect(problem?.problem).toContain('full');
    await refused(home, ['export', dir, '--out', join(home, 'file')], ['--out']);
    await refused(home, ['export', dir, '--out', join(dir, 'evidence', 'away')], ['--out']);
    await refused(home, ['export', dir, '--out', dir], ['--out']);
    await refused(home, ['export', dir], ['--out']);
    await refused(home, ['export', join(home, 'nowhere'), '--out', join(home, 'out')], ['DIR']);
    mkdirSync(join(home, 'hollow'));
    expect((await called(['export', dir, '--out', join(home, 'hollow')])).code).toBe(0);
  });
});

describe('a record that does not verify', () => {
  it('gives no figures: exit 1, desk and line named, nothing printed and nothing written', async () => {
    writeBook(dir, midnight().entries);
    const journal = join(dir, 'desks', 'desk-one.jsonl');
    writeFileSync(journal, readFileSync(journal, 'utf8').replace('"mass":"20 g"', '"mass":"21 g"'));
    const before = everything(home);
    for (const args of [
      ['account', dir, '--json'],
      ['movements', dir, '--csv'],
      ['export', dir, '--out', join(home, 'out')],
    ]) {
      const { code, out, err } = await called(args);
      expect([code, out]).toEqual([1, '']);
      expect(problemsIn(err)).toEqual([{ problem: expect.stringMatching(/desk-one.*line 7/), field: '' }]);
    }
    expect(everything(home)).toEqual(before);
  });
});
