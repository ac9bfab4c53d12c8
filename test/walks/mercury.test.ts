/**
 * The sample site walked from an empty home: the account on the screen is the core's, its figures lead to their entries, every page that writes an
 * entry is free of what axe finds, and a year's entries can be written by keyboard alone.
 */
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { accountOf, levelOf, type Period } from '../../app/core/book/account.ts';
import { type Book, readBook } from '../../app/core/book/book.ts';
import { flowOf } from '../../app/core/book/flow.ts';
import { uOf } from '../../app/core/measured.ts';
import { plainKinds } from '../../app/screens/daybook/write/routes.ts';
import { bandHref } from '../../app/screens/mercury/address.ts';
import { figureOf } from '../../app/screens/mercury/figures.ts';
import { accountWords } from '../../app/words/account.ts';
import { drawnFlow, flowEnds, flowWords, stillSentence } from '../../app/words/flow.ts';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { buildOnce } from '../terminal/built.ts';
import { axe, closeBrowser, type EmptyHome, openEmptyHome } from './empty-home.ts';
import { byKeyboard } from './hands.ts';

let home: EmptyHome;
let page: Page;

beforeAll(async () => {
  buildOnce();
  home = await openEmptyHome();
  page = home.page;
});
afterAll(async () => {
  await home?.close();
  await closeBrowser();
});

const main = (): Locator => page.locator('main');

async function go(hash: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to;
  }, hash);
  await main().locator('h1').first().waitFor();
}

/** What axe finds on these pages in both themes. */
async function faults(hashes: readonly string[]): Promise<string[]> {
  const found: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    for (const hash of hashes) {
      await go(hash);
      found.push(...(await axe(page)).map((fault) => `${colorScheme} ${hash}: ${fault}`));
    }
  }
  await page.emulateMedia({ colorScheme: 'light' });
  return found;
}

function bookOnDisk(): Book {
  const read = readDaybook(home.daybook());
  if (!read.ok) throw new Error('the sample on the disk cannot be read');
  return readBook(read.value.entries);
}

/** A cell without the unseen digits that align it. */
const cell = (row: Locator, n: number): Promise<string> =>
  row
    .locator('th, td')
    .nth(n)
    .evaluate((element) => {
      const copy = element.cloneNode(true) as HTMLElement;
      for (const tail of copy.querySelectorAll('.tail')) tail.remove();
      return (copy.textContent ?? '').trim();
    });

/** The account as the page shows it: line, grams, ± U. */
async function shownAccount(): Promise<string[][]> {
  const table = main().getByRole('table', { name: 'Account of a period' });
  const rows = await table.locator('tbody > tr:not(.working)').all();
  return Promise.all(rows.map((row) => Promise.all([cell(row, 0), cell(row, 1), cell(row, 2)])));
}

function accountRows(book: Book, period: Period): string[][] {
  const account = accountOf(book, period);
  const keys = ['opening', 'receipts', 'invoiced', 'found', 'removals', 'released', 'closing', 'unaccounted'] as const;
  const told = keys.filter((key) => key !== 'invoiced' || Math.round(account.invoiced.ug) !== 0);
  return told.map((key) => {
    const { value, U } = figureOf(account[key]);
    return [accountWords.rows[key], value, U];
  });
}

describe('the sample site', () => {
  test('is offered on the start page, opened by keyboard, and has something to tell in every room', async () => {
    expect(await axe(page)).toEqual([]);
    await byKeyboard(page).press(page.getByRole('button', { name: 'Open the sample site' }));
    await page.getByRole('navigation').getByRole('link', { name: 'Mercury', exact: true }).waitFor({ timeout: 90_000 });
    expect(bookOnDisk().entries.length).toBeGreaterThan(100);
  });
});

