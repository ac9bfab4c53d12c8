/**
 * The Papers room on the sample site, from an empty home: each paper says what it is for, two are printed and read back by another program, and
 * an entry leads to its own paper with its subject chosen.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { paperNames } from '../../app/contract.ts';
import { accountOf } from '../../app/core/book/account.ts';
import { type Book, readBook } from '../../app/core/book/book.ts';
import { papersRoom } from '../../app/words/screens-papers.ts';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { axe, closeBrowser, type EmptyHome, openEmptyHome } from './empty-home.ts';
import { byKeyboard } from './hands.ts';

let home: EmptyHome;
let page: Page;
let folder = '';

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'papers-walk-'));
  home = await openEmptyHome();
  page = home.page;
  await byKeyboard(page).press(page.getByRole('button', { name: 'Open the sample site' }));
  await page.getByRole('navigation').getByRole('link', { name: 'Papers', exact: true }).click();
  await main().getByRole('heading', { level: 1, name: 'Papers' }).waitFor();
});
afterAll(async () => {
  await home?.close();
  await closeBrowser();
  if (folder !== '') rmSync(folder, { recursive: true, force: true });
});

const main = (): Locator => page.locator('main');
const leaf = (title: string): Locator => main().getByRole('region', { name: title, exact: true });

async function go(hash: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to;
  }, hash);
  await main().locator('h1').first().waitFor();
}

function bookOnDisk(): Book {
  const read = readDaybook(home.daybook());
  if (!read.ok) throw new Error('the sample on the disk cannot be read');
  return readBook(read.value.entries);
}

/** Prints by this button, and reads the file that comes back with another program. */
async function printed(button: Locator): Promise<{ name: string; text: string }> {
  const download = page.waitForEvent('download');
  await byKeyboard(page).press(button);
  const got = await download;
  const file = join(folder, 'printed.pdf');
  await got.saveAs(file);
  const text = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' })
    .replaceAll(/[\u00a0\u2007\u202f]/g, ' ')
    .replaceAll(/(?<=\d) (?=\d{3}(?:\.\d|\s))/g, '')
    .replaceAll(/ +/g, ' ');
  return { name: got.suggestedFilename(), text };
}

test('every paper is there with what it is for, and one without a subject says so', async () => {
  for (const name of paperNames) {
    const { title, purpose } = papersRoom.papers[name];
    await leaf(title).getByText(purpose).waitFor();
  }
  await leaf('Transfer sheet').getByRole('button').waitFor();
  // the same book without its transfers, as a site that has handed nothing over would have it
  await page.route('**/ask/entries', async (route) => {
    const answer = await route.fetch();
    const lines = (await answer.text()).split('\n').filter((line) => line !== '' && JSON.parse(line).kind !== 'transfer');
    await route.fulfill({ response: answer, body: `${lines.join('\n')}\n` });
  });
  await page.reload();
  await leaf('Transfer sheet').getByText('No transfer is written up yet.').waitFor();
  expect(await leaf('Transfer sheet').getByRole('button').count()).toBe(0);
  await page.unroute('**/ask/entries');
  await page.reload();
  await leaf('Transfer sheet').getByRole('button').waitFor();
});

test('a melt is chosen by its bars and printed: the sheet’s figures are those of its weights', async () => {
  const melt = leaf('Melt sheet');
  const button = melt.getByRole('button', { name: 'Print the melt sheet' });
  expect(await button.isDisabled()).toBe(true);
  await melt.getByText('Choose first what it is about.').waitFor();
  const reading = bookOnDisk().current.of('melt').at(-1);
  const bar = reading?.body.bars[0];
  await melt.getByLabel('Melt').selectOption(reading?.id ?? '');
  const { name, text } = await printed(button);
  const called = `melt-sheet-${reading?.happened.slice(0, 10)}-${bar?.label.replaceAll(' ', '-')}.pdf`;
  expect(name).toBe(called);
  expect(text).toContain(`Melt sheet`);
  expect(bar?.weight.how).toBe('scale');
  const gross = bar?.weight.how === 'scale' ? bar.weight.gross.replace(' g', '') : '';
  expect(text).toContain(`less bar ${bar?.label} ${gross} ±`);
  await melt.getByRole('link', { name: `Save ${called}` }).waitFor();
});

test('the account of a period is printed with the figures of the core', async () => {
  const account = leaf('Mercury account');
  await account.getByLabel('First day').fill('2025-07-01');
  await account.getByLabel('Last day').fill('2025-12-31');
  const { name, text } = await printed(account.getByRole('button', { name: 'Print the mercury account' }));
  expect(name).toBe('mercury-account-2025-07-01-2025-12-31.pdf');
  const { opening, closing, unaccounted } = accountOf(bookOnDisk(), { from: '2025-07-01', to: '2025-12-31' });
  const grams = (ug: number) => (Math.round(ug / 1e4) / 100).toFixed(2).replace('-', '−');
  expect(text).toContain('1 July 2025 to 31 December 2025');
  expect(text).toContain(`Opening stock ${grams(opening.ug)} ±`);
  expect(text).toContain(`less closing stock ${grams(closing.ug)} ±`);
  expect(text).toContain(`Not accounted for ${grams(unaccounted.ug)} ±`);
});

test('a period that ends before it begins is told in words, and nothing is handed on', async () => {
  const account = leaf('Mercury account');
  await account.getByLabel('Last day').fill('2025-06-01');
  await account.getByRole('button', { name: 'Print the mercury account' }).click();
  await account.getByText('before it begins').waitFor();
  expect(await account.getByRole('link').count()).toBe(0);
});

test('an entry leads to its own paper, chosen and ready', async () => {
  for (const [kind, button, title] of [
    ['spill', 'Print its sheet', 'Incident sheet'],
    ['charge', 'Print its tag', 'Retort tag'],
  ] as const) {
    const { id = '', happened = '' } = bookOnDisk().current.of(kind)[0] ?? {};
    await go(`#/daybook/${id}`);
    await main().getByRole('link', { name: button }).click();
    await main().getByRole('heading', { level: 1, name: 'Papers' }).waitFor();
    expect(await leaf(title).locator('select').inputValue()).toBe(id);
    const { name, text } = await printed(leaf(title).getByRole('button', { name: /^Print/ }));
    expect(name).toMatch(new RegExp(`^[a-z]+-[a-z]+-${happened.slice(0, 10)}-.+\\.pdf$`));
    expect(text).toContain(id);
  }
});

test('whoever is outside is told how to check the record without this program', async () => {
  const outside = leaf('For somebody outside');
  await outside.getByText('daybook check FOLDER').waitFor();
  await outside.getByText('daybook export FOLDER --out NEW-FOLDER').waitFor();
  await outside.getByText(home.daybook()).waitFor();
});

test('axe finds nothing in both themes, and no page is wider than a window at 200 %', async () => {
  const melt = bookOnDisk().current.of('melt')[0]?.id ?? '';
  const found: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    for (const hash of ['#/papers', `#/papers/melt-sheet/${melt}`]) {
      await go(hash);
      found.push(...(await axe(page)).map((fault) => `${colorScheme} ${hash}: ${fault}`));
    }
  }
  expect(found).toEqual([]);
  await page.setViewportSize({ width: 640, height: 400 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth)).toBe(false);
  expect(home.faults).toEqual([]);
});
