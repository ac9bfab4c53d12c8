/** The steps of a first run, from an empty home to the closing figure, each done by whatever hand it is given. Numbers: practice.md, example W8. */
import type { Page } from 'playwright';
import { type Hand, pressIfOffered } from './hands.ts';

/** Balls, sponge and mercury of the example, in grams as read. */
export const example = { balls: ['212.4', '198.7', '205.1', '187.9', '151.5'], sponge: '371.8', mercury: '571.2' } as const;

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });
const link = (page: Page, name: string | RegExp) => page.getByRole('link', { name, exact: typeof name === 'string' });
const text = (page: Page, name: string | RegExp) => page.getByRole('textbox', { name });
const group = (page: Page, name: string | RegExp) => page.getByRole('radiogroup', { name });
const room = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name, exact: true });

/** Presses Keep and waits until the line is on the disk. */
export async function keep(page: Page, hand: Hand): Promise<void> {
  await hand.press(button(page, 'Keep'));
  await page
    .locator('main')
    .getByText(/^Kept · entry/)
    .waitFor();
}

export async function makeDaybook(page: Page, hand: Hand, name = 'Walk battery'): Promise<void> {
  await hand.write(text(page, /^Name of the site/), name);
  await hand.press(button(page, 'Make the daybook'));
  await room(page, 'Retort').waitFor();
}

export async function stateStanding(page: Page, hand: Hand): Promise<void> {
  await hand.press(link(page, /standing\?$/).first());
  const begin = button(page, 'State the standing');
  await pressIfOffered(hand, begin, begin.or(group(page, 'What mercury is held?')));
  await hand.choose(group(page, 'What mercury is held?'), 'A stock of mercury');
  await hand.choose(group(page, 'What is done?'), 'Clearing legacy mercury');
  await hand.press(button(page, 'Keep'));
  await page
    .getByText(/^Standing: A stock of mercury|Clearing legacy mercury/)
    .first()
    .waitFor();
}

/** Opens a register with its empty sheet. */
async function register(page: Page, hand: Hand, name: string): Promise<void> {
  await hand.press(room(page, 'Site'));
  await hand.press(link(page, new RegExp(`: ${name}$`)));
  await page.getByRole('heading', { level: 1, name }).waitFor();
}

export async function enterRegisters(page: Page, hand: Hand): Promise<void> {
  await register(page, hand, 'People');
  await hand.write(text(page, /^Name/), 'Keeper');
  await hand.tick(page.getByRole('checkbox', { name: 'Keeper of the battery' }));
  await keep(page, hand);
  // the first person entered writes from then on
  await page.getByRole('banner').getByRole('button', { name: 'Keeper' }).waitFor();

  await register(page, hand, 'Scales');
  await hand.write(text(page, /^Name of the scale/), 'Bench scale');
  await hand.write(text(page, /^The most it weighs/), '3000');
  await hand.write(text(page, /^Step of its display/), '0.1');
  await hand.write(text(page, /^Expanded uncertainty U/), '0.1');
  await hand.write(text(page, /^Load the certificate states it for/), '2000');
  await keep(page, hand);

  await register(page, hand, 'Vessels');
  await hand.write(text(page, /^Label on the vessel/), 'Bottle 1');
  await hand.choose(group(page, 'What it is'), 'Bottle');
  await keep(page, hand);

  await register(page, hand, 'Retorts');
  await hand.write(text(page, /^Name of the retort/), 'Pot retort');
  await keep(page, hand);
}

export async function receiveMercury(page: Page, hand: Hand): Promise<void> {
  await hand.press(room(page, 'Retort'));
  await hand.press(link(page, 'Mercury received'));
  await hand.choose(group(page, 'How did it come?'), 'It was here when this book began');
  await hand.pick(page.getByRole('combobox', { name: /^Vessel it is in now/ }), 'Bottle 1');
  await hand.write(
    page
      .getByRole('group', { name: /^Mercury, net/ })
      .getByRole('textbox')
      .first(),
    '2500.0',
  );
  await keep(page, hand);
}

/** The five balls: the label once, then weight after weight with Enter. */
export async function cleanUp(page: Page, hand: Hand, balls: readonly string[] = example.balls): Promise<void> {
  await hand.press(room(page, 'Retort'));
  await hand.press(link(page, 'Clean-up'));
  await hand.choose(group(page, 'Type of clean-up'), 'Routine');
  await hand.write(page.getByLabel('Label of row 1'), 'B1');
  for (const [i, ball] of balls.entries()) {
    await hand.write(page.getByLabel(`Weight of row ${i + 1}`), ball);
    if (i + 1 < balls.length) await page.keyboard.press('Enter');
  }
}

export async function charge(page: Page, hand: Hand, balls: readonly string[] = example.balls): Promise<void> {
  await hand.press(link(page, 'Charge these lots'));
  for (const [i, ball] of balls.entries())
    await hand.write(page.getByLabel(`Weight of B${i + 1} at charging`, { exact: true }), ball);
}

/** Notes a temperature and what was seen while the retort is hot, and what the main run is held between. */
export async function noteTheFire(page: Page, hand: Hand): Promise<void> {
  await hand.press(page.locator('summary', { hasText: 'Noted along the fire' }));
  await hand.press(button(page, 'Note something now'));
  const note = page.getByRole('group', { name: 'Note 1 of the fire' });
  await hand.write(note.getByRole('textbox', { name: /^Temperature read/ }), '480');
  await hand.write(note.getByRole('textbox', { name: /^What was seen/ }), 'steady drip');
  await hand.choose(note.getByRole('radiogroup', { name: 'Cooling water turned' }), 'On');
  await hand.write(text(page, /^Aimed at, from/), '400');
  await hand.write(text(page, /^Aimed at, to/), '550');
}

export async function fire(page: Page, hand: Hand): Promise<void> {
  await hand.press(page.getByRole('group', { name: 'Fire lit' }).getByRole('button', { name: 'Now' }));
  await hand.press(page.getByRole('group', { name: 'Opened' }).getByRole('button', { name: 'Now' }));
  await hand.choose(group(page, 'How was it known to be cold?'), 'A temperature was measured');
  await hand.write(text(page, /^Temperature measured/), '24');
  await hand.write(page.getByRole('group', { name: 'Sponge', exact: true }).getByRole('textbox').first(), example.sponge);
  await hand.write(
    page.getByRole('group', { name: 'Mercury caught', exact: true }).getByRole('textbox').first(),
    example.mercury,
  );
  await hand.pick(page.getByRole('combobox', { name: /^Vessel the mercury went to/ }), 'Bottle 1');
  await hand.choose(group(page, 'Mercury when weighed'), 'Dry');
}
