/**
 * A first run, walked in a real browser from an empty folder to the printed sheet: once by mouse, once by keyboard alone; then what a person gets
 * wrong, and a page that dies. The numbers are practice.md's example W8 and stand here as published there.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { axe, closeBrowser, command, type EmptyHome, openEmptyHome } from './empty-home.ts';
import { byKeyboard, byMouse, type Hand } from './hands.ts';
import * as steps from './run-steps.ts';

let home: EmptyHome | null = null;
afterEach(async () => {
  await home?.close();
  home = null;
});
afterAll(closeBrowser);

const plain = (text: string) => text.replaceAll(/[\u00a0\u202f]/g, ' ');
const textOf = async (place: Locator): Promise<string> => plain((await place.textContent()) ?? '');
const figure = (page: Page, name: string): Promise<string> => textOf(page.locator(`[data-figure="${name}"] summary`));
/** The text of a figure's opened working. */
async function working(page: Page, hand: Hand, name: string): Promise<string> {
  await hand.press(page.locator(`[data-figure="${name}"] summary`));
  const table = page.locator(`[data-figure="${name}"] table`);
  await table.waitFor();
  return textOf(table);
}
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

/** Up to the lots in the safe. */
async function upToTheSafe(page: Page, hand: Hand): Promise<void> {
  await steps.makeDaybook(page, hand);
  await steps.stateStanding(page, hand);
  await steps.enterRegisters(page, hand);
  await steps.receiveMercury(page, hand);
  await steps.cleanUp(page, hand);
}

async function walkTheRun(hand: (page: Page) => Hand): Promise<void> {
  home = await openEmptyHome();
  const { page } = home;
  const by = hand(page);
  await upToTheSafe(page, by);
  expect(await textOf(page.locator('main form'))).toContain('5 lots, 955.6 g in all');
  await steps.keep(page, by);

  await steps.charge(page, by);
  expect(await textOf(page.locator('main form'))).toContain('5 lots into “Pot retort”, 955.6 g');
  await by.press(button(page, 'Keep'));
  await by.press(page.getByRole('link', { name: 'Go to the run' }));

  const live = page.locator('.live');
  await page.getByText('Fire lit', { exact: true }).waitFor();
  await live.getByText('The closing figure stands here as soon as sponge and mercury are both in.').waitFor();
  await steps.noteTheFire(page, by);
  expect(await axe(page)).toEqual([]);
  await steps.fire(page, by);
  // before anything is kept the figures stand there
  await live.getByText('12.60 ± ').first().waitFor();
  await live.getByText('38.91 %').first().waitFor();
  const before = home.journalLines();
  await by.press(button(page, 'Keep'));
  await page.getByRole('heading', { name: 'What the numbers say' }).waitFor();
  expect(home.journalLines()).toBe(before + 1);
  expect(before + 1).toBe(9);

  expect(await figure(page, 'gap')).toMatch(/12\.60 ± \d\.\d\d g/);
  expect(await figure(page, 'gap-share')).toContain('1.32 %');
  expect(await figure(page, 'ratio')).toContain('38.91 %');
  expect(await figure(page, 'driven')).toContain('583.8 g');
  expect(await figure(page, 'caught')).toContain('97.84 %');
  const gap = await working(page, by, 'gap');
  for (const reading of [...steps.example.balls, '955.6', '371.8', '571.2', '12.6']) expect(gap).toContain(`${reading} g`);
  expect(gap).toContain('Bench scale, reads to 0.1 g');
  expect(gap).toContain('JCGM 100:2008');
  expect(await working(page, by, 'gap-share')).toContain('1.319 %');
  expect(await page.locator('[data-finding="within-band"]').count()).toBe(1);
  expect(await page.locator('[data-finding="water-not-known"]').count()).toBe(1);

  const run = await textOf(page.locator('main'));
  expect(run).toMatch(/480 °C; Cooling water turned on; steady drip/);
  expect(run).toContain('400 °C – 550 °C');

  const download = page.waitForEvent('download');
  await by.press(button(page, 'Save the run sheet as PDF'));
  const folder = mkdtempSync(join(tmpdir(), 'daybook-sheet-'));
  try {
    const file = join(folder, 'sheet.pdf');
    await (await download).saveAs(file);
    const sheet = spawnSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
    expect(sheet.status, sheet.stderr).toBe(0);
    const printed = plain(sheet.stdout);
    for (const text of ['955.6', '371.8', '571.2', '38.91', 'Walk battery', 'Pot retort']) expect(printed).toContain(text);
    expect(printed).toMatch(/12\.60?/);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }

  await by.press(page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name: 'Retort', exact: true }));
  await page.getByText('within the band, water not known').waitFor();
  expect(home.faults).toEqual([]);
}

