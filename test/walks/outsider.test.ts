/**
 * What an outsider walks: from Today to what is out of step, from there to its entry, from the entry to its trace and back to the account it stands in;
 * and the page that says how to verify the record. Every page in both themes, with nothing that axe finds wrong.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { daysAgo, draft, siteAtWork } from './site-entries.ts';
import { openWalk, type WalkedWindow } from './window.ts';

let walked: WalkedWindow;
beforeAll(async () => {
  walked = await openWalk('Outsider battery');
  await walked.keep([
    ...siteAtWork(),
    draft('meter-one', 'meter', { label: 'Vapour meter', calibrated: { on: '2020-01-01', due: '2021-01-01' } }, daysAgo(30)),
    draft('late-note-one', 'note', { text: 'Copied late.' }, daysAgo(30)),
  ]);
});
afterAll(async () => {
  expect(walked.errors).toEqual([]);
  await walked.close();
});

const inBothThemes = async (): Promise<void> => {
  for (const theme of ['light', 'dark'] as const) {
    await walked.theme(theme);
    expect(await walked.axe()).toEqual([]);
  }
};

test('Today tells how many things are out of step, and leads to the list that has as many', async () => {
  const { page } = walked;
  await walked.go('#/today');
  const link = page.getByRole('link', { name: /things out of step$/ });
  const n = Number.parseInt((await link.textContent()) ?? '', 10);
  expect(n).toBeGreaterThan(2);
  await link.click();
  await page.getByRole('heading', { level: 1, name: 'Out of step' }).waitFor();
  await page.getByText(`${n} things`, { exact: true }).first().waitFor();
  await page.getByText('The calibration of the meter “Vapour meter” was due on 1 January 2021.').waitFor();
  await inBothThemes();
});

test('a thing leads to its entry; the days a lot may lie are those of the site; a period leaves out what came after it', async () => {
  const { page } = walked;
  await page.getByText(/^A lot is told after 90 days in store/).waitFor();
  const late = page.getByRole('region', { name: 'Written late' }).getByRole('link', { name: /^Note of/ });
  await late.first().waitFor();
  await walked.go(`#/mercury/out-of-step/to=${daysAgo(60).slice(0, 10)}`);
  // a meter out of date since 2021 still stands at that day; what was written late came after it
  await page.getByText('The calibration of the meter “Vapour meter” was due on 1 January 2021.').waitFor();
  await expect.poll(() => page.getByRole('region', { name: 'Written late' }).count()).toBe(0);
  await walked.go('#/mercury/out-of-step');
  await late.first().click();
  await page.getByText('Copied late.').first().waitFor();
});

test('an entry opens to its trace, and leads to the account it stands in', async () => {
  const { page } = walked;
  const firing = siteAtWork().find((d) => d.kind === 'firing')?.id ?? '';
  await walked.go(`#/daybook/${firing}`);
  await page.getByRole('region', { name: 'Stands in' }).waitFor();
  await inBothThemes();
  await page.getByRole('link', { name: 'Trace it to its readings' }).click();
  await page.getByRole('region', { name: 'What was read' }).waitFor();
  await page.getByText('JCGM 100:2008, F.2.2.1 (from memory)').first().waitFor();
  await inBothThemes();
  await page.getByRole('region', { name: 'Stands in' }).getByRole('link', { name: 'Mercury account' }).click();
  await page.getByRole('heading', { level: 1, name: 'Papers' }).waitFor();
});

test('the Papers room leads to how the record is verified without the program, with this daybook’s end mark', async () => {
  const { page } = walked;
  await page.getByRole('link', { name: 'How to verify the record without this program' }).click();
  await page.getByRole('heading', { level: 1, name: 'Verify the record without this program' }).waitFor();
  await page.getByText('import hashlib, json, sys').waitFor();
  expect(await page.getByRole('region', { name: 'End marks of this daybook' }).textContent()).toMatch(/[0-9a-f]{64}/);
  await inBothThemes();
});
