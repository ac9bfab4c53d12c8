/**
 * The first hour by keyboard alone: from an empty home through the first steps to a printed run sheet, every key press counted, and a word of the
 * trade opened where a field uses it.
 */
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { countedKeys } from './counted-keys.ts';
import { axe, closeBrowser, type EmptyHome, openEmptyHome } from './empty-home.ts';
import { byKeyboard } from './hands.ts';
import * as steps from './run-steps.ts';

let home: EmptyHome | null = null;
afterEach(async () => {
  await home?.close();
  home = null;
});
afterAll(closeBrowser);

describe('the first hour', () => {
  it('leads from an empty home to a printed run sheet in fewer than 560 key presses, explanations shown', {
    timeout: 240_000,
  }, async () => {
    home = await openEmptyHome();
    const { page } = home;
    const keys = countedKeys(page);
    const by = byKeyboard(page);
    await steps.makeDaybook(page, by);
    await steps.stateStanding(page, by);
    await steps.enterRegisters(page, by);
    await steps.receiveMercury(page, by);
    await steps.cleanUp(page, by);
    await steps.keep(page, by);
    await steps.charge(page, by);
    await by.press(page.getByRole('button', { name: 'Keep', exact: true }));
    await by.press(page.getByRole('link', { name: 'Go to the run' }));
    const saved = page.waitForEvent('download');
    await by.press(page.getByRole('button', { name: 'Save the run sheet as PDF', exact: true }));
    expect((await saved).suggestedFilename()).toMatch(/\.pdf$/);
    expect(keys()).toBeLessThan(560);
    expect(home.faults).toEqual([]);
  });

  it('explains a word at the field that uses it, leads to all words by one key, and stays silent once told to', {
    timeout: 120_000,
  }, async () => {
    home = await openEmptyHome();
    const { page } = home;
    const by = byKeyboard(page);
    await steps.makeDaybook(page, by);
    await page.evaluate(() => {
      location.hash = '#/site/plate/new';
    });
    const name = page.getByRole('textbox', { name: 'Name of the plate' });
    const question = page.getByRole('button', { name: 'What is “plate”?' });
    await by.write(name, 'Top');
    await page.keyboard.press('F1');
    await page.getByText('A metal sheet with mercury on it').waitFor();
    expect(await question.getAttribute('aria-expanded')).toBe('true');
    expect(await name.inputValue()).toBe('Top');
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await axe(page)).toEqual([]);
    }
    await by.press(page.getByRole('link', { name: '“plate” among all words' }));
    await page.getByRole('heading', { level: 1, name: 'Words' }).waitFor();
    await page.waitForFunction(() => document.activeElement?.id === 'word-plate');
    const search = page.getByRole('textbox', { name: 'Look for a word' });
    await search.focus();
    await page.keyboard.type('prill');
    expect(await page.locator('dl dt').first().textContent()).toBe('prill');
    await page.evaluate(() => {
      location.hash = '#/workings/gap';
    });
    await page.waitForFunction(() => document.activeElement?.id === 'working-gap');
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await axe(page)).toEqual([]);
    }
    await page.keyboard.press('F1');
    await page.getByRole('heading', { level: 1, name: 'Words' }).waitFor();

    await by.pick(page.getByRole('combobox', { name: 'Words at fields' }), 'Not shown');
    await page.evaluate(() => {
      location.hash = '#/site/plate/new';
    });
    await name.waitFor();
    expect(await question.count()).toBe(0);
    await page.reload();
    await name.waitFor();
    await page.waitForTimeout(300);
    expect(await question.count()).toBe(0);
    expect(home.faults).toEqual([]);
  });
});