describe('a first run, from an empty folder to the printed sheet', () => {
  it('is walked by mouse', () => walkTheRun(byMouse));

  it('is walked by keyboard alone', () => walkTheRun(byKeyboard));

  it('comes to the same in the terminal', () => {
    const { balls, sponge, mercury } = steps.example;
    const ask = { charge: balls.map((ball) => `${ball} g`), firings: [{ sponge: `${sponge} g`, mercury: `${mercury} g` }] };
    const run = spawnSync(process.execPath, [command, 'reckon', 'run'], { input: JSON.stringify(ask), encoding: 'utf8' });
    expect(run.status, run.stderr).toBe(0);
    const got = JSON.parse(run.stdout) as Record<string, number>;
    expect(got.charge_g).toBe(955.6);
    expect(got.gap_g).toBe(12.6);
    expect(got.gap_of_charge).toBeCloseTo(0.01319, 5);
    expect(got.sponge_ratio).toBeCloseTo(0.3891, 4);
    expect(got.driven_off_g).toBe(583.8);
    expect(got.caught_upper).toBeCloseTo(0.9784, 4);
    expect(got.findings).toEqual(['within-band', 'water-not-known']);
  });
});

/** On a tablet beside the retort: controls of the firing that are lower than 44 px or stand two in a row of fields, by name. */
async function smallOnTablet(page: Page): Promise<string[]> {
  const found: string[] = [];
  for (const [width, height] of [
    [768, 1024],
    [1024, 768],
  ] as const) {
    await page.setViewportSize({ width, height });
    if (process.env.WALK_PICTURES) {
      mkdirSync(process.env.WALK_PICTURES, { recursive: true });
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        await page.screenshot({
          path: join(process.env.WALK_PICTURES, `run-tablet-${width}-${colorScheme}.png`),
          fullPage: true,
        });
      }
    }
    const low = await page.evaluate(() => {
      const form = document.querySelector('.at-retort form');
      if (!form) return ['no form'];
      const told: string[] = [];
      const asked =
        'input:not([type="radio"], [type="checkbox"], .picker), select, textarea, button, summary, label:has(input[type="radio"])';
      for (const one of form.querySelectorAll<HTMLElement>(asked)) {
        const { height } = one.getBoundingClientRect();
        if (height > 0 && height < 44) told.push(`${one.tagName} ${one.textContent?.trim().slice(0, 40)} is ${height} px high`);
      }
      for (const fields of form.querySelectorAll<HTMLElement>('.fields')) {
        const lefts = new Set([...fields.children].map((child) => child.getBoundingClientRect().left));
        if (lefts.size > 1) told.push(`${fields.textContent?.trim().slice(0, 40)} stands in ${lefts.size} columns`);
      }
      return told;
    });
    found.push(...low.map((text) => `at ${width} px: ${text}`));
  }
  await page.setViewportSize({ width: 1280, height: 800 });
  return found;
}

describe('every page of the room', () => {
  it('has nothing axe could name, by day and by lamp, and never runs wider than a page at twice its size', async () => {
    home = await openEmptyHome();
    const { page } = home;
    const by = byMouse(page);
    const found: string[] = [];
    const look = async (name: string) => {
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        for (const fault of await axe(page)) found.push(`${name}, ${colorScheme}: ${fault}`);
      }
      await page.setViewportSize({ width: 640, height: 400 });
      const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      if (over > 0) found.push(`${name}: ${over} px too wide at twice its size`);
      await page.setViewportSize({ width: 1280, height: 800 });
    };
    const go = async (hash: string, heading: string) => {
      await page.evaluate((to) => {
        location.hash = to;
      }, hash);
      await page.getByRole('heading', { level: 1, name: heading }).waitFor();
    };
    const openFolds = () =>
      page.evaluate(() => {
        for (const fold of document.querySelectorAll('main details')) (fold as HTMLDetailsElement).open = true;
      });

    await steps.makeDaybook(page, by);
    await go('#/retort', 'Retort');
    await look('the room while nothing is in the book');
    await steps.stateStanding(page, by);
    await steps.enterRegisters(page, by);
    await steps.receiveMercury(page, by);
    await steps.cleanUp(page, by);
    await openFolds();
    await look('a clean-up');
    await steps.keep(page, by);
    await steps.charge(page, by);
    await openFolds();
    await look('a charge');
    await by.press(button(page, 'Keep'));
    await by.press(page.getByRole('link', { name: 'Go to the run' }));
    await page.getByText('Fire lit', { exact: true }).waitFor();
    await openFolds();
    await look('a run that is open');
    found.push(...(await smallOnTablet(page)));
    await steps.fire(page, by);
    await look('a run as it is typed');
    await by.press(button(page, 'Keep'));
    await page.getByRole('heading', { name: 'What the numbers say' }).waitFor();
    await openFolds();
    await look('a run that is closed');
    await go('#/retort/new/receipt', 'Mercury received');
    await openFolds();
    await look('mercury received');
    await go('#/retort/new/firing', 'Firing without its charge');
    await openFolds();
    await look('a firing without its charge');
    await go('#/retort', 'Retort');
    await look('the room with a run');
    await go('#/retort/no-such-charge', 'No such run');
    await look('a run that is not there');
    expect(found).toEqual([]);
    expect(home.faults).toEqual([]);
  });
});

