import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type PaperName, paperNames } from '../../app/contract.ts';
import type { Entry } from '../../app/core/entry.ts';
import { problemText } from '../../app/words/problems.ts';
import { printPaper } from '../../main/host/print.ts';
import { eighteenMonths } from '../../main/host/sample/eighteen-months.ts';
import { journalOf } from '../../main/host/sample/write.ts';
import type { BookMaker } from '../core/book-maker.ts';
import mill from '../outside/data/mill-return.json' with { type: 'json' };
import { millReturn } from '../outside/mill-return-book.ts';
import { desksOf } from './site-of-runs.ts';
import { fromLater, long, markup, year } from './year.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'every-paper-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What each paper is about in the constructed year. */
const subject = (ids: ReturnType<typeof year>['ids']): Readonly<Record<PaperName, string | undefined>> => ({
  'mercury-account': undefined,
  'mercury-register': undefined,
  'run-sheet': ids.charge,
  'retort-tag': ids.charge,
  'melt-sheet': ids.melt,
  'bar-record': `${ids.melt}/1`,
  'parcel-return': ids.parcel,
  'transfer-sheet': ids.transfer,
  'incident-sheet': ids.spill,
  'air-record': ids.air,
  'personal-air-record': ids.ownAir,
  'open-day-sheet': ids.openDay,
  'wall-sheet': undefined,
  'count-sheet': undefined,
  labels: ids.bottle,
  'blank-forms': undefined,
});

async function printed(maker: BookMaker, name: PaperName, id?: string): Promise<Uint8Array> {
  const got = await printPaper(maker.entries, 'Example battery', desksOf(maker), name, id);
  if (!got.ok) throw new Error(got.problems.map(problemText).join(' '));
  return got.value;
}

function tool(name: string, args: readonly string[], bytes: Uint8Array): string {
  const file = join(folder, 'paper.pdf');
  writeFileSync(file, bytes);
  return execFileSync(name, [...args, file, ...(name === 'pdftotext' ? ['-'] : [])], { encoding: 'utf8' });
}

/** The text of a paper as another program reads it: spaces made plain, those between thousands left out. */
const readBack = (bytes: Uint8Array): string =>
  tool('pdftotext', ['-layout'], bytes)
    .replaceAll(/[\u00a0\u2007\u202f]/g, ' ')
    // columns stand further apart than one space
    .replaceAll(/(?<=\d) (?=\d{3}(?:\.\d|\s))/g, '')
    .replaceAll(/ +/g, ' ');

const digest = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

describe.each(paperNames)('%s', (name) => {
  test('the same entries give the same bytes, and the whole end mark is on it', async () => {
    const { book, ids } = year();
    const first = await printed(book, name, subject(ids)[name]);
    expect(digest(await printed(year().book, name, subject(ids)[name]))).toBe(digest(first));
    expect(readBack(first).replaceAll(/\s/g, '')).toContain('0123456789abcdef'.repeat(4));
    expect(tool('pdfinfo', ['-isodates'], first)).toMatch(/CreationDate:\s+2026-06-29T20:00:00/);
  });

  test('names that look like markup print as the letters they are, with no link and no script in the file', async () => {
    const { book, ids } = year({ vessel: markup, party: markup, where: markup, bar: markup, lot: markup });
    const bytes = await printed(book, name, subject(ids)[name]);
    // as drawn, cell by cell: a narrow cell breaks the name over lines
    expect(tool('pdftotext', ['-raw'], bytes).replaceAll(/\s/g, '')).toContain('<bonclick=x>');
    const raw = Buffer.from(bytes).toString('latin1');
    for (const mark of ['/URI', '/Link', '/JavaScript', '/JS', '/Launch', '/EmbeddedFile', '/AcroForm'])
      expect(raw).not.toContain(mark);
  });

  test('nothing runs off the page, however long the names', async () => {
    const { book, ids } = year({ vessel: long, party: long, where: long, bar: long, lot: long });
    writeFileSync(join(folder, 'long.pdf'), await printed(book, name, subject(ids)[name]));
    execFileSync('pdftotext', ['-bbox', join(folder, 'long.pdf'), join(folder, 'boxes.html')]);
    const html = readFileSync(join(folder, 'boxes.html'), 'utf8');
    const [, width = '0', height = '0'] = /<page width="([\d.]+)" height="([\d.]+)"/.exec(html) ?? [];
    const words = [...html.matchAll(/xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.]+)" yMax="([\d.]+)"/g)];
    expect(words.length).toBeGreaterThan(60);
    for (const [, left, top, right, bottom] of words) {
      expect(Number(left)).toBeGreaterThan(12);
      expect(Number(top)).toBeGreaterThan(8);
      expect(Number(right)).toBeLessThan(Number(width) - 12);
      expect(Number(bottom)).toBeLessThan(Number(height) - 2);
    }
  });

  // a blank form tells nothing of the record, and a wall sheet is wanted whatever else cannot be read: it says so
  test.skipIf(name === 'blank-forms' || name === 'wall-sheet')(
    'it is not printed without an entry of an unknown kind that speaks of its subject',
    async () => {
      const { book, ids } = year();
      fromLater(book, { of: subject(ids)[name] ?? 'the store' });
      const got = await printPaper(book.entries, 'Example battery', desksOf(book), name, subject(ids)[name]);
      expect(got).toMatchObject({ ok: false, problems: [{ code: 'paper-not-understood' }] });
    },
  );
});

