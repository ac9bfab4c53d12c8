/**
 * A long paper in the window, by keyboard: it says how far it is, it can be stopped, then no file is there and the reason is told, and the next one
 * prints as if nothing had been. The book is generated: some two thousand runs.
 */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { problem } from '../../app/core/result.ts';
import { problemText } from '../../app/words/problems.ts';
import { papersRoom as words } from '../../app/words/screens-papers.ts';
import { axe, closeBrowser, command, type EmptyHome, openEmptyHome } from './empty-home.ts';
import { byKeyboard } from './hands.ts';

let home: EmptyHome;
beforeAll(async () => {
  home = await openEmptyHome(undefined, (folder) => {
    const book = join(folder, 'long-book');
    const made = spawnSync(process.execPath, [command, 'sample', book, '--entries', '10000'], { encoding: 'utf8' });
    if (made.status !== 0) throw new Error(made.stderr);
    return book;
  });
}, 120_000);
afterAll(async () => {
  await home?.close();
  await closeBrowser();
});

test('a long statement tells how far it is, is stopped by keyboard without a file, and prints when asked again', {
  timeout: 240_000,
}, async () => {
  const { page } = home;
  const hand = byKeyboard(page);
  await page.evaluate(() => {
    location.hash = '#/papers';
  });
  const leaf = page.locator('main').getByRole('region', { name: words.papers['mercury-account'].title, exact: true });
  const print = leaf.getByRole('button', { name: words.print(words.papers['mercury-account'].title) });
  await print.waitFor({ timeout: 60_000 });
  const downloads: string[] = [];
  page.on('download', (download) => downloads.push(download.suggestedFilename()));

  await hand.press(print);
  const stop = leaf.getByRole('button', { name: words.stop });
  await stop.waitFor();
  const far = Object.values(words.progress).map((say) => say(0).replace(/ 0.*/, ''));
  const said = await leaf.getByRole('status').allTextContents();
  await hand.press(stop);
  await leaf.getByText(problemText(problem('paper-stopped', ''))).waitFor();
  expect(await axe(page)).toEqual([]);
  expect(far.some((one) => said.join(' ').includes(one))).toBe(true);
  expect(await stop.count()).toBe(0);
  expect(downloads).toEqual([]);

  const saved = page.waitForEvent('download', { timeout: 120_000 });
  await hand.press(print);
  expect((await saved).suggestedFilename()).toMatch(/\.pdf$/);
  expect(downloads).toHaveLength(1);
  expect(home.faults).toEqual([]);
});