describe('the account on the screen', () => {
  test('is the core’s, line for line', async () => {
    await go('#/mercury/account/whole');
    expect(await shownAccount()).toEqual(accountRows(bookOnDisk(), { from: null, to: null }));
    const { unaccounted } = accountOf(bookOnDisk(), { from: null, to: null });
    const z = unaccounted.ug / uOf(unaccounted);
    await main()
      .getByText(`|z| = ${Math.abs(z).toFixed(2)}`)
      .first()
      .waitFor();
    await main().getByText(accountWords.loss[levelOf(z)]).waitFor();
    await main().getByText(accountWords.notTheAir).waitFor();
  });

  test('of a period stands in the address and is the core’s as well', async () => {
    await main().getByLabel('Period', { exact: true }).selectOption({ label: 'Days of your own choice' });
    await main().getByLabel('First day').fill('2025-07-01');
    await main().getByLabel('Last day').fill('2025-12-31');
    await main().getByRole('button', { name: 'Show this period' }).click();
    await page.waitForURL(/from=2025-07-01\/to=2025-12-31/);
    const half = accountRows(bookOnDisk(), { from: '2025-07-01', to: '2025-12-31' });
    await expect.poll(shownAccount).toEqual(half);
    await page.reload();
    await main().locator('h1').first().waitFor();
    expect(await shownAccount()).toEqual(half);
    await go('#/mercury/from=2025-12-31/to=2025-07-01');
    await main().getByText('before it begins').waitFor();
    expect(await main().getByRole('table', { name: 'Account of a period' }).count()).toBe(0);
  });

  test('opens a figure to its movements, and a movement to its entry', async () => {
    await go('#/mercury/stocks');
    const hand = byKeyboard(page);
    const how = main().getByRole('button', { name: 'Working · Working bottle' });
    await hand.press(how);
    expect(await how.getAttribute('aria-expanded')).toBe('true');
    await main()
      .getByRole('link', { name: /^2 June 2026: traps/ })
      .click();
    await main().getByRole('heading', { level: 1 }).filter({ hasText: 'Return' }).waitFor();
    await go('#/mercury/stocks');
    await main().getByRole('link', { name: 'Working bottle', exact: true }).first().click();
    await main().getByRole('heading', { level: 1, name: 'Working bottle' }).waitFor();
    await main().getByLabel('Only of the place').selectOption({ label: 'Strained jar' });
    await main().getByRole('heading', { level: 1, name: 'Strained jar' }).waitFor();
  });
});

describe('the flow drawing', () => {
  const bands = () => main().getByRole('group', { name: flowWords.drawing }).getByRole('link');

  test('has a link for every band of the core’s flow, told in words as it gets the focus, and opens to its movements', async () => {
    await go('#/mercury/from=2025-07-01/to=2025-12-31');
    const flow = flowOf(bookOnDisk(), { from: '2025-07-01', to: '2025-12-31' });
    const drawn = drawnFlow(flow);
    await expect.poll(() => bands().count()).toBe(drawn.runs.length);
    expect(await bands().evaluateAll((all) => all.map((a) => a.getAttribute('aria-label')))).toEqual(
      drawn.runs.map((r) => r.text),
    );
    const table = main().getByRole('table', { name: flowWords.table });
    expect(await table.locator('tbody tr').count()).toBe(flow.bands.length + flow.still.length);
    await main().getByText(stillSentence(flow)).waitFor();
    await bands().first().focus();
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowLeft', 'Tab']) await page.keyboard.press(key);
    await main()
      .locator('figcaption')
      .getByText(drawn.runs[2]?.text ?? '')
      .waitFor();
    await page.keyboard.press('Enter');
    const band = flow.bands[2];
    if (!band) throw new Error('the sample has no third band');
    await main()
      .getByRole('heading', { level: 1, name: flowWords.whatBand(...flowEnds(flow, band)) })
      .waitFor();
    expect(await main().getByRole('table').locator('tbody tr').count()).toBe(Math.min(100, band.movements.length));
    await main().getByRole('link', { name: 'To the room Mercury' }).click();
    await expect.poll(() => bands().count()).toBe(drawn.runs.length);
  });

  test('and is free of what axe finds, drawing, band and wrong band', async () => {
    const href = bandHref('through.vessels>through.circuit', { from: '', to: '' });
    expect(await faults(['#/mercury/from=2025-07-01/to=2025-12-31', href, bandHref('nowhere', { from: '', to: '' })])).toEqual(
      [],
    );
  });
});

