/**
 * A spill walked in a browser: from Today in one step to what is done, the numbers that are missing named, the spill written up, its incident sheet and
 * the wall sheet printed, and visitors on a page of their own. axe finds nothing in either theme.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { spillWords as words } from '../../app/words/spill.ts';
import { openDayPaper, visitorWords } from '../../app/words/visitors.ts';
import { byKeyboard, pressIfOffered } from './hands.ts';
import { plainInBoth } from './looked-at.ts';
import { daysAgo, draft, siteAtWork } from './site-entries.ts';
import { openWalk, type WalkedWindow } from './window.ts';

let walked: WalkedWindow;
let folder = '';
const main = () => walked.page.locator('main');

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'spill-walk-'));
  walked = await openWalk('Invented battery');
  await walked.keep([
    ...siteAtWork(),
    draft(
      'numbers-one',
      'site-numbers',
      { numbers: [{ for: 'poison-centre', name: 'Poison line', number: '000 111' }] },
      daysAgo(3),
    ),
    draft('open-day-one', 'open-day', { visitors: 42, children: 9, areas: 'Yard' }, daysAgo(2)),
    draft(
      'air-visitors',
      'air-reading',
      { sample: 'visitor-area', place: 'Yard', unit: 'ug/m3', shows: '0.4', from: daysAgo(2, '10:00'), to: daysAgo(2, '11:00') },
      daysAgo(2, '11:00'),
    ),
  ]);
}, 240_000);
afterAll(async () => {
  await walked?.close();
  if (folder !== '') rmSync(folder, { recursive: true, force: true });
});

/** The text of the paper that this button prints, as another program reads it. */
async function printed(button: Locator): Promise<string> {
  const download = walked.page.waitForEvent('download');
  await byKeyboard(walked.page).press(button);
  const file = join(folder, 'printed.pdf');
  await (await download).saveAs(file);
  return execFileSync('pdftotext', ['-raw', file, '-'], { encoding: 'utf8' }).replaceAll(/\s+/g, ' ');
}

test('from Today and from Air one step leads to what is done at a spill, and missing numbers are named', async () => {
  await walked.go('#/air');
  await main().getByRole('link', { name: words.short }).waitFor();
  await walked.go('#/today');
  await byKeyboard(walked.page).press(main().getByRole('link', { name: words.short }));
  await main().getByRole('heading', { level: 1, name: words.title }).waitFor();
  await main().getByText('000 111').waitFor();
  await main().getByText(words.missing('Emergency, Licensed remover, Authority')).waitFor();
  await plainInBoth(walked, 'spill');
});

test('the wall sheet is one page, with the number entered and open lines for the others', async () => {
  const text = await printed(main().getByRole('button', { name: words.print }));
  expect(text).toContain('Never a vacuum cleaner.');
  expect(text).toContain('000 111');
  expect(text).toContain('Fill them in by hand');
  expect(execFileSync('pdfinfo', [join(folder, 'printed.pdf')], { encoding: 'utf8' })).toMatch(/Pages:\s+1\n/);
});

test('a spill is written up from the page and its incident sheet printed', async () => {
  const hand = byKeyboard(walked.page);
  await walked.go('#/air/spill');
  await hand.press(main().getByRole('link', { name: words.writeSpill }));
  const writer = main().getByRole('button', { name: 'Keeper', exact: true });
  await pressIfOffered(hand, writer, main().locator('form'));
  await hand.write(main().getByLabel('Where', { exact: true }), 'Bench in the retort shed');
  await hand.choose(main().getByRole('radiogroup', { name: /Already inside an issue/ }), 'Does not apply');
  await hand.press(main().getByRole('button', { name: 'Keep', exact: true }));
  await main()
    .getByText(/^Kept · entry/)
    .waitFor();
  await walked.go('#/papers/incident-sheet');
  const leaf = main().getByRole('region', { name: 'Incident sheet', exact: true });
  const id = await leaf.locator('select option').nth(1).getAttribute('value');
  await leaf.locator('select').selectOption(id);
  const text = await printed(leaf.getByRole('button', { name: 'Print the incident sheet' }));
  expect(text).toContain('Bench in the retort shed');
  expect(text).toContain('To fill in by hand');
  expect(text).toContain('000 111');
});

test('visitors have a page, and the sheet of an open day has their count and no figure for people at work', async () => {
  await walked.go('#/air/visitors');
  await main().getByText(visitorWords.noLimit).waitFor();
  await plainInBoth(walked, 'visitors');
  await byKeyboard(walked.page).press(main().getByRole('link', { name: visitorWords.sheet }));
  const leaf = main().getByRole('region', { name: openDayPaper.name, exact: true });
  const text = await printed(leaf.getByRole('button', { name: 'Print the open-day sheet' }));
  expect(text).toContain('42 visitors');
  expect(text).toContain('figures for the public only');
  expect(text).toMatch(/0\.4 µg\/m³/);
  expect(walked.errors).toEqual([]);
});