describe('what cannot be meant is told at its field, and nothing is written', () => {
  it('asks which ounce a bare “oz” is', async () => {
    home = await openEmptyHome();
    const { page } = home;
    const by = byMouse(page);
    await steps.makeDaybook(page, by);
    await steps.enterRegisters(page, by);
    await steps.cleanUp(page, by, ['12.5 oz']);
    const before = home.journalLines();
    await page.getByText('Two ounces are in use. Which one does the scale read?').waitFor();
    await by.press(button(page, 'Keep'));
    const weight = page.getByLabel('Weight of row 1');
    expect(await weight.getAttribute('aria-invalid')).toBe('true');
    expect(await weight.evaluate((field) => field === document.activeElement)).toBe(true);
    const told = await textOf(page.locator(`#${await weight.getAttribute('aria-describedby')}`));
    expect(told).toMatch(/oz-av/);
    expect(told).toMatch(/ozt/);
    expect(home.journalLines()).toBe(before);
    // answered, it can be kept, and reads as it was read
    await by.press(button(page, 'ozt (troy ounce)'));
    await steps.keep(page, by);
    expect(home.journalLines()).toBe(before + 1);
  });

  it('does not take a day in 2062', async () => {
    home = await openEmptyHome();
    const { page } = home;
    const by = byMouse(page);
    await steps.makeDaybook(page, by);
    await steps.enterRegisters(page, by);
    await steps.cleanUp(page, by, ['212.4']);
    const before = home.journalLines();
    const day = page.getByLabel('Day', { exact: true }).first();
    await day.fill('2062-03-14');
    await by.press(button(page, 'Keep'));
    expect(await day.getAttribute('aria-invalid')).toBe('true');
    expect(await textOf(page.locator(`#${await day.getAttribute('aria-describedby')}`))).toContain(
      '14 March 2062 has not come yet',
    );
    await page.getByText('Nothing was kept.').waitFor();
    expect(home.journalLines()).toBe(before);
  });

  it('does not charge a lot that went into another charge while the draft lay waiting', async () => {
    home = await openEmptyHome();
    const { page } = home;
    const by = byMouse(page);
    await steps.makeDaybook(page, by);
    await steps.enterRegisters(page, by);
    await steps.cleanUp(page, by, ['212.4', '198.7']);
    await steps.keep(page, by);
    await steps.charge(page, by, ['212.4']);
    await page.waitForTimeout(600);
    // the same lot is charged from elsewhere, as another window of this desk would
    const kept = await page.evaluate(async () => {
      const entries = (
        await (
          await fetch('/ask/entries', { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{}' })
        ).text()
      )
        .trim()
        .split('\n')
        .map((line) => JSON.parse(line) as { id: string; kind: string; happened: string; by: string });
      const of = (kind: string) => entries.find((e) => e.kind === kind)?.id ?? '';
      const entry = {
        id: crypto.randomUUID(),
        happened: entries.at(-1)?.happened,
        by: of('person'),
        kind: 'charge',
        body: {
          retort: of('retort'),
          rows: [
            {
              take: 'whole',
              key: 'l1',
              lot: `${of('clean-up')}/b1`,
              weight: { how: 'scale', scale: of('scale'), gross: '212.4 g' },
            },
          ],
        },
      };
      const answer = await fetch('/ask/keep', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(entry),
      });
      return ((await answer.json()) as { ok: boolean }).ok;
    });
    expect(kept).toBe(true);
    const before = home.journalLines();
    await page.reload();
    await page.getByText('no longer in the safe: it stood in this draft').waitFor();
    await by.press(button(page, 'Keep'));
    await page.getByText('“B1” went into a charge before and is used up').waitFor();
    expect(home.journalLines()).toBe(before);
    // taken out of the draft, the other lot goes in
    await by.press(button(page, 'Take out B1'));
    await by.write(page.getByLabel('Weight of B2 at charging', { exact: true }), '198.7');
    await by.press(button(page, 'Keep'));
    await page.getByRole('link', { name: 'Go to the run' }).waitFor();
    expect(home.journalLines()).toBe(before + 1);
  });
});

describe('a page that dies', () => {
  it('leaves its draft, and the next page takes it up', async () => {
    home = await openEmptyHome();
    const { page } = home;
    const by = byMouse(page);
    await steps.makeDaybook(page, by);
    await steps.enterRegisters(page, by);
    await steps.cleanUp(page, by, ['212.4', '198.7']);
    const address = page.url();
    const before = home.journalLines();
    await page.waitForTimeout(600);
    await page.close({ runBeforeUnload: false });
    const next = await home.another();
    await next.goto(address);
    await next.getByText(/^Taken up again from the draft of/).waitFor();
    expect(await next.getByLabel('Label of row 1').inputValue()).toBe('B1');
    expect(await next.getByLabel('Weight of row 1').inputValue()).toBe('212.4');
    expect(await next.getByLabel('Weight of row 2').inputValue()).toBe('198.7');
    expect(home.journalLines()).toBe(before);
    await steps.keep(next, byMouse(next));
    expect(home.journalLines()).toBe(before + 1);
  });
});
