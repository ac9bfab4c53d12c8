/**
 * Troy ounces, decimal commas and °F as they are typed: an issue, a clean-up, a charge and its firing, read back before they are kept, and the run sheet
 * and the mercury account as another program reads them. By keyboard alone. The record keeps points, units as read and degrees Celsius.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { byKeyboard, type Hand, pressIfOffered } from './hands.ts';
import { daysAgo, draft } from './site-entries.ts';
import { openWalk, type WalkedWindow } from './window.ts';

let walked: WalkedWindow;
let page: Page;
let hand: Hand;
let folder = '';

const main = (): Locator => page.locator('main');
const plain = (text: string | null) => (text ?? '').replaceAll(/[\u00a0\u202f]/g, ' ');
/** The line that reads back what will be kept. */
const readBack = async (): Promise<string> => plain(await main().locator('form p.back').textContent());
const group = (name: string | RegExp) => main().getByRole('radiogroup', { name });
const keepButton = (): Locator => main().getByRole('button', { name: 'Keep', exact: true });
async function keep(): Promise<void> {
  await pressIfOffered(hand, main().getByRole('button', { name: 'Keeper', exact: true }), keepButton());
  await hand.press(keepButton());
  await main()
    .getByText(/^Kept · entry/)
    .waitFor();
}
const reading = (label: string): Locator => main().getByRole('group', { name: label, exact: true }).getByRole('textbox').first();

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'typed-walk-'));
  walked = await openWalk('Walk battery');
  page = walked.page;
  hand = byKeyboard(page);
  const weight = { how: 'stated', mass: '80 ozt' } as const;
  await walked.keep([
    draft('keeper-one', 'person', { name: 'Keeper', roles: ['keeper'] }, daysAgo(40)),
    draft('standing-one', 'standing', { held: [{ what: 'stock' }], done: [{ what: 'clearing' }] }, daysAgo(40, '09:10')),
    draft(
      'troy-scale',
      'scale',
      { label: 'Troy scale', maximum: '100 ozt', d: '0.01 ozt', certificate: { U: '0.01 ozt', k: 2, at: '50 ozt' } },
      daysAgo(40, '09:15'),
    ),
    draft('bottle-one', 'vessel', { label: 'Bottle 1', use: 'bottle', mercury: 'mixed' }, daysAgo(40, '09:20')),
    draft('pot-retort', 'retort', { label: 'Pot retort', capacity: '2 kg' }, daysAgo(40, '09:25')),
    draft('poured-one', 'receipt', { vessel: 'bottle-one', way: 'bought', weight }, daysAgo(20)),
    draft(
      'notation-one',
      'site-notation',
      { decimal: 'comma', masses: 'troy', temperature: 'fahrenheit', days: 'd/m/y' },
      daysAgo(40, '09:30'),
    ),
  ]);
}, 240_000);
afterAll(async () => {
  await walked?.close();
  if (folder !== '') rmSync(folder, { recursive: true, force: true });
});

const months = 'January|February|March|April|May|June|July|August|September|October|November|December';
/** A number with a point, grams, degrees Celsius, an ISO day, a month as a word. */
const other = new RegExp(String.raw`\d\.\d|(?<![µm/])\bg\b(?!\/| per tonne)|°C|\d{4}-\d{2}-\d{2}|\d (?:${months}) \d{4}`);
const inAnother = (text: string): string[] =>
  text.split('\n').filter((line) => other.test(line.replace(/program version [\d.]+/, '')) && !/JCGM/.test(line));

/** Prints by this button, and gives the paper's text as another program reads it. */
async function printed(button: Locator, name: string): Promise<string> {
  const download = page.waitForEvent('download');
  await hand.press(button);
  const file = join(process.env.WALK_PICTURES ?? folder, `${name}.pdf`);
  await (await download).saveAs(file);
  return plain(execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }));
}

/** The site's own day, as the browser has it. */
const today = (): Promise<string> =>
  page.evaluate(() => {
    const now = new Date();
    return `${now.getDate()}/${now.getMonth() + 1}/${now.getFullYear()}`;
  });

