/**
 * A month of a small mill typed into the window's own forms by keyboard, in troy ounces, and what the room, the terminal and the paper then say of
 * it. The month is practice.md's example W7, built so that its loss is known; expected grams are worked out here from its ounces.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import data from '../outside/data/mill-return.json' with { type: 'json' };
import { closeBrowser, command, type EmptyHome, openEmptyHome } from './empty-home.ts';
import { byKeyboard, byMouse } from './hands.ts';
import * as steps from './mill-return-steps.ts';
import { makeDaybook } from './run-steps.ts';

let home: EmptyHome;
let page: Page;

beforeAll(async () => {
  home = await openEmptyHome();
  page = home.page;
  const hand = byMouse(page);
  await makeDaybook(page, hand, 'Walk mill');
  await steps.registers(page, hand);
});
afterAll(async () => {
  await home?.close();
  await closeBrowser();
});

const { expected } = data;
/** A troy ounce is 480 grains of 64.79891 mg. */
const gramsPerOunce = 31.1034768;
const grams = (ounces: number): number => ounces * gramsPerOunce;
const plain = (text: string): string => text.replaceAll(/[\u00a0\u202f]/g, ' ');
/** A number shown with spaces between thousands. */
const digits = (text: string): string => plain(text).replaceAll(' ', '').replace('−', '-');
const main = (): Locator => page.locator('main');

/** The cells of a table's row, without the unseen digits that align them. */
async function cells(table: string, row: string): Promise<string[]> {
  const line = main()
    .getByRole('table', { name: table })
    .locator('tr', { has: page.getByText(row, { exact: true }) });
  return line
    .first()
    .locator('th, td')
    .evaluateAll((all) =>
      all.map((one) => {
        const copy = one.cloneNode(true) as HTMLElement;
        for (const tail of copy.querySelectorAll('.tail')) tail.remove();
        return (copy.textContent ?? '').trim();
      }),
    );
}

/** So many ounces in grams, to as many decimals as the figure shown has. */
function expectGrams(shown: string, ounces: number): void {
  const figure = digits(shown);
  expect(figure).toMatch(/^\d+(\.\d+)?$/);
  expect(figure).toBe(grams(ounces).toFixed(figure.split('.')[1]?.length ?? 0));
}

