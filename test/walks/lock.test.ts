/** The window is locked with something half written, refuses a wrong passphrase, and opens by keyboard where it was left. All invented. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { noteHref } from '../../app/screens/daybook/hrefs.ts';
import { keysHref, seesHref } from '../../app/screens/shared/places.ts';
import { lockWords, seesWords } from '../../app/words/screens-lock.ts';
import { shell } from '../../app/words/screens-shell.ts';
import { keysWords } from '../../app/words/signatures.ts';
import { keeper } from '../host/drafts.ts';
import { byKeyboard } from './hands.ts';
import { plainInBoth } from './looked-at.ts';
import { openWalk, type WalkedWindow } from './window.ts';

const secret = 'three stamps and a cam';
let walk: WalkedWindow;
beforeAll(async () => {
  walk = await openWalk('Example Battery');
});
afterAll(() => walk?.close());

test('without a passphrase it is covered, and goes on by one key', async () => {
  const { page } = walk;
  await walk.keep([keeper]);
  await walk.go(seesHref);
  await page.getByRole('heading', { name: seesWords.title }).waitFor();
  await page.getByRole('button', { name: lockWords.button, exact: true }).click();
  await page.getByText(lockWords.noneSet).waitFor();
  expect(await page.getByRole('heading', { name: seesWords.title }).count()).toBe(0);
  // the button has the focus already
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: seesWords.title }).waitFor();
});

test('a passphrase is set, the window locks with a draft in it, and opens again by keyboard alone', async () => {
  const { page } = walk;
  const hand = byKeyboard(page);
  const name = String(keeper.body.name);
  await page.getByLabel(seesWords.whose).selectOption({ label: name });
  await page.getByLabel(seesWords.after).fill(secret);
  await page.getByLabel(seesWords.again).fill('something else');
  await page.getByRole('button', { name: seesWords.setIt }).click();
  await page.getByText(seesWords.differ).waitFor();
  await page.getByLabel(seesWords.again).fill(secret);
  await page.getByRole('button', { name: seesWords.setIt }).click();
  await page.getByText(seesWords.done.set).waitFor();
  await plainInBoth(walk, 'sees');

  await walk.go(noteHref);
  await page.locator('main textarea').first().fill('half a sentence about the');
  await page.getByRole('button', { name: lockWords.button, exact: true }).click();
  const field = page.getByLabel(lockWords.passphrase);
  await field.waitFor();
  await page.waitForFunction(async () => {
    const asked = { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{}' };
    return (await fetch('/ask/entries', asked)).status !== 200;
  });
  await plainInBoth(walk, 'locked');
  await hand.write(field, 'three stamps and a can');
  await page.keyboard.press('Enter');
  await page.getByText('This is not the passphrase').waitFor();
  expect(await field.getAttribute('aria-invalid')).toBe('true');
  expect(await page.locator('main textarea').count()).toBe(0);
  await plainInBoth(walk, 'refused');
  await hand.write(field, secret);
  await page.keyboard.press('Enter');
  await page.locator('main textarea').first().waitFor();
  await expect.poll(() => page.locator('main textarea').first().inputValue()).toBe('half a sentence about the');
  expect(await page.getByRole('button', { name }).count()).toBe(1);
});

test('the page of keys says that nothing is signed yet, and locks by itself after its time', async () => {
  const { page } = walk;
  await walk.go(keysHref);
  await page.getByText(keysWords.none).waitFor();
  await plainInBoth(walk, 'keys');
  // a clock of the page that runs ahead stands for the minute
  await walk.go(seesHref);
  await page.getByLabel(seesWords.idleLabel).selectOption({ label: seesWords.idleOf(1) });
  await page.getByText(seesWords.done.idle).waitFor();
  await page.evaluate(() => {
    const before = performance.now.bind(performance);
    performance.now = () => before() + 61_000;
  });
  await page.getByText(lockWords.locked('Example Battery')).waitFor();
  await page.getByLabel(lockWords.passphrase).fill(secret);
  await page.getByRole('button', { name: lockWords.open }).click();
  await page.getByRole('navigation', { name: shell.index }).waitFor();
  // what was asked of the locked host is refused, and said so in the browser’s own log
  expect(walk.errors.filter((text) => !/423|Failed to load/.test(text))).toEqual([]);
});
