/**
 * The room Air walked in a browser: a day with a gap and a reading below detection, without and with a limit; a hot retort opened in the reckoner;
 * and entries that cannot be meant, refused by name. axe finds nothing in either theme.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { byKeyboard } from './hands.ts';
import { pictured, plainInBoth } from './looked-at.ts';
import { dayAhead, daysAgo, draft, siteAtWork } from './site-entries.ts';
import { openWalk, type WalkedWindow } from './window.ts';

let walked: WalkedWindow;
const main = () => walked.page.locator('main');

const area = (id: string, from: string, to: string, shows: string) =>
  draft(
    id,
    'air-reading',
    {
      sample: 'area',
      place: 'Retort shed',
      meter: 'meter-one',
      temperatureC: 20,
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
    draft('meter-one', 'meter', { label: 'Vapour meter', calibrated: { on: '2025-01-10', due: dayAhead(-20) } }, daysAgo(30)),
    area('air-one', '08:00', '10:00', '<0.003'),
    area('air-two', '10:00', '12:00', '0.060'),
  ]);
});
afterAll(async () => {
  await walked?.close();
});

test('a day with a gap and a reading below detection has a range without an upper end, and no verdict while no limit is picked', async () => {
  await walked.go('#/air');
  await main().getByText('Out of date by the register: Vapour meter').waitFor();
  await main().getByText('No limit is picked. Exposure is computed, and no verdict is given.').first().waitFor();
  await plainInBoth(walked, 'overview');
  const region = main().getByRole('region', { name: 'Days with readings' });
  await byKeyboard(walked.page).press(region.getByRole('link').first());
  await main()
    .getByRole('heading', { level: 1, name: /^The air on / })
    .waitFor();
  const text = (await main().innerText()).replaceAll('\u00a0', ' ');
  // 2 h at 0.060 and nothing known of four hours: 0.015 at least over eight
  expect(text).toContain('at least 0.015');
  expect(text).toContain('< 0.003 mg/m³');
  expect(text).toContain('It is not taken as clean');
  expect(text).toContain('No limit is picked for this day');
  await plainInBoth(walked, 'day');
});

test('against a limit that the site entered a day is above its figure, or nobody can tell', async () => {
  const limit = (id: string, mgM3: string) =>
    draft(
      id,
      'limit',
      {
        label: `Own figure ${mgM3}`,
        body: 'This site',
        form: 'elemental-vapour',
        mgM3,
        basis: '8h',
        people: 'work',
        source: 'A sheet of this site',
        checked: { by: 'Safety officer', on: daysAgo(20).slice(0, 10) },
        picked: 'yes',
      },
      daysAgo(20),
    );
  await walked.keep([limit('limit-one', '0.010'), limit('limit-two', '0.050')]);
  const table = main().getByRole('region', { name: 'Against the limits this site picked' });
  await table.getByRole('row', { name: /Own figure 0\.010.*above the figure you entered/ }).waitFor();
  await table.getByRole('row', { name: /Own figure 0\.050.*cannot tell/ }).waitFor();
});

test('what cannot be meant is refused, and kept out of the book', async () => {
  await expect(walked.keep([area('air-lap', '09:00', '11:00', '0.010')])).rejects.toThrow('air-overlap');
  await expect(walked.keep([area('air-back', '14:00', '13:00', '0.010')])).rejects.toThrow('air-reversed');
});

/** The printed example of three substances: 0.925, under the limit of the mixture. */
async function mixtureSummed(hand: ReturnType<typeof byKeyboard>): Promise<void> {
  await walked.go('#/air/plan/mixture');
  await hand.press(main().getByRole('button', { name: 'One more substance' }));
  const example = [
    ['500', '1000'],
    ['45', '200'],
    ['40', '200'],
  ] as const;
  for (const [i, [amount, limit]] of example.entries()) {
    const row = main().getByRole('group', { name: `Substance ${i + 1}` });
    await row.getByLabel('In the air').fill(amount);
    await row.getByLabel('Its limit').fill(limit);
  }
  await main().getByRole('row', { name: 'Sum of the shares 0.925 under 1, the limit of the mixture' }).waitFor();
  await pictured(walked, 'mixture-summed');
  const last = main().getByRole('group', { name: 'Substance 3' });
  await last.getByLabel('Its limit').fill('0');
  await main().getByText('This has to be above zero').waitFor();
  await last.getByLabel('Its limit').fill('');
  await main().getByText('The figures follow when these are filled in: 3. Its limit.').waitFor();
}

test('a hot retort opened in the reckoner shows the person at the lid apart from the room', async () => {
  const hand = byKeyboard(walked.page);
  await walked.go('#/air/plan/opening');
  const field = (label: string) => main().getByLabel(label, { exact: true });
  const typed: readonly (readonly [string, string])[] = [
    ['Free space in the retort', '3'],
    ['Measured temperature of the retort', '100'],
    ['Room', '60'],
    ['Temperature of the room', '20'],
    ['Air changes an hour', '4'],
    ['Mixing factor', '3'],
    ['Still given off afterwards', '0'],
    ['In the air before', '0'],
    ['Down to', '0.025'],
  ];
  for (const [label, text] of typed) await hand.write(field(label), text);
  const text = async () => (await main().innerText()).replaceAll(/[\u00a0\u202f]/g, ' ');
  await main().getByText('241 times', { exact: false }).waitFor();
  expect(await text()).toContain('0.120 mg/m³');
  expect(await text()).toContain('71 min');
  expect(await text()).toContain('24 min if the air mixed perfectly');
  expect(await text()).toContain('A planning figure, not a measurement.');
  await plainInBoth(walked, 'opening');
  await hand.write(field('Still given off afterwards'), '12');
  await main().getByRole('cell', { name: 'never', exact: true }).waitFor();
  await hand.write(field('Mixing factor'), '0.5');
  await main().getByText('a room cannot mix better than perfectly').waitFor();
});

test('the other planning pages refuse in place and name what they take for granted', async () => {
  const hand = byKeyboard(walked.page);
  await walked.go('#/air/plan/vapour');
  await main().getByText('The figures follow when these are filled in: Temperature of mercury and air.').waitFor();
  await hand.write(main().getByLabel('Temperature of mercury and air', { exact: true }), '20');
  await main().getByText('14.1', { exact: false }).first().waitFor();
  await plainInBoth(walked, 'vapour');
  await hand.write(main().getByLabel('Temperature of mercury and air', { exact: true }), '2000');
  await main().getByText('The vapour of liquid mercury is known from').waitFor();
  for (const page of ['room', 'hood', 'mixture', '']) {
    await walked.go(`#/air/plan/${page}`);
    await main().getByText('A planning figure, not a measurement.').first().waitFor();
    await plainInBoth(walked, page === '' ? 'planning' : page);
  }
  await mixtureSummed(hand);
  expect(walked.errors.filter((e) => !e.includes('status of 4'))).toEqual([]);
});
