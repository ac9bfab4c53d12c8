/**
 * Invented old books are taken in at the window, the first by keyboard: pasted, their columns placed, faults named and mended, all rows kept; axe in both themes.
 */
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { problem } from '../../app/core/result.ts';
import { problemText } from '../../app/words/problems.ts';
import { importPage as words } from '../../app/words/screens-import.ts';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { BookMaker } from '../core/book-maker.ts';
import { faults, oldHeadings, oldMapping, oldRows, separated } from '../core/old-book.ts';
import { axe, closeBrowser, type EmptyHome, openEmptyHome } from './empty-home.ts';
import { byKeyboard, byMouse } from './hands.ts';
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

/** A picture of one point. */
const pixel = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);

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
  await hand.pick(main().getByLabel(words.field('Date'), { exact: true }), words.fieldName('happened'));
  await hand.pick(main().getByLabel(words.days('Date')), words.dayForms['day-month-year']);
  await hand.pick(main().getByLabel(words.field('What was written'), { exact: true }), words.fieldName('body.text'));
  await hand.pick(main().getByLabel(words.field('Folio'), { exact: true }), words.fieldName('transcribed.page'));
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

  // what was said of the columns stands when the table is pasted again
  await hand.write(paste, table('05/03/1898'));
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

/** Keeps what the old book's names need: its hands and the bottle it was poured into. */
async function namesOfTheOldBook(): Promise<void> {
  const book = BookMaker.site();
  book.add('helper', 'person', { name: 'Helper', roles: ['helper'] });
  const needed = book.entries.filter(({ kind }) => kind === 'person' || kind === 'vessel');
  const answers = await page.evaluate(
    async (drafts) => {
      const said: string[] = [];
      for (const draft of drafts) {
        const body = JSON.stringify(draft);
        const answer = await fetch('/ask/keep', { method: 'POST', headers: { 'content-type': 'application/json' }, body });
        said.push((await answer.text()).slice(0, 10));
      }
      return said;
    },
    needed.map(({ id, kind, happened, by, body }) => ({ id, kind, happened, by, body })),
  );
  expect(answers).toEqual(needed.map(() => '{"ok":true'));
  await page.reload();
  await main().locator('h1').first().waitFor();
}

/** Pastes, as the clipboard would: what stood there gives way at once. */
async function pasted(text: string): Promise<void> {
  const paste = main().getByLabel(words.paste);
  await paste.focus();
  await page.keyboard.press('Control+A');
  await page.keyboard.insertText(text);
}

test('of an invented old book of 500 rows each of seven planted faults is named by row and column, and once mended all 500 are kept', async () => {
  // by mouse, for speed: the walk above places columns by keyboard
  const hand = byMouse(page);
  await namesOfTheOldBook();
  await page.evaluate(() => {
    location.hash = '#/daybook/import';
  });
  await main().getByRole('heading', { level: 1, name: words.title }).waitFor();
  const before = entries().length;
  await hand.pick(main().getByLabel(words.kind), 'Clean-up');
  await pasted(separated(oldRows(true), '\t'));
  for (const said of oldMapping.columns) {
    const path = said.field.replace(/weight$/, 'weight.mass');
    const whole = path === 'page' ? 'transcribed.page' : ['happened', 'by'].includes(path) ? path : `body.${path}`;
    await hand.pick(main().getByLabel(words.field(said.column), { exact: true }), words.fieldName(whole));
    // the ounce and the ton are asked once for a column
    if ('unit' in said)
      await hand.pick(main().getByLabel(words.unit(said.column), { exact: true }), words.units[said.unit] ?? said.unit);
    if ('decimal' in said) await hand.pick(main().getByLabel(words.decimal(said.column)), words.decimals[said.decimal]);
    if ('days' in said) await hand.pick(main().getByLabel(words.days(said.column)), words.dayForms[said.days]);
  }
  await hand.write(main().getByLabel(words.book), 'Battery book 3 (invented)');
  // a picture called after a page goes with the rows of that page, one without goes with all, one that is none is refused by its name
  await main()
    .getByLabel(words.picture)
    .setInputFiles([
      { name: 'page 1.png', mimeType: 'image/png', buffer: pixel },
      { name: 'cover.png', mimeType: 'image/png', buffer: Buffer.concat([pixel, Buffer.from('cover')]) },
      { name: 'notes.png', mimeType: 'image/png', buffer: Buffer.from('no picture') },
    ]);
  const pageOf = (name: string) => main().getByLabel(words.pageOf(name), { exact: true });
  await main()
    .getByText(problemText(problem('evidence-kind', '')))
    .waitFor();
  expect(await main().locator('strong').allTextContents()).toContain('notes.png');
  expect([await pageOf('page 1.png').inputValue(), await pageOf('cover.png').inputValue()]).toEqual(['1', '']);
  const ofPageOne = oldRows(true).filter((row) => row[oldHeadings.indexOf('Folio')] === '1').length;
  await main().getByText(words.goesWith('1', ofPageOne)).waitFor();
  await hand.write(pageOf('cover.png'), 'none such');
  await main().getByText(words.goesWith('none such', 0)).waitFor();
  await pageOf('cover.png').clear();
  await main().getByText(words.goesWith('', 500)).waitFor();
  expect(await axe(page)).toEqual([]);
  await page.screenshot(picture('pictures-by-page'));
  await hand.press(main().getByRole('button', { name: words.keep(500) }));
  await main().getByText(words.faults(7)).waitFor({ timeout: 60_000 });
  const told = await main().getByRole('listitem').locator('strong').allTextContents();
  expect(told.map((place) => place.replace(/ \(line \d+\)/, ''))).toEqual(
    faults.map(({ row, column }) => `row ${row + 2}, column "${column}"`),
  );
  expect(entries()).toHaveLength(before);
  for (const colorScheme of ['dark', 'light'] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await axe(page)).toEqual([]);
    await page.screenshot(picture(`seven-faults-${colorScheme}`));
  }

  await pasted(separated(oldRows(false), '\t'));
  await hand.press(main().getByRole('button', { name: words.keep(500) }));
  await main().getByText('500 entries are kept.').waitFor({ timeout: 60_000 });
  expect(entries()).toHaveLength(before + 500);
  const fifth = entries().find(({ imported }) => imported?.row === 6 && imported.of === 500);
  expect(fifth?.body.lots).toMatchObject([{ label: 'Ball 5', weight: { how: 'stated', mass: '9 ozt 5 dwt' } }]);
  expect(fifth?.imported?.cells[2]).toEqual({ column: 'Amalgam', text: '9 oz. 5 dwts.' });
  expect(fifth?.transcribed).toEqual({ book: 'Battery book 3 (invented)', page: '1' });
  const files = entries()
    .filter(({ imported }) => imported?.of === 500)
    .map(({ transcribed, evidence }) => [transcribed?.page === '1', evidence?.length]);
  expect(files.filter(([first]) => first)).toHaveLength(20);
  expect(files.every(([first, kept]) => kept === (first ? 2 : 1))).toBe(true);
}, 300_000);
