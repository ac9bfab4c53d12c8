/**
 * What keeper, safety officer and assayer write up on a day, each by keyboard alone from Today, on a site that is set up: every key press counted, Tab
 * among them, and held to a bound a little above what was measured when this was written: 225, 67 and 119. The site is invented; the keeper's numbers are practice.md's example W8.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bullion } from '../../app/words/screens-bullion.ts';
import { assaying } from '../../app/words/screens-bullion-assaying.ts';
import { countedKeys } from './counted-keys.ts';
import { byKeyboard, type Hand } from './hands.ts';
import { bookOnDisk, day, draftsBy } from './invented.ts';
import * as steps from './run-steps.ts';
import { openWalk, type WalkedWindow } from './window.ts';

let walked: WalkedWindow;
let hand: Hand;
let keys: () => number;
const draft = draftsBy('keeper-one');
const main = () => walked.page.locator('main');
const kept = () => main().getByText(/^Kept · entry/);
const room = (name: string) => walked.page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name, exact: true });

beforeAll(async () => {
  walked = await openWalk('Invented battery');
  await walked.keep([
    draft('keeper-one', 'person', { name: 'Keeper', roles: ['keeper'] }, 60),
    draft('officer-one', 'person', { name: 'Safety officer', roles: ['safety-officer'] }, 60),
    draft('assayer-one', 'person', { name: 'Assayer', roles: ['assayer'] }, 60),
    draft('standing-one', 'standing', { held: [{ what: 'stock' }], done: [{ what: 'clearing' }] }, 60),
    draft('bench-scale', 'scale', { label: 'Bench scale', maximum: '3 kg', d: '0.1 g' }, 60),
    draft('bottle-one', 'vessel', { label: 'Bottle 1', use: 'bottle', mercury: 'mixed' }, 60),
    draft('pot-retort', 'retort', { label: 'Pot retort', capacity: '2 kg' }, 60),
    draft('meter-one', 'meter', { label: 'Vapour meter' }, 60),
    draft(
      'air-one',
      'air-reading',
      {
        meter: 'meter-one',
        sample: 'area',
        place: 'Bench',
        mode: 'mean',
        unit: 'mg/m3',
        shows: '0.004',
        from: `${day(9).slice(0, 10)}T01:00+00:00`,
        to: `${day(9).slice(0, 10)}T01:30+00:00`,
      },
      9,
    ),
    draft('receipt-one', 'receipt', { vessel: 'bottle-one', weight: { how: 'stated', mass: '2500 g' }, way: 'already-here' }, 59),
    draft(
      'melt-one',
      'melt',
      {
        sponges: [],
        added: [{ key: 'a1', label: 'old sponge', weight: { how: 'stated', mass: '560 g' } }],
        bars: [{ key: 'b1', label: 'W-7', weight: { how: 'stated', mass: '550 g' } }],
      },
      20,
    ),
  ]);
  hand = byKeyboard(walked.page);
  keys = countedKeys(walked.page);
}, 240_000);
afterAll(() => walked?.close());

/** Whoever writes takes the desk, and stands at Today. Not counted. */
async function writes(name: string): Promise<number> {
  await walked.go('#/today');
  const desk = walked.page.locator('header').getByRole('button', { name: /nobody named|Keeper|Safety officer|Assayer/ });
  if ((await desk.textContent())?.trim() !== name) {
    await desk.click();
    await walked.page.getByRole('dialog').getByRole('button', { name, exact: true }).click();
  }
  return keys();
}

test('the keeper: a clean-up of five balls, its charge and its firing to the closing figure, in fewer than 250 key presses', async () => {
  const before = await writes('Keeper');
  await steps.cleanUp(walked.page, hand);
  await steps.keep(walked.page, hand);
  await steps.charge(walked.page, hand);
  await hand.press(main().getByRole('button', { name: 'Keep', exact: true }));
  await hand.press(main().getByRole('link', { name: 'Go to the run' }));
  await walked.page.getByText('Fire lit', { exact: true }).waitFor();
  await steps.fire(walked.page, hand);
  await hand.press(main().getByRole('button', { name: 'Keep', exact: true }));
  await main().getByRole('heading', { name: 'What the numbers say' }).waitFor();
  const pressed = keys() - before;
  expect(pressed).toBeLessThan(250);
  expect(bookOnDisk(walked).current.of('firing')).toHaveLength(1);
}, 240_000);

test('the safety officer: a reading of an area over half an hour, in fewer than 75 key presses', async () => {
  const before = await writes('Safety officer');
  await hand.press(room('Air'));
  await hand.press(
    main()
      .getByRole('link', { name: /^Write down a reading/ })
      .first(),
  );
  const from = main().getByRole('group', { name: /^From/ });
  await hand.write(from.getByLabel('Time'), '0600AM');
  await hand.write(main().getByRole('group', { name: /^To/ }).getByLabel('Time'), '0630AM');
  await hand.write(main().getByLabel(/^The figure as shown/), '0.012');
  await hand.press(main().getByRole('button', { name: 'Keep', exact: true }));
  await main().getByText('0.012 mg/m³', { exact: false }).first().waitFor();
  const pressed = keys() - before;
  expect(pressed).toBeLessThan(75);
}, 120_000);

test('the assayer: a fire assay in duplicate with two proofs, in fewer than 130 key presses', async () => {
  const before = await writes('Assayer');
  await hand.press(room('Bullion'));
  await hand.press(main().getByRole('link', { name: new RegExp(`^${bullion.assayIt}.*W-7`) }));
  await hand.choose(main().getByRole('radiogroup', { name: assaying.method }), 'Fire assay');
  const at = (name: string) => main().getByRole('textbox', { name, exact: true });
  for (const [n, taken, cornet] of [
    [1, '250.12', '221.437'],
    [2, '250.08', '221.402'],
  ] as const) {
    await hand.write(at(assaying.field(assaying.taken, assaying.sampleOne, n)), taken);
    await hand.write(at(assaying.field(assaying.cornet, assaying.sampleOne, n)), cornet);
  }
  for (const [n, taken, found] of [
    [1, '221.50', '221.58'],
    [2, '221.46', '221.53'],
  ] as const) {
    await hand.write(at(assaying.field(assaying.goldTaken, assaying.proofOne, n)), taken);
    await hand.write(at(assaying.field(assaying.goldFound, assaying.proofOne, n)), found);
  }
  await hand.press(main().getByRole('button', { name: 'Keep', exact: true }));
  await kept().waitFor();
  const pressed = keys() - before;
  expect(pressed).toBeLessThan(130);
  expect(walked.errors).toEqual([]);
}, 120_000);
