/**
 * An invented old book is taken in at the window by keyboard: pasted, its columns placed, a fault named and mended, all rows kept; axe in both themes.
 */
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { importPage as words } from '../../app/words/screens-import.ts';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { axe, closeBrowser, type EmptyHome, openEmptyHome } from './empty-home.ts';
import { byKeyboard } from './hands.ts';
import { makeDaybook } from './run-steps.ts';

let home: EmptyHome;
let page: Page;

beforeAll(async () => {
  home = await openEmptyHome();
  page = home.page;
  const hand = byKeyboard(page);
  await makeDaybook(page, hand, 'Test Battery');
});
afterAll(async () => {
  await home?.close();
  await closeBrowser();
});

/** Pictures are kept where the folder for them is named, for a person to look at. */
const picture = (name: string) =>
  process.env.DAYBOOK_PICTURES ? { path: `${process.env.DAYBOOK_PICTURES}/${name}.png`, fullPage: true } : {};

const main = (): Locator => page.locator('main');
const entries = () => {
  const read = readDaybook(home.daybook());
  if (!read.ok) throw new Error('the daybook on the disk cannot be read');
  return read.value.entries;
};

test('a pasted table is placed, its fault is named by row and column, and once mended all of it is kept', async () => {
  const hand = byKeyboard(page);
  await page.evaluate(() => {
    location.hash = '#/daybook/import';
  });
  await main().getByRole('heading', { level: 1, name: words.title }).waitFor();
  const before = entries().length;
  await hand.pick(main().getByLabel(words.kind), 'Note');
  const paste = main().getByLabel(words.paste);
  const table = (day: string) => `Date;What was written;Folio\n04/03/1898;Plates "dressed" twice;17\n${day};=SUM(A1);17\n`;
  await hand.write(paste, table('31/02/1898'));
  await hand.pick(main().getByLabel(words.field('Date'), { exact: true }), 'happened');
  await hand.pick(main().getByLabel(words.days('Date')), words.dayForms['day-month-year']);
  await hand.pick(main().getByLabel(words.field('What was written'), { exact: true }), 'text');
  await hand.pick(main().getByLabel(words.field('Folio'), { exact: true }), 'transcribed.page');
  await hand.write(main().getByLabel(words.book), 'Invented book 3');
  await main().getByText('row 3, column "Date"').first().waitFor();
  expect(await axe(page)).toEqual([]);
  await hand.press(main().getByRole('button', { name: words.keep(2) }));
  await main().getByText(words.faults(1)).waitFor();
  expect(entries()).toHaveLength(before);

  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await axe(page)).toEqual([]);
  await page.screenshot(picture('faults-dark'));
  await page.emulateMedia({ colorScheme: 'light' });

  await hand.write(paste, table('05/03/1898'));
  await hand.pick(main().getByLabel(words.field('Date'), { exact: true }), 'happened');
  await hand.pick(main().getByLabel(words.days('Date')), words.dayForms['day-month-year']);
  await hand.pick(main().getByLabel(words.field('What was written'), { exact: true }), 'text');
  await hand.pick(main().getByLabel(words.field('Folio'), { exact: true }), 'transcribed.page');
  await hand.press(main().getByRole('button', { name: words.keep(2) }));
  await main().getByText('2 entries are kept.').waitFor();
  expect(await axe(page)).toEqual([]);
  await page.screenshot(picture('kept-light'));
  const kept = entries().filter(({ imported }) => imported);
  expect(entries()).toHaveLength(before + 2);
  expect(kept.map(({ happened, timing, body, transcribed }) => [happened.slice(0, 10), timing, body.text, transcribed])).toEqual([
    ['1898-03-04', 'day', 'Plates "dressed" twice', { book: 'Invented book 3', page: '17' }],
    ['1898-03-05', 'day', '=SUM(A1)', { book: 'Invented book 3', page: '17' }],
  ]);
  expect(kept[1]?.imported?.cells[0]).toEqual({ column: 'Date', text: '05/03/1898' });

  await hand.press(main().getByRole('button', { name: words.keep(2) }));
  await main().getByText(words.before(2)).waitFor();
  expect(entries()).toHaveLength(before + 2);
}, 120_000);
