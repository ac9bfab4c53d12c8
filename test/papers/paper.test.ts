import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Content } from 'pdfmake/interfaces';
import { expect, test } from 'vitest';
import { endMarkText } from '../../app/papers/end-mark.ts';
import { alignedAmounts, ledger, page, textWidth, widthsOf } from '../../app/papers/ledger.ts';
import { type Frame, newestOf, paper } from '../../app/papers/paper.ts';
import { printableText } from '../../app/papers/printable.ts';
import { fingerprintText } from '../../app/words/signatures.ts';
import { charactersOf } from '../../main/host/print-characters.ts';
import { awkward, frameOf, sheetOf, textOf, w8 } from './site-of-runs.ts';

const mark = '0123456789abcdef'.repeat(4);
const frame: Frame = {
  site: 'Example battery',
  desks: [{ desk: 'desk-one', entries: 3, endMark: mark }],
  newest: '2026-03-15T08:10+13:00',
  version: '9.9.9',
  canPrint: () => true,
};
const leaf = { name: 'Sheet', subject: 'Subject', number: 'N', standing: [], reservations: [], body: [] };

type Drawn = (n: number, of: number, size: { width: number; height: number }) => Content;
const at = (part: unknown, n = 1, of = 2): string => textOf((part as Drawn)(n, of, { width: page.width, height: page.height }));

test('every page names the site, the paper and its place among the pages', () => {
  const { header } = paper(frame, leaf);
  expect(at(header, 2, 5)).toBe('Example battery\nSheet · page 2 of 5');
});

test('the foot of every page carries each desk’s whole end mark, entries, version, and what the paper is not', () => {
  const two = { ...frame, desks: [...frame.desks, { desk: 'desk-two', entries: 4, endMark: mark.replaceAll('0', 'f') }] };
  const foot = at(paper(two, leaf).footer);
  expect(foot).toContain(`Desk desk-one, 3 entries, end mark ${endMarkText(mark)}`);
  expect(foot).toContain('Desk desk-two, 4 entries, end mark f123 4567');
  expect(foot).toContain('Covers 7 entries, the newest written 15 March 2026, 08:10 · program version 9.9.9');
  expect(foot).toContain('no approval, permit or certificate');
  expect(foot).toContain('licensed people come first');
});

test('beside the end mark of a desk that signed stands its key, whole, and how far it signed', () => {
  const key = 'fedcba9876543210'.repeat(4);
  const desks = [{ desk: 'desk-one', entries: 3, endMark: mark, key, signed: 2 }];
  const line = `signed up to entry 2 with the key ${fingerprintText(key)}`;
  expect(at(paper({ ...frame, desks }, leaf).footer)).toContain(`${endMarkText(mark)}\n${line}`);
  expect(at(paper(frame, leaf).footer)).not.toContain('key');
  const many = Array.from({ length: 9 }, (_, i) => ({ ...desks[0]!, desk: `desk-${i}` }));
  expect(textOf(paper({ ...frame, desks: many }, leaf).content).split(line)).toHaveLength(10);
});

test('many desks have their end marks at the end of the paper, and the foot says so', () => {
  const desks = Array.from({ length: 9 }, (_, i) => ({ desk: `desk-${i}`, entries: 1, endMark: mark }));
  const made = paper({ ...frame, desks }, leaf);
  expect(at(made.footer)).toContain('The end marks of the 9 desks it covers stand at the end of the paper.');
  expect(textOf(made.content).split(endMarkText(mark))).toHaveLength(10);
});

test('an end mark keeps all its characters in groups of four', () => {
  expect(endMarkText(mark).split(' ')).toHaveLength(16);
  expect(endMarkText(mark).replaceAll(' ', '')).toBe(mark);
});

test('the file is dated by the newest entry, whatever order they come in and whatever their offsets', () => {
  const written = ['2026-03-15T08:10+13:00', '2026-03-14T23:00+00:00', '2026-03-15T08:00+13:00'];
  expect(newestOf(written.map((w) => ({ written: w })))).toBe('2026-03-14T23:00+00:00');
  const { info } = paper(frame, leaf);
  expect(info?.creationDate?.toISOString()).toBe('2026-03-14T19:10:00.000Z');
  expect(info?.modDate).toEqual(info?.creationDate);
});