test('another program reads the month of the mill off the account, in grams', async () => {
  const text = readBack(await printed(millReturn(), 'mercury-account'));
  const grams = (ounces: number) => (ounces * 31.1034768).toFixed(2);
  expect(text).toContain(`Opening stock ${grams(mill.expected.opening)} `);
  expect(text).toContain(`less closing stock ${grams(mill.expected.closing)} `);
  expect(text).toMatch(new RegExp(`Not accounted for ${grams(mill.expected.loss)} ± `));
});

test('another program reads the hand-reckoned figures off every sheet of the year', async () => {
  const { book, ids } = year();
  const read = async (name: PaperName) => readBack(await printed(book, name, subject(ids)[name]));
  expect(await read('melt-sheet')).toMatch(/Shrinkage 4\.7 ± 0\.28/);
  expect(await read('transfer-sheet')).toMatch(/Theirs less ours −1\.4 ± 0\.28/);
  expect(await read('incident-sheet')).toMatch(/Not gathered up 5\.5 ± 4\.0/);
  expect(await read('retort-tag')).toMatch(/399\.5 g, ± 0\.20 g/);
  expect(await read('mercury-register')).toMatch(/30 June 2026 1138\.00 1142\.00 −4\.00 a film of water/);
});

test('the sample site prints its account, register, first tag, first melt, incident and spill', async () => {
  const entries = journalOf(eighteenMonths())
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Entry);
  const desks = [{ desk: 'sample-desk', entries: entries.length, endMark: entries.at(-1)?.hash ?? '' }];
  const first = (kind: string) => entries.find((entry) => entry.kind === kind)?.id;
  for (const [name, id] of [
    ['mercury-account', undefined],
    ['mercury-register', undefined],
    ['retort-tag', first('charge')],
    ['melt-sheet', first('melt')],
    ['incident-sheet', first('incident')],
    ['incident-sheet', first('spill')],
  ] as const) {
    const got = await printPaper(entries, 'Sample', desks, name, id);
    expect(got.ok).toBe(true);
    if (!got.ok) continue;
    const text = readBack(got.value);
    expect(text.replaceAll(/\s/g, '')).toContain(desks[0]?.endMark);
    // drawings that stand together with their heads are on it: what is higher than a page would be left out
    if (name === 'mercury-account')
      for (const words of ['Where it went', 'As high as this', 'Runs of periods', 'Running total']) expect(text).toContain(words);
  }
});

test('what a paper does not take is refused, and so is a period that is none', async () => {
  const { book, ids } = year();
  const codes = async (name: PaperName, id: string | undefined, ends: { from?: string; to?: string }) => {
    const got = await printPaper(book.entries, 'Example battery', desksOf(book), name, id, ends);
    if (got.ok) return [];
    expect(got.problems.map(problemText).join()).not.toContain('cannot be accepted');
    return got.problems.map(({ code, field }) => `${field}: ${code}`);
  };
  expect(await codes('mercury-account', ids.melt, {})).toEqual(['id: paper-takes-no-id']);
  expect(await codes('melt-sheet', ids.melt, { from: '2026-01-01', to: '2026-02-01' })).toEqual([
    'from: paper-takes-no-period',
    'to: paper-takes-no-period',
  ]);
  expect(await codes('melt-sheet', undefined, {})).toEqual(['id: paper-no-id']);
  expect(await codes('mercury-account', undefined, { from: '2026-02-30' })).toEqual(['from: not-a-day']);
  expect(await codes('mercury-register', undefined, { from: '2026-03-02', to: '2026-03-01' })).toEqual(['to: period-reversed']);
  expect(await codes('incident-sheet', 'nothing-here', {})).toEqual(['id: paper-no-such']);
});
