/** Backups in the window: a place is picked, a backup is made, rehearsed, looked into and restored as a new desk; axe in both themes. */
import { mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { backupWords as words } from '../../app/words/backups.ts';
import { keeper, note } from '../host/drafts.ts';
import { openWalk, type WalkedWindow } from './window.ts';

const place = mkdtempSync(join(tmpdir(), 'walk-backups-'));
// restored daybooks go to the documents of this home
const home = mkdtempSync(join(tmpdir(), 'walk-home-'));
const pictures = process.env.WALK_PICTURES;
let walk: WalkedWindow;

beforeAll(async () => {
  mkdirSync(join(home, 'Documents'));
  process.env.DAYBOOK_BACKUPS = place;
  process.env.HOME = home;
  walk = await openWalk('Example Battery');
});
afterAll(async () => {
  await walk.close();
  for (const folder of [place, home]) rmSync(folder, { recursive: true, force: true });
});

async function picture(name: string): Promise<void> {
  for (const theme of ['light', 'dark'] as const) {
    await walk.theme(theme);
    expect(await walk.axe()).toEqual([]);
    if (pictures) await walk.page.screenshot({ path: join(pictures, `backups-${name}-${theme}.png`), fullPage: true });
  }
  await walk.theme('light');
}

describe('backups', () => {
  it('are made, rehearsed, looked into and restored from the page', async () => {
    const { page } = walk;
    await walk.keep([keeper, note(1), note(2)]);
    await page.getByText(words.today.none).waitFor();
    await walk.go('#/site/backups');
    await page.getByText(words.noPlace).waitFor();
    await picture('begin');
    await page.getByRole('button', { name: words.place.pick }).first().click();
    await page.getByText(/^Last verified/).waitFor();
    await walk.keep([note(3)]);
    await page.getByRole('button', { name: words.rehearse.begin }).click();
    await page.getByText(words.rehearse.clean).waitFor();

    await page.getByRole('radio', { name: words.seal.passphrase }).check();
    await page.getByLabel(words.seal.phrase, { exact: true }).fill('four old words here');
    await page.getByLabel(words.seal.phraseAgain).fill('four old words there');
    await page.getByRole('button', { name: words.seal.set }).click();
    await page.getByText(words.seal.phraseDiffers).waitFor();
    await page.getByRole('radio', { name: words.seal.recipient }).check();
    await page.getByRole('button', { name: words.seal.newPair }).click();
    const secret = (await page.getByText(/^AGE-SECRET-KEY-1/).innerText()).trim();
    await page.getByRole('button', { name: words.seal.set }).click();
    await page.getByText(words.seal.done).waitFor();
    await page.getByRole('button', { name: words.now }).click();
    await page.getByText(words.made).waitFor({ timeout: 60_000 });
    expect(readdirSync(join(place, readdirSync(place)[0]!)).filter((name) => name.endsWith('.tar.age'))).toHaveLength(1);
    await walk.keep([note(4)]);

    const list = page.getByLabel(words.restore.listed);
    await list.selectOption({ index: 1 });
    await page.getByLabel(words.restore.key, { exact: true }).last().fill('no key');
    await page.getByRole('button', { name: words.restore.look }).click();
    await page.getByText('There is no secret key in this text').first().waitFor();
    await page.getByLabel(words.restore.key, { exact: true }).last().fill(secret);
    await page.getByRole('button', { name: words.restore.look }).click();
    await page.getByText(words.restore.lost(1)).waitFor();
    await picture('looked');
    await page.getByRole('button', { name: words.restore.begin }).click();
    await page.locator('main h1').first().waitFor();
    await page.getByText('The record on disk is older than what this window has seen').waitFor();
    const [restored] = readdirSync(join(home, 'Documents'));
    expect(restored).toMatch(/^Example Battery restored \d{4}-\d\d-\d\d$/);
    expect(readdirSync(join(home, 'Documents', restored!))).toEqual(
      expect.arrayContaining(['closings', 'daybook.json', 'desks', 'evidence']),
    );
    await picture('restored');
    expect(walk.errors).toEqual([]);
  });
});
