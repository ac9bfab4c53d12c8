/**
 * Drawings, wide tables and the pages beside the rooms at twice their size, which is a window of 640 × 400, as well as in a window of the usual size: axe
 * finds nothing in either theme, nothing lies on anything, and what is wider than its page is reached and moved by keyboard.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { laidOutWrong } from './layout.ts';
import { pictured } from './looked-at.ts';
import { openSample, type WalkedWindow } from './window.ts';

let walked: WalkedWindow;

beforeAll(async () => {
  walked = await openSample();
}, 240_000);
afterAll(() => walked?.close());

const usual = { width: 1280, height: 800 };
const zoomed = { width: 640, height: 400 };
const day = encodeURIComponent('area:Retort house, bench@2026-03-10T07:30+10:00');
const run = 'charge-0003';

/** The page, its address, and the drawings in it, by how they are told. */
const pages: readonly { readonly name: string; readonly address: string; readonly drawn?: RegExp }[] = [
  { name: 'run', address: `#/retort/${run}`, drawn: /clock|firing/i },
  { name: 'readings of a run', address: `#/retort/${run}/readings` },
  { name: 'plates', address: '#/retort/plate/all', drawn: /plate/i },
  { name: 'flow', address: '#/mercury/account/whole', drawn: /flow|mercury/i },
  { name: 'stocks', address: '#/mercury/stocks' },
  { name: 'movements', address: '#/mercury/movements' },
  { name: 'yields of clean-ups', address: '#/mercury/yields' },
  { name: 'yields', address: '#/bullion/yields' },
  { name: 'history', address: '#/bullion/history', drawn: /./ },
  { name: 'air day', address: `#/air/day/${day}`, drawn: /air|day/i },
  { name: 'find', address: '#/find/ball' },
  { name: 'glossary', address: '#/words' },
  { name: 'workings', address: '#/workings' },
  { name: 'due and today', address: '#/today' },
  { name: 'verify', address: '#/papers/verify' },
];

describe.each(pages)('$name', ({ name, address, drawn }) => {
  test('axe finds nothing in both themes, and it is laid out without fault', async () => {
    const { page } = walked;
    await walked.go(address);
    await page.evaluate(() => document.fonts.ready.then(() => true));
    expect(await page.locator('main h1').first().textContent()).not.toMatch(/^No such/);
    expect(await page.locator('main').textContent()).not.toContain('There is no such');
    await pictured(walked, `zoomed-${name.replaceAll(' ', '-')}`);
    if (drawn) expect(await page.locator('main figure svg[role="group"]').first().getAttribute('aria-label')).toMatch(drawn);
    for (const size of [usual, zoomed]) {
      await page.setViewportSize(size);
      for (const theme of ['light', 'dark'] as const) {
        await walked.theme(theme);
        expect(await walked.axe(), `${size.width} px, ${theme}`).toEqual([]);
      }
      expect(await laidOutWrong(page), `${size.width} px`).toEqual([]);
    }
    await page.setViewportSize(usual);
    expect(walked.errors).toEqual([]);
  }, 90_000);
});

describe('what is wider than its page', () => {
  /** The boxes of the page that scroll sideways, with whether Tab stops at them and how they are called. */
  const boxes = () =>
    walked.page.locator('main .sideways').evaluateAll((all) =>
      all.map((box) => ({
        wider: box.scrollWidth - box.clientWidth > 1,
        stop: (box as HTMLElement).tabIndex === 0,
        name: box.getAttribute('aria-label') ?? '',
      })),
    );

  test('is a stop of the keyboard with a name where it is wider, and none where all is in sight', async () => {
    const { page } = walked;
    await walked.go('#/mercury/account/whole');
    for (const size of [zoomed, { width: 1920, height: 1080 }]) {
      await page.setViewportSize(size);
      await expect.poll(async () => (await boxes()).every(({ wider, stop }) => wider === stop)).toBe(true);
      const all = await boxes();
      expect(all.length).toBeGreaterThan(2);
      expect(
        all
          .filter(({ wider }) => wider)
          .map(({ name }) => name)
          .filter((name) => !/.+: wider than the page/.test(name)),
      ).toEqual([]);
      expect(all.some(({ wider }) => wider)).toBe(size === zoomed);
    }
    await page.setViewportSize(usual);
  });

  test('is reached by Tab and moved by the arrows', async () => {
    const { page } = walked;
    await page.setViewportSize(zoomed);
    await walked.go('#/mercury/account/whole');
    const box = page.locator('main .sideways[tabindex="0"]').first();
    await box.waitFor();
    const here = () => box.evaluate((element) => element === document.activeElement);
    for (let i = 0; i < 200 && !(await here()); i++) await page.keyboard.press('Tab');
    expect(await here()).toBe(true);
    expect(await box.evaluate((element) => getComputedStyle(element).outlineStyle)).toBe('solid');
    expect(await box.evaluate((element) => element.scrollLeft)).toBe(0);
    for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight');
    await expect.poll(() => box.evaluate((element) => element.scrollLeft)).toBeGreaterThan(0);
    await page.setViewportSize(usual);
  });
});