test('an issue is typed in troy ounces with a comma and read back so', async () => {
  await walked.go('#/daybook/write/issue');
  await hand.pick(main().getByLabel('From which vessel'), 'Bottle 1');
  await main().getByText('By the book it holds 80,0000 ozt').waitFor();
  await hand.choose(main().locator('fieldset', { hasText: 'Issued to' }).last(), 'Plates');
  await hand.pick(main().getByLabel('Scale', { exact: true }).first(), 'Troy scale');
  await hand.write(main().getByLabel('Reading', { exact: true }), '10,25');
  await main().getByText('10,250 ± 0,010').first().waitFor();
  expect(await readBack()).toContain(`10,25 ozt of mercury from Bottle 1 to plates · ${await today()}, `);
  expect(inAnother(plain(await main().textContent()))).toEqual([]);
  await keep();
});

test('so are a clean-up, a charge and a firing, with its temperature in °F, and so is the sheet of the run', async () => {
  await walked.go('#/retort/new/clean-up');
  await hand.choose(group('Type of clean-up'), 'Routine');
  await hand.write(main().getByLabel('Label of row 1'), 'B1');
  await hand.write(main().getByLabel('Weight of row 1'), '6,83');
  await page.keyboard.press('Enter');
  await hand.write(main().getByLabel('Weight of row 2'), '6.39');
  await main().getByText('“6.39 ozt” has a point').waitFor();
  await hand.write(main().getByLabel('Weight of row 2'), '6,39');
  expect(await readBack()).toContain(`2 lots, 13,22 ozt in all: B1 6,83 ozt, B2 6,39 ozt · ${await today()}, `);
  await keep();

  await hand.press(main().getByRole('link', { name: 'Charge these lots' }));
  await hand.write(main().getByLabel('Weight of B1 at charging', { exact: true }), '6,82');
  await hand.write(main().getByLabel('Weight of B2 at charging', { exact: true }), '6,38');
  expect(await readBack()).toContain('2 lots into “Pot retort”, 13,20 ozt; −0,02');
  await hand.press(keepButton());
  await hand.press(page.getByRole('link', { name: 'Go to the run' }));

  await page.getByText('Fire lit', { exact: true }).waitFor();
  await hand.press(page.getByRole('group', { name: 'Fire lit' }).getByRole('button', { name: 'Now' }));
  await hand.press(page.getByRole('group', { name: 'Opened' }).getByRole('button', { name: 'Now' }));
  await hand.choose(group('How was it known to be cold?'), 'A temperature was measured');
  await hand.write(main().getByRole('textbox', { name: /^Temperature measured/ }), '75,2');
  await hand.write(reading('Sponge'), '5,14');
  await hand.write(reading('Mercury caught'), '7,9');
  await hand.pick(main().getByRole('combobox', { name: /^Vessel the mercury went to/ }), 'Bottle 1');
  await hand.choose(group('Mercury when weighed'), 'Dry');
  // 13,20 less 5,14 and 7,90
  await main().locator('.live').getByText('0,160 ± 0,020').first().waitFor();
  expect(await readBack()).toContain('sponge 5,14 ozt, mercury 7,9 ozt to “Bottle 1”, gap 0,160 ± 0,020 ozt');
  await hand.press(keepButton());
  await main().getByRole('heading', { name: 'What the numbers say' }).waitFor();

  const sheet = await printed(main().getByRole('button', { name: 'Save the run sheet as PDF' }), 'run-sheet-in-commas');
  for (const text of ['0,160 ± 0,020 ozt', '75,2 °F measured', 'gross 6,83 ozt', 'program (2 % of', await today()])
    expect(sheet).toContain(text);
  expect(inAnother(sheet)).toEqual([]);
});

test('the mercury account is printed in it', async () => {
  await walked.go('#/mercury/account/whole');
  const account = await printed(main().getByRole('button', { name: 'Print this account' }), 'account-in-commas');
  for (const text of ['79,8400', '0,160 ± 0,020 ozt', 'a ten-thousandth of a troy ounce', await today()])
    expect(account).toContain(text);
  expect(inAnother(account)).toEqual([]);
});

test('and the record keeps points, the units that were read and degrees Celsius', () => {
  const read = readDaybook(walked.folder);
  if (!read.ok) throw new Error('the daybook on the disk cannot be read');
  const bodyOf = (kind: string) => JSON.stringify(read.value.entries.findLast((entry) => entry.kind === kind)?.body);
  expect(bodyOf('issue')).toContain('"gross":"10.25 ozt"');
  expect(bodyOf('clean-up')).toContain('"gross":"6.39 ozt"');
  for (const kept of ['"gross":"5.14 ozt"', '"gross":"7.9 ozt"', '"measuredC":24']) expect(bodyOf('firing')).toContain(kept);
  expect(walked.errors).toEqual([]);
});
