/**
 * What falls due, on Today, with the site's own lead times set by keyboard. Find, by keyboard from Today: to a lot, to a bar, narrowed and the same after a reload; what is not for whoever writes is not found and said to be left
 * out; nothing found says where was looked. axe finds nothing in either theme.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { byKeyboard } from './hands.ts';
import { plainInBoth } from './looked-at.ts';
import { dayAhead, daysAgo, draft, siteAtWork } from './site-entries.ts';
import { openWalk, type WalkedWindow } from './window.ts';

let walked: WalkedWindow;
const main = () => walked.page.locator('main');
const field = () => main().getByLabel('Words to find');

/** Goes to Find by its key and types, as from any page. */
async function find(words: string): Promise<void> {
  await walked.page.keyboard.press('F2');
  await walked.page.waitForFunction(() => document.activeElement?.matches('main form[role="search"] input'));
  await walked.page.keyboard.press('Control+A');
  await walked.page.keyboard.type(words);
  await walked.page.keyboard.press('Enter');
}

beforeAll(async () => {
  walked = await openWalk('Invented battery');
  await walked.keep([
    ...siteAtWork(),
    draft(
      'pour-one',
      'melt',
      {
        sponges: [{ charge: 'charge-one' }],
        bars: [{ key: '1', label: 'Bar 17', weight: { how: 'scale', scale: 'bench-scale', gross: '361.0 g' } }],
      },
      daysAgo(3),
    ),
    draft('kept-one', 'bar-kept', { bar: 'pour-one/1', place: 'Behind the third brick' }, daysAgo(2)),
    draft('remark-one', 'note', { text: 'Crème-coloured scum on the plates' }, daysAgo(2)),
  ]);
});
afterAll(() => walked?.close());

test('Today tells what is past and what falls due, how far ahead it looked, and takes the site’s own lead time', async () => {
  await walked.go('#/today');
  const keys = byKeyboard(walked.page);
  const due = main().getByRole('region', { name: 'Due', exact: true });
  await due.waitFor();
  expect(await due.getByRole('listitem').allTextContents()).toEqual([
    expect.stringMatching(/^Inspection of Pot retort.*past by 3 days/),
    expect.stringMatching(/^Calibration of Bench scale.*in 12 days/),
  ]);
  await due.getByText(/^Looked ahead to .* \(30 days\)\./).waitFor();
  await plainInBoth(walked, 'due');
  await keys.press(due.getByRole('link', { name: 'Lead times' }));
  await main().getByRole('heading', { level: 1, name: 'Lead times' }).waitFor();
  await plainInBoth(walked, 'lead-times-new');
  await walked.keep([
    draft('leads-one', 'lead-times', { leads: [{ of: 'scale', days: 5 }], countEvery: 20 }, daysAgo(10)),
    draft('retort-again', 'retort', { of: 'pot-retort', label: 'Pot retort', capacity: '2 kg' }, daysAgo(1)),
  ]);
  await walked.go('#/today');
  await due.getByText(/^Stock-take of the whole, every 20 days/).waitFor();
  expect(await due.getByRole('listitem').count()).toBe(1);
  await due.getByText(/Calibration of scales: to /).waitFor();
  await walked.keep([draft('leads-two', 'lead-times', { leads: [{ of: 'scale', days: 5 }] }, daysAgo(9))]);
  await walked.go('#/today');
  await main().getByText('Nothing is past and nothing falls due.').waitFor();
  await plainInBoth(walked, 'due-nothing');
  expect(walked.errors).toEqual([]);
});

