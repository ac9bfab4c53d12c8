/**
 * The key screens of the sample site as they are drawn, in both themes, in a window, on a large screen and at twice its size: laid out without fault, axe finds nothing,
 * and the measure itself finds what is put wrong on purpose. Fonts differ too much between browsers for pictures to be compared point by point.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { keyScreens } from '../../main/build/key-screens.mjs';
import { laidOutWrong } from './layout.ts';
import { openSample, type WalkedWindow } from './window.ts';

let walked: WalkedWindow;

beforeAll(async () => {
  walked = await openSample();
}, 240_000);
afterAll(() => walked?.close());

const sizes = [
  [1280, 800],
  [1920, 1080],
  [640, 400],
] as const;

describe.each(keyScreens)('the key screen $name', ({ name, address }) => {
  test('is laid out without fault in both themes and three sizes', async () => {
    const { page } = walked;
    await walked.go(address);
    await page.evaluate(() => document.fonts.ready.then(() => true));
    expect(await page.locator('main h1').first().textContent()).not.toMatch(/^No such/);
    expect(await page.locator('main').textContent()).not.toContain('There is no such');
    for (const [width, height] of sizes) {
      await page.setViewportSize({ width, height });
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        if (process.env.WALK_PICTURES)
          await page.screenshot({ path: `${process.env.WALK_PICTURES}/key-${name}-${width}-${colorScheme}.png`, fullPage: true });
        expect(await laidOutWrong(page), `${width} px, ${colorScheme}`).toEqual([]);
      }
    }
    await page.setViewportSize({ width: 1280, height: 800 });
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await walked.axe(), colorScheme).toEqual([]);
    }
    expect(walked.errors).toEqual([]);
  }, 90_000);
});

test('the measure finds text laid on text, a page too wide, a leaf out of line and a figure off its point', async () => {
  const { page } = walked;
  await walked.go('#/retort/charge-0003');
  expect(await laidOutWrong(page)).toEqual([]);
  /** What is found with this put wrong; put right again afterwards. */
  const found = async (spoil: 'text' | 'wide' | 'leaf' | 'figure'): Promise<string> => {
    await page.evaluate((what) => {
      const all = (selector: string) => [...document.querySelectorAll<HTMLElement>(`main ${selector}`)];
      const [first, second] = all('section p').filter((p) => p.textContent?.trim() && p.getBoundingClientRect().height > 0);
      if (what === 'text' && first && second) {
        const [a, b] = [first.getBoundingClientRect(), second.getBoundingClientRect()];
        second.style.transform = `translate(${a.left - b.left}px, ${a.top - b.top}px)`;
      }
      if (what === 'wide' && first) first.style.minWidth = '3000px';
      if (what === 'leaf') for (const leaf of all('section').slice(1, 2)) leaf.style.transform = 'translateX(40px)';
      if (what === 'figure') for (const cell of all('tbody td.decimal')) cell.style.textAlign = 'left';
    }, spoil);
    const wrong = (await laidOutWrong(page)).join('\n');
    await page.reload();
    await page.locator('main h1').first().waitFor();
    return wrong;
  };
  expect(await found('text')).toContain('lies on');
  expect(await found('wide')).toContain('wider than the window');
  expect(await found('leaf')).toContain('begins on another line');
  expect(await found('figure')).toContain('not on one decimal point');
}, 60_000);