describe('a month of the mill', () => {
  it('is typed into the forms by keyboard, entry by entry, and its run comes to what was built into it', async () => {
    const before = home.journalLines();
    const by = byKeyboard(page);
    await steps.month(page, by);
    expect(home.journalLines()).toBe(before + 12);
    await by.press(steps.room(page, 'Retort'));
    await by.press(
      main()
        .getByRole('link', { name: /28 March 2026.*Pot retort/ })
        .first(),
    );
    await page.getByRole('heading', { name: 'What the numbers say' }).waitFor();
    const figure = async (name: string) => plain((await page.locator(`[data-figure="${name}"] summary`).textContent()) ?? '');
    expect(await figure('ratio')).toContain(`${expected.spongeRatioPercent} %`);
    expect(await figure('caught')).toContain(`${expected.caughtUpperPercent} %`);
    expect(await figure('gap-share')).toContain('0.49 %');
    const gap = /(\d+\.\d+) ± /.exec(await figure('gap'))?.[1] ?? '';
    expectGrams(gap, expected.retort);
    await steps.closingCount(page, by);
    expect(home.journalLines()).toBe(before + 13);
  }, 480_000);

  it('closes in the Mercury room to the stocks and the loss of the return, in grams', async () => {
    const by = byKeyboard(page);
    await by.press(steps.room(page, 'Mercury'));
    await by.press(
      main()
        .getByRole('link', { name: /^Account/ })
        .first(),
    );
    await main().getByRole('heading', { name: 'Account of a period' }).waitFor();
    const account = async (row: string) => (await cells('Account of a period', row))[1] ?? '';
    expectGrams(await account('Opening stock'), expected.opening);
    expectGrams(await account('Closing stock'), expected.closing);
    expectGrams(await account('Not accounted for'), expected.loss);
    for (const row of ['Received', 'Found, on no book before', 'Handed over']) expect(await account(row)).toBe('0.00');
    const perTonne = main().locator('dl > div', { hasText: 'Not accounted for, a tonne of ore' });
    expect(plain((await perTonne.textContent()) ?? '')).toMatch(/5\.24 ± \d\.\d\d g/);
  });

  it('names the ways it was lost: the retort by weight, the melt only as bounds', async () => {
    const way = async (row: string) => (await cells('Ways it was lost', row)).slice(1).map((text) => Number(digits(text)));
    const [retort = Number.NaN] = await way('lost at the retort');
    expect(retort / gramsPerOunce).toBeCloseTo(expected.retort, 3);
    const [melt = Number.NaN, least, most = Number.NaN] = await way('lost at the melt');
    expect(melt / gramsPerOunce).toBeCloseTo(expected.melt, 2);
    expect(least).toBe(0);
    expect(most / gramsPerOunce).toBeCloseTo(Number(data.sponge) - Number(data.bar), 3);
    const [rest = Number.NaN] = await way('difference found by a count');
    expect(rest / gramsPerOunce).toBeCloseTo(expected.rest, 2);
  });

  it('says first that the bottle gave more than the book had put into it, in words', async () => {
    const held = Number(data.opening.bottle) + Number(data.drawn) - Number(data.fed.mortar);
    const notice = main().locator('section', { hasText: 'Reservations, to be read first' }).first();
    const told = plain((await notice.textContent()) ?? '');
    const text = grams(-held)
      .toFixed(2)
      .replace(/\B(?=(\d{3})+\.)/, ' ');
    expect(told).toContain(`By the book “Bottle” now holds −${text} g: more was taken out than was ever put in.`);
  });

  it('comes to the same in the terminal, unrounded', () => {
    const run = spawnSync(process.execPath, [command, 'account', home.daybook(), '--json'], { encoding: 'utf8' });
    expect(run.status, run.stderr).toBe(0);
    const account = JSON.parse(run.stdout) as Record<string, number>;
    const off = (name: string, ounces: number) => Math.abs((account[name] ?? Number.NaN) - grams(ounces));
    expect(off('opening_g', expected.opening)).toBeLessThan(1e-6);
    expect(off('closing_g', expected.closing)).toBeLessThan(1e-6);
    expect(off('unaccounted_g', expected.loss)).toBeLessThan(1e-6);
    expect(account.per_tonne_g).toBeCloseTo(expected.lossGPerTonne, 3);
    // a long ton is 2,240 lb of 453.59237 g
    expect(account.ore_t).toBeCloseTo((Number(data.oreLongTons) * 2240 * 453.59237) / 1e6, 6);
  });

  it('prints the same from the Papers room', async () => {
    const by = byKeyboard(page);
    await by.press(steps.room(page, 'Papers'));
    const download = page.waitForEvent('download');
    await by.press(main().getByRole('button', { name: 'Print the mercury account' }));
    const folder = mkdtempSync(join(tmpdir(), 'daybook-paper-'));
    try {
      const file = join(folder, 'account.pdf');
      await (await download).saveAs(file);
      const read = spawnSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
      expect(read.status, read.stderr).toBe(0);
      const lines = plain(read.stdout).split('\n');
      /** The first figure with two decimals behind these words at the start of a line. */
      const after = (words: string) => {
        const rests = lines.filter((l) => l.trim().startsWith(words)).map((l) => l.trim().slice(words.length));
        return digits(rests.flatMap((rest) => /^\s*\d[\d ]*\.\d\d/.exec(rest) ?? [])[0] ?? '');
      };
      expect(after('Opening stock')).toBe(grams(expected.opening).toFixed(2));
      expect(after('less closing stock')).toBe(grams(expected.closing).toFixed(2));
      expect(after('Not accounted for')).toBe(grams(expected.loss).toFixed(2));
      expect(after('Not accounted for, per tonne')).toBe('5.24');
      expect(lines.join('\n')).toContain('By the book “Bottle” now holds');
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  it('met no error on any page', () => {
    expect(home.faults).toEqual([]);
  });
});
