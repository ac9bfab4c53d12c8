import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { problemText } from '../../app/words/problems.ts';
import { printPaper } from '../../main/host/print.ts';
import type { BookMaker } from '../core/book-maker.ts';
import { awkward, desksOf, hostile, manyBalls, w8 } from './site-of-runs.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
let folder = '';
let built = '';

/** One TypeScript file of the tree as a program, with pdfmake left where it is installed. */
const bundled = (file: string, name: string) =>
  build({
    configFile: false,
    root,
    logLevel: 'error',
    ssr: { noExternal: true, external: ['pdfmake'] },
    build: {
      ssr: join(root, file),
      outDir: built,
      emptyOutDir: false,
      minify: false,
      rolldownOptions: { output: { entryFileNames: `${name}.mjs`, codeSplitting: false } },
    },
  });

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'papers-'));
  // inside the tree, so that the built program finds its packages
  mkdirSync(join(root, '.cache'), { recursive: true });
  built = mkdtempSync(join(root, '.cache', 'papers-'));
});

afterAll(() => {
  for (const made of [folder, built]) rmSync(made, { recursive: true, force: true });
});

async function printed(book: BookMaker, charge: string): Promise<Uint8Array> {
  const got = await printPaper(book.entries, 'Example battery', desksOf(book), 'run-sheet', charge);
  if (!got.ok) throw new Error(got.problems.map(problemText).join(' '));
  return got.value;
}

function tool(name: string, args: readonly string[], bytes: Uint8Array): string {
  const file = join(folder, 'paper.pdf');
  writeFileSync(file, bytes);
  return execFileSync(name, [...args, file, ...(name === 'pdftotext' ? ['-'] : [])], { encoding: 'utf8' });
}

/** The text of a paper as another program reads it, its spaces made plain. */
const readBack = (bytes: Uint8Array): string =>
  tool('pdftotext', ['-layout'], bytes)
    .replaceAll(/[\u00a0\u2007\u202f]/g, ' ')
    .replaceAll(/ +/g, ' ');

const digest = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

test('another program reads the figures, the standing and the whole end mark off the paper', async () => {
  const { book, charge } = w8();
  const text = readBack(await printed(book, charge));
  for (const figure of ['955.6', '371.8', '583.8', '571.2', '12.6', '1.319 %', '38.91 %', '97.84 %'])
    expect(text).toContain(figure);
  expect(text).toContain('clearing legacy mercury');
  expect(text).toContain(
    `Desk desk-one, ${book.entries.length} entries, end mark ${Array(4).fill('0123 4567 89ab cdef').join(' ')}`,
  );
  expect(text).toContain('page 1 of 5');
});

test('the same entries give the same bytes, and the file is dated by its newest entry', async () => {
  const { book, charge } = w8();
  const first = await printed(book, charge);
  expect(digest(await printed(book, charge))).toBe(digest(first));
  expect(digest(await printed(w8({ fuel: 'wood' }).book, charge))).not.toBe(digest(first));
  const info = tool('pdfinfo', ['-isodates'], first);
  // 08:10 at thirteen hours east
  expect(info).toMatch(/CreationDate:\s+2026-03-14T19:10:00/);
  expect(info).toMatch(/ModDate:\s+2026-03-14T19:10:00/);
  expect(info).toMatch(/Title:\s+Run sheet: Pot retort, 15 March 2026/);
});

test('the built thread prints the same bytes in a process of its own, and hands back problems', async () => {
  await bundled('main/host/print-worker.ts', 'print-worker');
  await bundled('test/papers/prints.ts', 'prints');
  cpSync(join(root, 'assets/fonts'), join(built, 'fonts'), { recursive: true });
  const { book, charge } = w8();
  const run = (...args: string[]) =>
    execFileSync(process.execPath, [join(built, 'prints.mjs'), ...args], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'inherit'],
    });
  expect(run()).toBe(digest(await printed(book, charge)));
  expect(run('no-such-charge')).toBe('paper-no-such-run');
});

test('names that look like markup print as the letters they are, with no link and no script in the file', async () => {
  const { book, charge } = awkward();
  const bytes = await printed(book, charge);
  const flat = readBack(bytes).replaceAll(/\s/g, '');
  expect(flat).toContain(hostile.markup.slice(0, 30).replaceAll(' ', ''));
  const raw = Buffer.from(bytes).toString('latin1');
  for (const mark of ['/URI', '/Link', '/JavaScript', '/JS', '/Launch', '/EmbeddedFile', '/AcroForm'])
    expect(raw).not.toContain(mark);
});

test('a character the font lacks prints as its number, and one it has as itself', async () => {
  const { book, charge } = awkward();
  const flat = readBack(await printed(book, charge)).replaceAll(/\s/g, '');
  expect(flat).toContain('[U+6C34][U+9280]');
  expect(flat).toContain('[U+1F600]');
  expect(flat).toContain('ā');
});

test('a long list goes over pages and repeats its head on each', async () => {
  const { book, charge } = manyBalls(60);
  const pages = readBack(await printed(book, charge)).split('\f');
  const readings = pages.filter((page) => /label gross 1\d\d\.5 g|label\s+gross/.test(page));
  expect(readings.length).toBeGreaterThan(2);
  for (const page of readings) expect(page).toMatch(/What\s+As read\s+Scale no\.\s+Net, g/);
});

test('nothing runs off the page, whatever the names', async () => {
  const { book, charge } = awkward();
  const boxes = tool('pdftotext', ['-bbox'], await printed(book, charge));
  expect(boxes.length).toBeGreaterThan(0);
  const file = join(folder, 'boxes.html');
  execFileSync('pdftotext', ['-bbox', join(folder, 'paper.pdf'), file]);
  const edges = [...readFileSync(file, 'utf8').matchAll(/xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)"/g)];
  expect(edges.length).toBeGreaterThan(300);
  for (const [, left, top, right, bottom] of edges) {
    expect(Number(left)).toBeGreaterThan(60);
    expect(Number(top)).toBeGreaterThan(20);
    expect(Number(right)).toBeLessThan(595.28 - 36);
    expect(Number(bottom)).toBeLessThan(841.89 - 12);
  }
});

test('a run nobody knows and a missing id are told in words', async () => {
  const { book } = w8();
  for (const [id, code] of [
    ['no-such-run', 'paper-no-such-run'],
    [undefined, 'paper-no-id'],
  ] as const) {
    const got = await printPaper(book.entries, 'Example battery', desksOf(book), 'run-sheet', id);
    expect(got.ok).toBe(false);
    if (got.ok) continue;
    expect(got.problems.map((p) => p.code)).toEqual([code]);
    expect(got.problems.map(problemText).join()).not.toContain('cannot be accepted');
  }
});