test('a longer site name gets a higher head and never loses it', () => {
  const top = (site: string) => (paper({ ...frame, site }, leaf).pageMargins as number[])[1] ?? 0;
  expect(top('W'.repeat(120))).toBeGreaterThan(top('Example battery'));
});

test('no table of a run sheet has a span, and all have fixed widths that fit the page', () => {
  const tables: { body: unknown[][]; widths: number[] }[] = [];
  const find = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    if ('table' in value) tables.push(value.table as (typeof tables)[number]);
    for (const inner of Object.values(value)) find(inner);
  };
  for (const { book, charge } of [w8(), awkward()]) find(sheetOf(book, charge).content);
  expect(tables.length).toBeGreaterThan(20);
  for (const { body, widths } of tables) {
    expect(widths.every((w) => typeof w === 'number' && w > 10)).toBe(true);
    expect(widths.reduce((a, b) => a + b, 0) + widths.length * 8).toBeLessThanOrEqual(textWidth);
    for (const row of body) {
      expect(row).toHaveLength(widths.length);
      expect(JSON.stringify(row)).not.toMatch(/"(row|col)Span"/);
    }
  }
});

test('widths fill the page and keep their shares', () => {
  const [a = 0, b = 0] = widthsOf([3, 1]);
  expect(a / b).toBeCloseTo(3, 1);
  expect(a + b + 2 * 8 + 0.4).toBeCloseTo(textWidth, 1);
});

test('amounts stand with their points below each other, and no digit is added', () => {
  expect(alignedAmounts(['955.6', '0', '−12.25', 'not weighed', '1\u202f007.7'])).toEqual([
    '955.6\u2007',
    '0\u00a0\u2007\u2007',
    '−12.25',
    'not weighed',
    '1\u202f007.7\u2007',
  ]);
});

test('a table without rows does not ask to keep its head with one', () => {
  const [content] = ledger([{ head: 'x', share: 1 }], []);
  expect(content).toMatchObject({ table: { keepWithHeaderRows: 0, headerRows: 1 } });
});

test('a character that cannot be drawn is told by its number; line breaks and all others stay', () => {
  expect(printableText('a水\n😀b', (code) => code < 0x80)).toBe('a[U+6C34]\n[U+1F600]b');
});

const asset = (name: string) => readFileSync(fileURLToPath(new URL(`../../${name}`, import.meta.url)));

test('the paper’s fonts hold every character that our texts use', () => {
  const cuts = ['Regular', 'SemiBold', 'Italic'].map((cut) => charactersOf(asset(`assets/fonts/SourceSans3-${cut}.ttf`)));
  const missing = (text: string) =>
    [...new Set(text)].filter((c) => c !== '\n' && !cuts.every((cut) => cut.has(c.codePointAt(0) ?? 0)));
  const own = ['account', 'common', 'incident', 'melt', 'register', 'tag', 'transfer'].map((name) => `papers-${name}`);
  const files = ['papers', ...own, 'account', 'flags', 'findings', 'figures', 'dates', 'run-checks', 'record-fields'];
  for (const file of files) {
    // what is written as an escape is a character too
    const text = asset(`app/words/${file}.ts`)
      .toString('utf8')
      .replaceAll(/\\u([0-9a-f]{4})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));
    expect(missing(text), file).toEqual([]);
  }
  expect(missing('±−µ×≤\u2007\u202f\u00a0')).toEqual([]);
  // a planted one is found
  expect(missing('⚠ 水')).toEqual(['⚠', '水']);
});

test('a file that is no font is refused', () => {
  expect(() => charactersOf(new Uint8Array(64))).toThrow('no character map');
});

test('the frame of the tests is one a host could give', () => {
  const { book } = w8();
  expect(frameOf(book)).toMatchObject({
    newest: '2026-03-15T08:10+13:00',
    desks: [{ desk: 'desk-one', entries: book.entries.length }],
  });
});
