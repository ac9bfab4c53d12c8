/** The codes on labels and tags as another program reads them: drawn into pictures of the printed pages, and read back from these alone. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { PaperName } from '../../app/contract.ts';
import { entryOfCode } from '../../app/core/entry-code.ts';
import { printPaper } from '../../main/host/print.ts';
import { desksOf } from './site-of-runs.ts';
import { stated, year } from './year.ts';

const reader = spawnSync('zbarimg', ['--version']).error === undefined;

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'codes-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function siteWithLots() {
  const { book, ids } = year();
  const lots = ['2', '3', '4'].map((n) => ({
    key: n,
    label: `Ball ${n}`,
    weight: stated('212.4', '0.1'),
    state: 'squeezed' as const,
  }));
  const cleanUp = book.add(
    'clean up of the codes',
    'clean-up',
    { type: 'routine', lots },
    { happened: '2026-06-01T09:00+12:00' },
  );
  return { book, ids, cleanUp };
}

/** Every code on the pages of a paper at so many dots an inch, as the reader says them. */
async function codesOn(name: PaperName, id: string, dpi: number): Promise<string[]> {
  const { book } = siteWithLots();
  const got = await printPaper(book.entries, 'Example battery', desksOf(book), name, id);
  if (!got.ok) throw new Error(JSON.stringify(got.problems));
  const begin = `${name}-${dpi}`;
  writeFileSync(join(folder, `${begin}.pdf`), got.value);
  // grey, as an ordinary office printer draws it
  execFileSync('pdftoppm', ['-gray', '-png', '-r', String(dpi), join(folder, `${begin}.pdf`), join(folder, begin)]);
  return readdirSync(folder)
    .filter((file) => file.startsWith(begin) && file.endsWith('.png'))
    .sort()
    .flatMap((file) => {
      const read = spawnSync('zbarimg', ['--quiet', '--raw', join(folder, file)], { encoding: 'utf8' });
      return read.stdout.split('\n').filter((line) => line !== '');
    });
}

test('each label’s code is read from its printed page by another program, and Find takes what it says', async ({ skip }) => {
  if (!reader) skip('zbarimg is not installed here');
  const { cleanUp, ids } = siteWithLots();
  for (const dpi of [150, 300]) {
    const lots = await codesOn('labels', 'lots', dpi);
    expect(lots.map(entryOfCode).filter((id) => id === cleanUp)).toHaveLength(3);
    expect(lots.every((code) => entryOfCode(code) !== null)).toBe(true);
    expect((await codesOn('labels', ids.bottle, dpi)).map(entryOfCode)).toEqual([ids.bottle]);
  }
}, 60_000);

test('the code on a retort tag is read from its printed page and names the charge', async ({ skip }) => {
  if (!reader) skip('zbarimg is not installed here');
  const { ids } = siteWithLots();
  expect((await codesOn('retort-tag', ids.charge, 150)).map(entryOfCode)).toEqual([ids.charge]);
}, 60_000);