describe('writing up', () => {
  test('is reached from Today, each kind with a line that says when it is wanted', async () => {
    await go('#/today');
    const hand = byKeyboard(page);
    await hand.press(main().locator('summary', { hasText: 'More to write up' }));
    await hand.press(main().getByRole('link', { name: 'Spill', exact: true }));
    await main().getByText('Never a vacuum cleaner').waitFor();
    await main().getByText('How it was cleaned up, Who was told, Remark: not recorded').waitFor();
  });

  test('a scale check by keyboard alone is read back and kept', async () => {
    await go('#/daybook/write/scale-check');
    const hand = byKeyboard(page);
    await hand.pick(main().getByRole('combobox', { name: 'Scale', exact: true }), 'Bench scale');
    await hand.write(main().getByRole('textbox', { name: 'Check weight' }), '200');
    await hand.write(main().getByRole('textbox', { name: 'What the scale showed' }), '200.01');
    await hand.choose(main().getByRole('radiogroup', { name: 'Within the site’s own limit' }), 'Yes');
    await main()
      .getByText(/Bench scale showed 200.01\sg for 200\sg: within the site’s own limit/)
      .waitFor();
    await hand.press(main().getByRole('button', { name: 'Keeper', exact: true }));
    await hand.press(main().getByRole('button', { name: 'Keep', exact: true }));
    await main()
      .getByText(/^Kept · entry/)
      .waitFor();
    expect(bookOnDisk().current.of('scale-check').at(-1)?.body).toMatchObject({
      standard: '200 g',
      read: '200.01 g',
      passed: 'yes',
    });
  });

  test('rows of a list are added and taken out by keyboard, and the focus goes with them', async () => {
    await go('#/daybook/write/squeeze');
    const hand = byKeyboard(page);
    await hand.press(main().getByRole('button', { name: 'Add: Lot' }));
    const labels = main().getByRole('textbox', { name: 'Label', exact: true });
    expect(await labels.count()).toBe(2);
    expect(await labels.nth(1).evaluate((element) => element === document.activeElement)).toBe(true);
    await page.keyboard.type('S 2');
    await hand.press(main().getByRole('button', { name: 'Take out: Lot 2 · S 2' }));
    expect(await labels.count()).toBe(1);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Add: Lot');
  });

  test('a draft survives the page, and is taken up from Today', async () => {
    await go('#/daybook/write/incident');
    await main().getByLabel('What happened').fill('A glass bottle cracked on the bench.');
    await go('#/today');
    await main()
      .getByRole('link', { name: /^Incident, last touched/ })
      .click();
    await expect.poll(() => main().getByLabel('What happened').inputValue()).toBe('A glass bottle cracked on the bench.');
  });

  test('a stock-take is kept only when every place is answered, and what could not be counted comes first in the account', async () => {
    await go('#/daybook/write/stock-take');
    const places = await main().getByRole('radiogroup', { name: 'Answer', exact: true }).all();
    expect(places.length).toBe(9);
    for (const place of places.slice(1)) await place.getByRole('radio', { name: 'Could not be counted' }).check();
    for (const why of await main().getByRole('textbox', { name: 'Why not' }).all()) await why.fill('the store was locked');
    await main().getByRole('button', { name: 'Keep', exact: true }).click();
    await main().getByText('One thing is not right yet.').waitFor();
    await main().getByText('1 place is not answered yet.').waitFor();
    await places[0]?.getByRole('radio', { name: 'Sealed, and the seal stands' }).check();
    await main().getByRole('textbox', { name: 'Seal number' }).first().fill('A 4411');
    await main().getByRole('button', { name: 'Keep', exact: true }).click();
    await main()
      .getByText(/^Kept · entry/)
      .waitFor();
    await go('#/mercury/account/whole');
    await main().getByText(accountWords.reservations).waitFor();
    expect(
      await main()
        .getByText(/could not be counted: the store was locked\./)
        .count(),
    ).toBeGreaterThan(0);
    expect(await shownAccount()).toEqual(accountRows(bookOnDisk(), { from: null, to: null }));
  });

  test('a battery is entered and stated anew in the Site room', async () => {
    await go('#/site/battery');
    await main().getByRole('button', { name: 'Enter a battery' }).click();
    await main().getByLabel('Name of the battery').fill('Battery 9');
    await main().getByRole('button', { name: 'Keep', exact: true }).click();
    await main()
      .getByText(/^Kept · entry/)
      .waitFor();
    await main().getByRole('link', { name: 'Battery 9' }).click();
    await main().getByRole('button', { name: 'Enter a change' }).click();
    expect(await main().getByLabel('Name of the battery').inputValue()).toBe('Battery 9');
  });
});

describe('axe', () => {
  test('finds nothing on any page of the room, with its workings open', async () => {
    expect(
      await faults([
        '#/mercury',
        '#/mercury/stocks',
        '#/mercury/account',
        '#/mercury/yields',
        '#/mercury/movements',
        '#/mercury/place/circuit%3Aplates',
        '#/mercury/place/nowhere',
      ]),
    ).toEqual([]);
    for (const hash of ['#/mercury/stocks', '#/mercury/account/whole']) {
      await go(hash);
      for (const button of await main()
        .getByRole('button', { name: /^Working/ })
        .all())
        await button.click();
      expect(await axe(page)).toEqual([]);
    }
  });

  test('finds nothing on any page that writes an entry', async () => {
    expect(
      await faults(['#/daybook/write', ...plainKinds.map((kind) => `#/daybook/write/${kind}`), '#/site', '#/today']),
    ).toEqual([]);
  });

  test('and no page is wider than a window at 200 %', async () => {
    await page.setViewportSize({ width: 640, height: 400 });
    const wide: string[] = [];
    const pages = [
      '#/mercury',
      '#/mercury/stocks',
      '#/mercury/account',
      '#/mercury/movements',
      '#/daybook/write',
      ...plainKinds.map((kind) => `#/daybook/write/${kind}`),
    ];
    for (const hash of pages) {
      await go(hash);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      if (over > 0) wide.push(`${hash}: ${over}`);
    }
    await page.setViewportSize({ width: 1280, height: 800 });
    expect(wide).toEqual([]);
  });

  test('and no page met an error', () => {
    expect(home.faults).toEqual([]);
  });
});
