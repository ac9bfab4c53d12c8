/**
 * A new daybook with nothing in it: the first steps can each be left for later and taken up again, by keyboard, and every room says what it is for or what
 * to do next and leads there. Pictures are taken where WALK_PICTURES names a folder.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { plainHref, writeHref } from '../../app/screens/daybook/write/routes.ts';
import { kindNames } from '../../app/words/labels.ts';
import { shell } from '../../app/words/screens-shell.ts';
import { todayWords } from '../../app/words/today.ts';
import { writeUp } from '../../app/words/write-up.ts';
import { axe, closeBrowser, type EmptyHome, openEmptyHome } from './empty-home.ts';
import { byKeyboard } from './hands.ts';
import { pictured as lookedAt } from './looked-at.ts';
import { makeDaybook } from './run-steps.ts';

let home: EmptyHome;
beforeAll(async () => {
  home = await openEmptyHome();
  await makeDaybook(home.page, byKeyboard(home.page));
}, 60_000);
afterAll(async () => {
  await home?.close();
  await closeBrowser();
});

/** Takes the page's pictures, where they are asked for. */
const pictured = (name: string) =>
  lookedAt({ page: home.page, theme: (colorScheme) => home.page.emulateMedia({ colorScheme }) }, name);
const main = () => home.page.locator('main');

test('each first step can be left for later, is told as such after a reload, and taken up again', async () => {
  const { page } = home;
  const hand = byKeyboard(page);
  const skips = () => main().getByRole('button', { name: new RegExp(`^${todayWords.skip}`) });
  const later = () => main().getByRole('button', { name: new RegExp(`^${todayWords.takeUpAgain}`) });
  await skips().first().waitFor();
  await pictured('empty-first-steps');
  const all = await skips().count();
  expect(all).toBeGreaterThan(4);
  const first = await main().locator('.next a').first().textContent();
  for (let left = all; left > 0; left--) {
    await hand.press(skips().first());
    await expect.poll(() => skips().count()).toBe(left - 1);
    // the keyboard stays where it was and is not sent back to the head of the page
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('BUTTON');
  }
  expect(await later().count()).toBe(all);
  // what is next is no longer a step that was left
  expect(await main().locator('.next a').first().textContent()).not.toBe(first);
  await page.reload();
  await later().first().waitFor();
  expect([await later().count(), await skips().count()]).toEqual([all, 0]);
  await pictured('empty-all-left');
  expect(await axe(page)).toEqual([]);
  await hand.press(later().first());
  await expect.poll(() => skips().count()).toBe(1);
  expect(await main().locator('.next a').first().textContent()).toBe(first);
  expect(home.journalLines()).toBe(0);
});

const addresses = {
  ...Object.fromEntries(
    (['today', 'daybook', 'mercury', 'retort', 'bullion', 'air', 'site', 'papers'] as const).map((r) => [r, r]),
  ),
  find: 'find',
  words: 'words',
  workings: 'workings',
  'mercury account': 'mercury/account',
  'mercury periods': 'mercury/periods',
  'out of step': 'mercury/out-of-step',
  yields: 'bullion/yields',
};

for (const [name, hash] of Object.entries(addresses))
  test(`with nothing written, ${name} says what it is for and leads on`, async () => {
    const { page } = home;
    await page.evaluate((to) => {
      location.hash = `#/${to}`;
    }, hash);
    await main().getByRole('heading', { level: 1 }).first().waitFor();
    const said = async () =>
      (await main().getByRole('paragraph').or(main().getByRole('region')).allTextContents()).join(' ').length;
    await expect.poll(said).toBeGreaterThan(40);
    const ways = main().getByRole('link').or(main().getByRole('button')).or(main().getByRole('textbox'));
    expect(await ways.count()).toBeGreaterThan(0);
    await pictured(`empty-${name.replaceAll(' ', '-')}`);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await axe(page)).toEqual([]);
    }
    expect(home.faults).toEqual([]);
  });

test('the general page of a kind that has a form of its own leads to it', async () => {
  const { page } = home;
  for (const kind of ['melt', 'assay', 'air-reading'] as const) {
    await page.evaluate((to) => {
      location.hash = to;
    }, plainHref(kind));
    await main().getByRole('heading', { level: 1, name: kindNames[kind] }).waitFor();
    expect(await main().getByRole('link', { name: writeUp.toOwnForm }).getAttribute('href')).toBe(writeHref(kind));
    expect(await axe(page)).toEqual([]);
  }
  await page.evaluate((to) => {
    location.hash = to;
  }, plainHref('incident'));
  await main().getByRole('heading', { level: 1, name: kindNames.incident }).waitFor();
  expect(await main().getByRole('link', { name: writeUp.toOwnForm }).count()).toBe(0);
});

test('every room of the index was visited', () => {
  expect(Object.keys(addresses)).toEqual(expect.arrayContaining(Object.keys(shell.rooms)));
});
