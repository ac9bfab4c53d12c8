/**
 * The pages of the room Air walked in a browser: a day with a gap and a reading below detection drawn, a reading written by keyboard and asked about, a limit
 * entered out of a row, a meter's table with faults and then without. axe finds nothing in either theme.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { byKeyboard } from './hands.ts';
import { pictured, plainInBoth } from './looked-at.ts';
import { dayAhead, daysAgo, draft, siteAtWork } from './site-entries.ts';
import { openWalk, type WalkedWindow } from './window.ts';

let walked: WalkedWindow;
const main = () => walked.page.locator('main');
const field = (label: string) => main().getByLabel(label, { exact: true });
const group = (name: string) => main().getByRole('radiogroup', { name, exact: true });
const text = async () => (await main().innerText()).replaceAll(/[\u00a0\u202f]/g, ' ');

const area = (id: string, from: string, to: string, shows: string) =>
  draft(
    id,
    'air-reading',
    {
      sample: 'area',
      place: 'Retort shed',
      meter: 'meter-one',
      temperatureC: 20,
      pressureKpa: 98,
      unit: 'mg/m3',
      shows,
      from: daysAgo(2, from),
      to: daysAgo(2, to),
      shift: { from: daysAgo(2, '08:00'), to: daysAgo(2, '16:00') },
    },
    daysAgo(2, from),
  );

beforeAll(async () => {
  walked = await openWalk('Invented battery');
  await walked.keep([
    ...siteAtWork(),
    draft('meter-one', 'meter', { label: 'Vapour meter', calibrated: { on: '2025-01-10', due: dayAhead(200) } }, daysAgo(30)),
    area('air-one', '08:00', '10:00', '<0.003'),
    area('air-two', '10:00', '12:00', '0.060'),
  ]);
});
afterAll(async () => {
  await walked?.close();
});

test('a day is drawn with its gap, each value is told as it gets the focus, and raw figures have their neighbours', async () => {
  await walked.go('#/air');
  await main().getByRole('region', { name: 'Days with readings' }).getByRole('link').first().click();
  await main().getByText('Not read: 12:00 to 16:00 (4 h).').waitFor();
  const drawing = main().getByRole('group', { name: 'Mercury in the air over the day' });
  await drawing.getByRole('link').first().focus();
  await main().locator('.told').filter({ hasText: '08:00 to 10:00' }).waitFor();
  await walked.page.keyboard.press('ArrowRight');
  await main().locator('.told').filter({ hasText: '10:00 to 12:00' }).waitFor();
  // 0.060 · (101.325 / 98) · (293.15 / 298.15), reckoned by hand
  expect(await text()).toContain('0.0610 mg/m³');
  await plainInBoth(walked, 'day');
});

test('a limit is entered out of its row, refused by name without its source, and picked only once somebody looked it up', async () => {
  const hand = byKeyboard(walked.page);
  await walked.go('#/air/limits');
  await main().getByText('No limit is picked. Exposure is computed, and no verdict is given.').waitFor();
  // a row that nobody here has looked up says so, with its body and its form
  await main()
    .getByRole('row', { name: /ACGIH threshold limit value.*Mercury vapour.*ACGIH.*not looked up by anybody here yet/ })
    .waitFor();
  await plainInBoth(walked, 'limits');
  await walked.go('#/air/limits/acgih');
  await field('Figure, mg/m³').waitFor();
  expect(await field('Figure, mg/m³').inputValue()).toBe('0.025');
  expect(await group('For whom').getByLabel('People at work').isChecked()).toBe(true);
  await plainInBoth(walked, 'limit-form');
  const keep = main().getByRole('button', { name: 'Keep', exact: true });
  await main().getByRole('button', { name: 'Keeper', exact: true }).click();
  const source = main().getByLabel(/^Source: the paper it was read in/);
  const was = await source.inputValue();
  await hand.write(source, ' ');
  await hand.choose(group('Days are compared with it'), 'Yes');
  await keep.click();
  await main().getByText('A limit without its source is hearsay').waitFor();
  await main().getByText('say who checked it against its paper').first().waitFor();
  await source.fill(was);
  await group('Days are compared with it').getByText('not recorded', { exact: true }).click();
  await keep.click();
  await main().getByText('not picked', { exact: false }).first().waitFor();
  await walked.go('#/air/limits');
  await main().getByText('No limit is picked. Exposure is computed, and no verdict is given.').waitFor();
});

test('a reading is written by keyboard: the meter stands there, 68 is asked about, and what is dangerous is told at once', async () => {
  const hand = byKeyboard(walked.page);
  await walked.go('#/air/reading');
  expect(await main().getByLabel('Meter', { exact: true }).locator('option:checked').innerText()).toBe('Vapour meter');
  await main().getByText('Calibrated 10 January 2025').waitFor();
  const shows = main().getByLabel(/^The figure as shown/);
  const from = main().getByRole('group', { name: /^From/ });
  const to = main().getByRole('group', { name: /^To/ });
  await from.getByLabel('Day').fill(daysAgo(1).slice(0, 10));
  await from.getByLabel('Time').fill('09:00');
  await to.getByLabel('Time').fill('08:30');
  await hand.write(shows, '12');
  await main().getByText('immediately dangerous to life or health').waitFor();
  await hand.write(shows, '<0.003');
  const temperature = main().getByLabel(/^Air temperature/);
  await hand.write(temperature, '68');
  await plainInBoth(walked, 'reading');
  const keep = main().getByRole('button', { name: 'Keep', exact: true });
  await hand.press(keep);
  await main().getByText('It ends (', { exact: false }).waitFor();
  await main().getByText('Was the air at 68 °C? 68 °F would be 20 °C.', { exact: false }).waitFor();
  await pictured(walked, 'reading-asked');
  // longer than a day, and an hour that is read already: refused by name, and nothing typed is lost
  await from.getByLabel('Day').fill(daysAgo(2).slice(0, 10));
  await from.getByLabel('Time').fill('07:00');
  await to.getByLabel('Day').fill(daysAgo(1).slice(0, 10));
  await to.getByLabel('Time').fill('07:30');
  await hand.press(keep);
  await main().getByText('takes more than 24 hours').waitFor();
  await from.getByLabel('Time').fill('09:00');
  await to.getByLabel('Day').fill(daysAgo(2).slice(0, 10));
  await to.getByLabel('Time').fill('09:30');
  await hand.press(keep);
  await main().getByText('so an hour would count twice').waitFor();
  expect(await shows.inputValue()).toBe('<0.003');
  await from.getByLabel('Day').fill(daysAgo(1).slice(0, 10));
  await to.getByLabel('Day').fill(daysAgo(1).slice(0, 10));
  // a temperature left blank is kept as not recorded, and what needs it says so
  await temperature.fill('');
  await hand.press(keep);
  await main().getByText('< 0.003 mg/m³', { exact: false }).first().waitFor();
  await walked.go('#/air');
  await expect.poll(() => main().getByRole('region', { name: 'Days with readings' }).getByRole('row').count()).toBe(3);
  await main().getByRole('region', { name: 'Days with readings' }).getByRole('link').first().click();
  await main().getByText('cannot be told: temperature not recorded').first().waitFor();
});

test('the table of a meter is kept whole or not at all, and every fault is named by its row and column', async () => {
  await walked.go('#/air/meter');
  const day = daysAgo(4).slice(0, 10);
  const table = (figure: string, clock: string) => `Time,Hg\n${day} 08:00:00,0.004\n${day} ${clock},${figure}\n`;
  const paste = main().getByLabel('Or the table itself, pasted');
  await paste.fill(table('0.o12', '07:00:00'));
  await field('When a row begins').selectOption({ label: 'Time' });
  await field('The figure').selectOption({ label: 'Hg' });
  await group('What was read').getByText('A place where people work').click();
  await group('Unit of the figures').getByText('mg/m³ (milligrams)').click();
  await field('Place').fill('Bench');
  const stopped = main().getByRole('group', { name: 'The meter was stopped' });
  await stopped.getByLabel('Day').fill(day);
  await stopped.getByLabel('Time').fill('08:20');
  await field('Its clock’s offset from UTC').fill('+00:00');
  await main().getByRole('alert').getByText('nothing can be kept yet').waitFor();
  expect(await main().getByRole('alert').innerText()).toMatch(/row 2[\s\S]*(Hg|Time)/i);
  await plainInBoth(walked, 'meter-faults');
  await paste.fill(table('0.012', '08:10:00'));
  await main().getByRole('button', { name: 'Keep all 2 readings' }).click();
  await main().getByText('2 readings are kept.').waitFor();
  await pictured(walked, 'meter-kept');
  await walked.go('#/air');
  await main().getByRole('row', { name: /Bench/ }).waitFor();
  await pictured(walked, 'overview');
  expect(walked.errors.filter((e) => !e.includes('status of 4'))).toEqual([]);
});
