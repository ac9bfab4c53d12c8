/**
 * What a mill's keeper gets wrong, typed into the window's own forms: what is true but awkward is kept and flagged in words; what cannot be meant is
 * refused at its field and by name, and no line is written.
 */
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { closeBrowser, type EmptyHome, openEmptyHome } from './empty-home.ts';
import { byKeyboard, byMouse, type Hand } from './hands.ts';
import * as steps from './mill-return-steps.ts';
import { keep, makeDaybook } from './run-steps.ts';

let home: EmptyHome;
let page: Page;
let by: Hand;

beforeAll(async () => {
  home = await openEmptyHome();
  page = home.page;
  const hand = byMouse(page);
  await makeDaybook(page, hand, 'Walk mill');
  await steps.registers(page, hand);
  await steps.vessel(page, hand, 'Empty jar', 'Jar');
  by = byKeyboard(page);
});
afterAll(async () => {
  await home?.close();
  await closeBrowser();
});

const main = (): Locator => page.locator('main');
const plain = (text: string): string => text.replaceAll(/[\u00a0\u202f]/g, ' ');
const textOf = async (place: Locator): Promise<string> => plain((await place.textContent()) ?? '');

/** Presses Keep and expects that nothing was written and the focus is led to this field; what its problem says. */
async function refusedAt(field: Locator): Promise<string> {
  const before = home.journalLines();
  await by.press(steps.button(page, 'Keep'));
  await main().getByText('Nothing was kept.').waitFor();
  expect(home.journalLines()).toBe(before);
  expect(await field.getAttribute('aria-invalid')).toBe('true');
  expect(await field.evaluate((element) => element === document.activeElement)).toBe(true);
  return textOf(page.locator(`#${await field.getAttribute('aria-describedby')}`));
}

/** Opens the account and answers what it wants read first. */
async function reservations(): Promise<string> {
  await by.press(steps.room(page, 'Mercury'));
  await by.press(
    main()
      .getByRole('link', { name: /^Account/ })
      .first(),
  );
  const notice = main().locator('section', { hasText: 'Reservations, to be read first' }).first();
  await notice.waitFor();
  return textOf(notice);
}

describe('true but awkward', () => {
  it('an issue from an empty vessel is asked about, kept when it was so, and flagged in words', async () => {
    const before = home.journalLines();
    await steps.issue(page, by, 3, 'Empty jar', 'Plates', '5');
    await by.press(steps.button(page, 'Keep'));
    await main().getByText('Mend the weight or the vessel, or tick that it was so.').waitFor();
    expect(home.journalLines()).toBe(before);
    await steps.weighedSo(page, by);
    await keep(page, by);
    expect(home.journalLines()).toBe(before + 1);
    // 5 × 31.1034768 g
    expect(await reservations()).toContain(
      'By the book “Empty jar” now holds −155.52 g: more was taken out than was ever put in.',
    );
    await by.press(main().getByRole('link', { name: 'Issue of mercury of 3 March 2026' }).first());
    await main()
      .getByText(/By the book “Empty jar” now holds/)
      .first()
      .waitFor();
  });

  it('a cleaning whose parts weigh more than went in is kept, and flagged in words', async () => {
    const before = home.journalLines();
    await steps.writeUp(page, by, 'Cleaning of amalgam');
    await steps.on(page, 5);
    // folded twice: what is seldom asked, and within it the amalgam that was never a lot
    const titled = { hasText: 'Dirty amalgam straight from the circuit' };
    await by.press(main().locator('form summary', titled).first());
    const within = main().locator('form details[open] details > summary', titled).first();
    await within.waitFor();
    await by.press(within);
    await main().locator('form details[open] details[open] > summary', titled).first().waitFor();
    await by.write(steps.reading(page, 'Dirty amalgam'), '100');
    await by.choose(steps.choice(page, 'From which part'), 'Plates');
    await by.write(steps.text(page, 'Label'), 'Heavy ball');
    await by.write(steps.reading(page.getByRole('group', { name: /^Lot 1/ }), 'Weight'), '120');
    await keep(page, by);
    expect(home.journalLines()).toBe(before + 1);
    // 20 × 31.1034768 g
    expect(await reservations()).toContain('The parts weigh 622.07 g more than went in');
  });
});

describe('what cannot be meant', () => {
  it('a transfer without a receiver is refused at its field', async () => {
    await steps.writeUp(page, by, 'Transfer');
    await by.choose(steps.choice(page, 'Which way'), 'Out of this site');
    await by.choose(steps.choice(page, 'What moved'), 'Mercury');
    await by.pick(steps.list(page, 'Vessel'), 'Bottle');
    await by.write(steps.reading(page, 'Weight here'), '10');
    expect(await refusedAt(steps.text(page, 'The other party'))).toContain('This is missing');
  });

  it('a weight typed with a bare “oz” is refused by name, and asked about', async () => {
    await steps.issue(page, by, 3, 'Flask 1', 'Plates', '5 oz');
    const question = 'Two ounces are in use. Which one does the scale read?';
    expect(await refusedAt(steps.reading(page, 'Mercury issued'))).toContain(question);
    expect(await main().getByRole('group', { name: question }).getByRole('button').allTextContents()).toEqual([
      'ozt (troy ounce)',
      'oz-av (avoirdupois ounce)',
    ]);
  });

  it('a parcel with two tonnages on one day is refused by name', async () => {
    await steps.parcel(page, by, 'North parcel');
    await steps.crush(page, by, { amount: '12 long-ton', parcel: 'North parcel' });
    await keep(page, by);
    const before = home.journalLines();
    await steps.crush(page, by, { amount: '13 long-ton', parcel: 'North parcel' });
    await by.press(steps.button(page, 'Keep'));
    await main().getByText('Nothing was kept.').waitFor();
    expect(home.journalLines()).toBe(before);
    expect(await textOf(steps.group(page, 'Ore'))).toContain(
      'This parcel has 12 long-ton on the book for this day and battery, and now 13 long-ton',
    );
  });

  it('ore typed with a bare “ton” is refused by name, and asked about', async () => {
    await steps.crush(page, by, { amount: '12 ton' });
    const question = 'Three tons are in use. Which one is it?';
    expect(await refusedAt(steps.text(page, 'Ore put through'))).toContain(question);
    expect(await main().getByRole('group', { name: question }).getByRole('button').allTextContents()).toEqual([
      'long-ton (2,240 lb)',
      'short-ton (2,000 lb)',
      't (tonne)',
    ]);
  });
});

it('no page met an error', () => {
  expect(home.faults).toEqual([]);
});
