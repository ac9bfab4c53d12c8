/**
 * What a site asks, walked in a browser: a scaling written up with a "no" that shows and stops nothing; the site's own checks edited by keyboard and
 * asked at the next charge while an old answer keeps its words; stop rules, numbers, keeping and the register of what leaves; what one person breathed
 * shown by role. axe finds nothing in either theme.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { byKeyboard, pressIfOffered } from './hands.ts';
import { plainInBoth } from './looked-at.ts';
import { dayAhead, daysAgo, draft, siteAtWork } from './site-entries.ts';
import { openWalk, type WalkedWindow } from './window.ts';

let walked: WalkedWindow;
const main = () => walked.page.locator('main');
const kept = () =>
  main()
    .getByText(/^Kept · entry/)
    .waitFor();
const fireAsks = 'Extinguisher and burns kit at hand, the place’s rules for fire followed';

beforeAll(async () => {
  walked = await openWalk('Invented battery');
  await walked.keep([
    ...siteAtWork(),
    draft('battery-one', 'battery', { label: 'Battery one', stamps: 5 }, daysAgo(30)),
    draft('plate-one', 'plate', { label: 'Apron plate', battery: 'battery-one', metal: 'copper' } as never, daysAgo(30, '09:05')),
    draft('drum-one', 'vessel', { label: 'Drum one', use: 'drum' }, daysAgo(30, '09:10')),
    draft('drum-two', 'vessel', { label: 'Drum two', use: 'drum' }, daysAgo(30, '09:11')),
    draft(
      'waste-one',
      'waste',
      { drum: 'drum-one', what: 'Cloths', weight: { how: 'stated', mass: '1200 g' }, due: dayAhead(-4), code: 'Hg 1' },
      daysAgo(29),
    ),
    draft(
      'waste-two',
      'waste',
      { drum: 'drum-two', what: 'Sweepings', weight: { how: 'stated', mass: '300 g' } },
      daysAgo(29, '10:00'),
    ),
    draft(
      'sent-one',
      'transfer',
      {
        way: 'out',
        what: 'waste',
        party: 'Licensed remover',
        vessel: 'drum-two',
        weight: { how: 'stated', mass: '310 g' },
        carrier: 'Licensed carrier',
        document: 'C-17',
        checks: [
          { check: 'who-may-carry', answer: 'yes' },
          { check: 'taker-ready', answer: 'no', note: 'letter to come' },
        ],
      },
      daysAgo(20),
    ),
    draft(
      'old-checks',
      'plate-work',
      { plate: 'plate-one', what: 'steamed', checks: [{ check: 'fire', answer: 'no', note: 'one was empty' }] },
      daysAgo(25),
    ),
    draft(
      'breathed-one',
      'air-reading',
      { sample: 'personal', person: 'officer-one', unit: 'mg/m3', shows: '0.0317', from: daysAgo(5), to: daysAgo(5, '10:00') },
      daysAgo(5),
    ),
  ]);
});
afterAll(async () => {
  await walked?.close();
});

test('a scaling is written up by keyboard with its cautions and a "no", which stops nothing and shows on its entry and out of step', async () => {
  const hand = byKeyboard(walked.page);
  await walked.go('#/daybook/write/plate-work');
  expect(await main().textContent()).not.toContain('Scale is amalgam');
  await hand.pick(main().getByLabel('Plate', { exact: true }), 'Apron plate');
  await hand.choose(main().getByRole('radiogroup', { name: 'What was done' }), 'Scaled');
  await main().getByText('Scale is amalgam').waitFor();
  expect(await main().textContent()).not.toContain('Nitric acid on amalgam');
  await hand.press(main().locator('summary', { hasText: 'Checks: scaling a plate' }));
  const tray = 'A tray or sheet under the plate, nothing runs to floor or drain';
  await hand.choose(main().getByRole('radiogroup', { name: tray }), 'No');
  await hand.write(main().getByLabel(`Note on: ${tray}`), 'the tray had gone');
  await hand.press(main().getByRole('button', { name: 'Keeper', exact: true }));
  await plainInBoth(walked, 'scaling');
  await hand.press(main().getByRole('button', { name: 'Keep', exact: true }));
  await kept();
  await walked.go('#/daybook');
  await main().locator('li', { hasText: 'Apron plate scaled' }).getByRole('link').first().click();
  await main().getByText('was answered no: the tray had gone').waitFor();
  expect(await main().textContent()).toContain(tray);
  await plainInBoth(walked, 'scaling-entry');
  await walked.go('#/mercury/out-of-step');
  await main().getByText('was answered no: the tray had gone').waitFor();
});

test('the checks before a run are edited by keyboard, survive a reload, and are asked at the next charge; an old answer keeps its words', async () => {
  const hand = byKeyboard(walked.page);
  await walked.go('#/site/asks');
  await plainInBoth(walked, 'asks');
  await walked.go('#/site/asks/run-before');
  const row = (check: string) => main().locator(`[data-check="${check}"]`);
  await hand.press(row('fire').getByRole('button', { name: 'Put it in other words' }));
  await hand.write(row('fire').getByRole('textbox'), 'Both extinguishers at the door');
  await hand.press(row('no-food').getByRole('button', { name: 'Leave it out' }));
  await hand.write(row('no-food').getByRole('textbox'), 'asked at the gate');
  await hand.press(main().getByRole('button', { name: 'Add a question' }));
  await hand.write(row('run-before-own-1').getByRole('textbox'), 'Gate to the yard shut');
  await plainInBoth(walked, 'asks-run');
  await walked.page.waitForTimeout(600);
  await walked.page.reload();
  await main().getByText('not asked here', { exact: true }).waitFor();
  await hand.write(main().getByLabel('Looked over by'), 'A licensed person');
  await hand.press(main().getByRole('button', { name: 'Keep', exact: true }));
  await kept();
  expect(await main().textContent()).toContain('15 questions, 1 added, 1 in other words, 1 left out');

  await walked.go('#/retort/new/charge');
  await main().locator('summary', { hasText: 'Checks before lighting' }).click();
  const asked = (await main().locator('legend').allTextContents()).join('|');
  expect(asked).toContain('Gate to the yard shut');
  expect(asked).toContain('Both extinguishers at the door');
  expect(asked).not.toContain('No food, drink or smoking');

  await walked.go('#/daybook/old-checks');
  expect(await main().textContent()).toContain(fireAsks);
  expect(await main().textContent()).not.toContain('Both extinguishers');
});

test('stop rules, numbers and keeping are set in the Site room; a change begins with what stands', async () => {
  await walked.go('#/site/retention');
  await main().getByText('No period is set').waitFor();
  const one = main().locator('fieldset.item').first();
  await one
    .getByRole('radiogroup', { name: 'Which records' })
    .locator('label', { hasText: 'Waste and transport papers' })
    .click();
  await one.getByLabel('Years').fill('3');
  await one.getByLabel('By which rule').fill('House rule 4, read by the officer');
  await main().getByRole('button', { name: 'Keep', exact: true }).click();
  await kept();
  await main().getByText('Nothing in this book is deleted').waitFor();
  await plainInBoth(walked, 'retention');
  await walked.go('#/site/stop-rules');
  await main()
    .locator('fieldset.item')
    .first()
    .getByRole('radiogroup', { name: 'What is watched' })
    .locator('label', { hasText: 'Wind' })
    .click();
  await main().locator('fieldset.item').first().getByLabel('Stop when').fill('it blows to the houses');
  await main().getByRole('button', { name: 'Keep', exact: true }).click();
  await kept();
  await main().getByText('Set on').first().waitFor();
  await plainInBoth(walked, 'stop-rules');
  await walked.go('#/site/site-numbers');
  await plainInBoth(walked);
  await walked.go('#/site/stop-rules');
  await main().getByRole('button', { name: 'Change', exact: true }).click();
  expect(await main().getByLabel('Stop when').first().inputValue()).toBe('it blows to the houses');
});

test('the register of what leaves shows the drum past its day, what was sent, its checks, and until when its papers are kept', async () => {
  await walked.go('#/site');
  await plainInBoth(walked, 'site');
  await walked.go('#/site/leaving');
  const said = (await main().textContent()) ?? '';
  expect(said).toContain('past by 4 days');
  expect(said).toContain('Licensed remover');
  expect(said).toContain('2 of 6, 1 answered no');
  expect(said).toContain('Nothing in this book is deleted');
  await plainInBoth(walked, 'leaving');
});

test('what one person breathed is shown to the safety officer and to nobody else; an old flask stays shut', async () => {
  await walked.go('#/daybook/breathed-one');
  await main().getByText('are shown to the safety officer').waitFor();
  expect(await main().textContent()).not.toContain('0.0317');
  await walked.go('#/daybook/breathed-one/correct');
  expect(await main().textContent()).not.toContain('0.0317');
  await plainInBoth(walked, 'hidden');
  await walked.go('#/papers/personal-air-record');
  const paper = main().getByRole('region', { name: 'Personal air record', exact: true });
  await paper.getByText('are shown to the safety officer').waitFor();
  expect(await paper.getByRole('button').count()).toBe(0);
  expect(await paper.locator('select').count()).toBe(0);
  await walked.go('#/retort/new/receipt');
  await main().locator('summary', { hasText: 'An old flask without a mark' }).click();
  await main().getByText('photographed and weighed shut. It is not opened').waitFor();
  await plainInBoth(walked, 'receipt');
  expect(walked.errors).toEqual([]);
});

test('the site writes commas, troy ounces and its own days: the form is read so, a point is refused by name, a scale’s line is pasted, a change taken back', async () => {
  const hand = byKeyboard(walked.page);
  await walked.go('#/site/site-notation');
  await hand.choose(main().getByRole('radiogroup', { name: 'Decimals' }), 'With a comma: 12,5');
  await hand.choose(main().getByRole('radiogroup', { name: 'Masses that are worked out' }), 'Troy ounces');
  await hand.choose(main().getByRole('radiogroup', { name: 'Temperatures' }), '°F');
  await hand.choose(main().getByRole('radiogroup', { name: 'Days' }), '14.3.2026');
  const keep = main().getByRole('button', { name: 'Keep', exact: true });
  await pressIfOffered(hand, main().getByRole('button', { name: 'Keeper', exact: true }), keep);
  await plainInBoth(walked, 'words-and-units');
  await hand.press(main().getByRole('button', { name: 'Keep', exact: true }));
  // kept, the page is drawn anew in what was set
  await main().getByText('As it stands').waitFor();
  await main()
    .getByText(/^Set on \d{1,2}\.\d{1,2}\.\d{4} by/)
    .waitFor();

  await walked.keep([
    draft(
      'poured-one',
      'receipt',
      { vessel: 'bottle-one', way: 'bought', weight: { how: 'stated', mass: '4000 g' } },
      daysAgo(20),
    ),
    draft(
      'issue-one',
      'issue',
      { vessel: 'bottle-one', to: 'plates', weight: { how: 'scale', scale: 'bench-scale', gross: '311.0 g' } },
      daysAgo(6),
    ),
  ]);
  await walked.go('#/daybook/write/issue');
  await hand.press(main().getByRole('button', { name: 'Begin like the last issue' }));
  expect(await main().getByLabel('From which vessel').inputValue()).toBe('bottle-one');
  const reading = main().getByLabel('Reading', { exact: true });
  expect(await reading.inputValue()).toBe('');
  await hand.write(reading, '311,1');
  await main()
    .getByText(/10,00\d+ ± 0,0/)
    .first()
    .waitFor();
  await hand.write(reading, '1.311');
  await main().getByText('“1.311 g” has a point').waitFor();
  await hand.press(main().getByRole('button', { name: 'Take back the last change' }));
  await main().getByText('has a point').waitFor({ state: 'detached' });
  await reading.evaluate((field) => {
    const data = new DataTransfer();
    data.setData('text', 'US,GS,+ 299.0 g\nST,GS,+ 298.9 g\nST,GS,+ 298.9 oz');
    field.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
  });
  await main().getByText('still moving').waitFor();
  await main().getByText('could mean two').waitFor();
  await hand.press(main().getByRole('button', { name: 'Take 298,9 g' }));
  expect(await reading.inputValue()).toBe('298,9');
  const day = main().getByLabel('Day', { exact: true }).first();
  await hand.write(day, '31.2.2026');
  await walked.page.keyboard.press('Tab');
  await main().getByText('“31.2.2026” is no day').waitFor();
  const today = new Date().toISOString().slice(0, 10).split('-').map(Number);
  await hand.write(day, `${today[2]}.${today[1]}.${today[0]}`);
  await plainInBoth(walked, 'issue-in-commas');
  await hand.press(main().getByRole('button', { name: 'Keep', exact: true }));
  await kept();
  await main().getByText('298,9').first().waitFor();
});