test('from Today by its key: a lot by its label, and a bar, each on the page it leads to', async () => {
  await walked.go('#/today');
  const keys = byKeyboard(walked.page);
  await find('ball 3');
  const lot = main().getByRole('link', { name: 'Ball 3', exact: true });
  await lot.waitFor();
  await plainInBoth(walked, 'find-lot');
  await keys.press(lot);
  await main().getByRole('heading', { level: 1, name: 'Lot Ball 3' }).waitFor();
  expect(decodeURIComponent(new URL(walked.page.url()).hash)).toMatch(/^#\/retort\/lot\/clean-up-two\//);
  await plainInBoth(walked, 'lot');
  await keys.press(
    main()
      .getByRole('region', { name: 'Its entries' })
      .getByRole('link', { name: /^Clean-up/ }),
  );
  await main().getByRole('heading', { level: 1 }).filter({ hasText: 'Clean-up' }).waitFor();
  await keys.press(
    main()
      .getByRole('link', { name: /^“?Ball 3/ })
      .first(),
  );
  await main().getByRole('heading', { level: 1, name: 'Lot Ball 3' }).waitFor();

  await find('BAR 17');
  await keys.press(main().getByRole('link', { name: 'Bar 17', exact: true }));
  await main().getByRole('heading', { level: 1 }).filter({ hasText: 'Bar 17' }).waitFor();
  expect(walked.errors).toEqual([]);
});

test('the link in the head leads there too, and accents and case do not count', async () => {
  await walked.go('#/today');
  await byKeyboard(walked.page).press(walked.page.locator('header').getByRole('link', { name: /^Find/ }));
  await field().waitFor();
  await find('CREME scum');
  await main()
    .getByRole('link', { name: /^Note of/ })
    .waitFor();
});

test('narrowed to lots and days, it is the same after a reload and after a step back', async () => {
  await walked.go('#/today');
  const keys = byKeyboard(walked.page);
  await find('ball');
  await keys.press(main().locator('summary', { hasText: 'Narrow it' }));
  await keys.pick(main().getByLabel('What', { exact: true }), 'Lots');
  await main().getByLabel('From day').fill(daysAgo(6).slice(0, 10));
  const status = main().getByRole('status').filter({ hasText: 'found' });
  await status.filter({ hasText: /^2 found/ }).waitFor();
  const address = new URL(walked.page.url()).hash;
  expect(address).toBe(`#/find/ball/what=lot/from=${daysAgo(6).slice(0, 10)}`);
  await plainInBoth(walked, 'find-narrowed');

  await walked.page.reload();
  await status.filter({ hasText: /^2 found/ }).waitFor();
  expect(await field().inputValue()).toBe('ball');
  expect(await main().getByLabel('What', { exact: true }).inputValue()).toBe('lot');
  await keys.press(main().getByRole('link', { name: 'Ball 4', exact: true }));
  await main().getByRole('heading', { level: 1, name: 'Lot Ball 4' }).waitFor();
  await walked.page.goBack();
  await status.filter({ hasText: /^2 found/ }).waitFor();
  expect(new URL(walked.page.url()).hash).toBe(address);
});

test('nothing found says so, what was looked in and within what, and leads to everything', async () => {
  await walked.go(`#/find/ball%203/what=bar/to=${dayAhead(1)}`);
  await main().getByText('Nothing is found that holds every one of these words.').waitFor();
  await main()
    .getByText(/^Looked in \d+ things, papers and entries/)
    .waitFor();
  await plainInBoth(walked, 'find-nothing');
  await byKeyboard(walked.page).press(main().getByRole('link', { name: 'Look for it without that' }));
  await main().getByRole('link', { name: 'Ball 3', exact: true }).waitFor();
});

test('where a bar is kept is found by the keeper and not by who is not named', async () => {
  await walked.go('#/today');
  const writing = walked.page.locator('header').getByRole('button', { name: /nobody named|Keeper/ });
  if ((await writing.textContent()) !== 'nobody named') {
    await writing.click();
    await walked.page.getByRole('button', { name: 'Nobody named' }).click();
  }
  await find('third brick');
  await main().getByText('Nothing is found that holds every one of these words.').waitFor();
  await main()
    .getByText(/^Where bars are kept was not looked in/)
    .waitFor();
  await walked.page.locator('header').getByRole('button', { name: 'nobody named' }).click();
  await walked.page.getByRole('dialog').getByRole('button', { name: 'Keeper' }).click();
  await main()
    .getByRole('link', { name: /Bar 17$/ })
    .waitFor();
  expect(
    await main()
      .getByText(/was not looked in/)
      .count(),
  ).toBe(0);
  expect(walked.errors).toEqual([]);
});

test('the key does nothing while a dialog asks', async () => {
  await walked.go('#/today');
  await walked.page.locator('header').getByRole('button', { name: 'Keeper' }).click();
  await walked.page.keyboard.press('F2');
  await walked.page.keyboard.press('Escape');
  expect(new URL(walked.page.url()).hash).toBe('#/today');
});
