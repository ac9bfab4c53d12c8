/**
 * The month of practice.md's example W7 typed into the window's own forms, from the registers to the closing count. The figures stand in
 * `test/outside/data/mill-return.json`, in troy ounces; every entry is kept by the button Keep.
 */
import type { Locator, Page } from 'playwright';
import data from '../outside/data/mill-return.json' with { type: 'json' };
import { type Hand, pressIfOffered } from './hands.ts';
import { keep } from './run-steps.ts';

const main = (page: Page): Locator => page.locator('main');
const exactly = (name: string): RegExp => new RegExp(`^${name}( \\*)?$`);
export const text = (scope: Page | Locator, name: string): Locator => scope.getByRole('textbox', { name, exact: true });
export const choice = (scope: Page | Locator, name: string): Locator => scope.getByRole('radiogroup', { name, exact: true });
export const list = (scope: Page | Locator, name: string): Locator => scope.getByRole('combobox', { name, exact: true });
export const group = (scope: Page | Locator, name: string): Locator => scope.getByRole('group', { name: exactly(name) });
/** Where a weighing is typed; what heads it may stand around it as well. */
export const reading = (scope: Page | Locator, name: string): Locator => group(scope, name).last().getByRole('textbox').first();
export const button = (page: Page, name: string): Locator => page.getByRole('button', { name, exact: true });
export const room = (page: Page, name: string): Locator =>
  page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name, exact: true });
const fold = (scope: Page | Locator, title: string): Locator => scope.locator('summary', { hasText: title });

/** The day and hour of an entry, in March. */
export async function on(page: Page, day: number, hour = 9): Promise<void> {
  await page
    .getByLabel('Day', { exact: true })
    .first()
    .fill(`2026-03-${String(day).padStart(2, '0')}`);
  await page
    .getByLabel('Time', { exact: true })
    .first()
    .fill(`${String(hour).padStart(2, '0')}:00`);
}

/** Opens the sheet of a kind from Today, as a person finds it. */
export async function writeUp(page: Page, hand: Hand, kind: string): Promise<void> {
  await hand.press(room(page, 'Today'));
  await main(page).getByRole('heading', { level: 1, name: 'Today' }).waitFor();
  await hand.press(fold(main(page), 'More to write up'));
  await hand.press(main(page).getByRole('link', { name: kind, exact: true }));
  await main(page).locator('form').waitFor();
}

async function register(page: Page, hand: Hand, name: string, add: string): Promise<void> {
  await hand.press(room(page, 'Site'));
  await hand.press(page.getByRole('link', { name: new RegExp(`: ${name}$`) }));
  await page.getByRole('heading', { level: 1, name }).waitFor();
  await pressIfOffered(hand, button(page, add), button(page, add).or(main(page).locator('form')));
}

/** Uses mercury under an invented authority. */
export async function underAuthority(page: Page, hand: Hand): Promise<void> {
  await hand.press(page.getByRole('link', { name: /standing\?$/ }).first());
  const begin = button(page, 'State the standing');
  await pressIfOffered(hand, begin, begin.or(choice(page, 'What mercury is held?')));
  await hand.choose(choice(page, 'What mercury is held?'), 'A stock of mercury');
  await hand.choose(choice(page, 'What is done?'), 'Use under an authority');
  await hand.write(text(page, 'Which authority'), 'Consent of the district');
  await hand.write(text(page, 'Its number'), 'HG 7');
  await hand.write(text(page, 'What it covers'), 'concentrate over plates');
  await hand.choose(choice(page, 'Does it state an expiry?'), 'None stated');
  await hand.press(button(page, 'Keep'));
  await main(page).getByText('Use under an authority (Consent of the district').first().waitFor();
}

export async function person(page: Page, hand: Hand): Promise<void> {
  await register(page, hand, 'People', 'Enter a person');
  await hand.write(text(page, 'Name'), 'Keeper');
  await hand.tick(page.getByRole('checkbox', { name: 'Keeper of the battery' }));
  await keep(page, hand);
  await page.getByRole('banner').getByRole('button', { name: 'Keeper' }).waitFor();
}

/** A scale that reads in troy ounces. */
export async function scale(page: Page, hand: Hand): Promise<void> {
  await register(page, hand, 'Scales', 'Enter a scale');
  await hand.write(text(page, 'Name of the scale'), 'Mill scale');
  await hand.write(text(page, 'The most it weighs'), '2000 ozt');
  await hand.write(text(page, 'Step of its display'), '0.01 ozt');
  await hand.write(text(page, 'Expanded uncertainty U'), '0.02 ozt');
  await hand.write(text(page, 'Load the certificate states it for'), '1000 ozt');
  await keep(page, hand);
}

export async function vessel(page: Page, hand: Hand, label: string, use: string): Promise<void> {
  await register(page, hand, 'Vessels', 'Enter a vessel');
  await hand.write(text(page, 'Label on the vessel'), label);
  await hand.choose(choice(page, 'What it is'), use);
  await keep(page, hand);
}

export async function retort(page: Page, hand: Hand): Promise<void> {
  await register(page, hand, 'Retorts', 'Enter a retort');
  await hand.write(text(page, 'Name of the retort'), 'Pot retort');
  await keep(page, hand);
}

export async function battery(page: Page, hand: Hand): Promise<void> {
  await register(page, hand, 'Batteries', 'Enter a battery');
  await hand.write(text(page, 'Name of the battery'), 'Battery');
  await hand.write(text(page, 'Stamps in it'), '10');
  await keep(page, hand);
}

export async function alreadyHere(page: Page, hand: Hand, label: string, ozt: string, seal?: string): Promise<void> {
  await writeUp(page, hand, 'Receipt of mercury');
  await on(page, 1);
  await hand.choose(choice(page, 'How did it come?'), 'It was here when this book began');
  await hand.pick(list(page, 'Vessel it is in now'), label);
  await hand.write(reading(page, 'Mercury, net'), `${ozt} ozt`);
  if (seal !== undefined) {
    await hand.press(fold(main(page), 'Papers and seal'));
    await hand.write(text(page, 'Seal number, if it stands unopened'), seal);
  }
  await keep(page, hand);
}

export type Answer =
  | { readonly how: 'sealed'; readonly seal: string }
  | { readonly how: 'weighed'; readonly ozt: string }
  | { readonly how: 'estimated'; readonly mass: string; readonly method: string; readonly percent?: string };

/** A count of every place that the sheet asks about. */
export async function count(page: Page, hand: Hand, day: number, answers: Readonly<Record<string, Answer>>): Promise<void> {
  await writeUp(page, hand, 'Stock-take');
  await on(page, day, 10);
  for (const [place, answer] of Object.entries(answers)) {
    const row = page.getByRole('group', { name: place, exact: true });
    const how = choice(row, 'Answer');
    if (answer.how === 'sealed') {
      await hand.choose(how, 'Sealed, and the seal stands');
      await hand.write(text(row, 'Seal number'), answer.seal);
    } else if (answer.how === 'weighed') {
      await hand.choose(how, 'Weighed');
      await hand.write(reading(row, 'Mercury weighed'), answer.ozt);
    } else {
      await hand.choose(how, 'Estimated');
      await hand.write(text(row, 'Mercury, estimated'), answer.mass);
      await hand.write(text(row, 'Method of estimating'), answer.method);
      if (answer.percent !== undefined) {
        await hand.press(fold(row, 'Further answers'));
        await hand.write(text(row, 'Uncertainty of the method'), answer.percent);
      }
    }
  }
  await main(page).getByText('Every place is answered.').waitFor();
  await keep(page, hand);
}

export async function crush(
  page: Page,
  hand: Hand,
  ore: { readonly amount: string; readonly unit?: string; readonly percent?: string; readonly parcel?: string },
): Promise<void> {
  await writeUp(page, hand, 'Crushing');
  await on(page, 2);
  await hand.pick(list(page, 'Battery'), 'Battery');
  await hand.choose(choice(page, 'What was fed'), 'Concentrate');
  await hand.choose(choice(page, 'Mercury fed with it'), 'Into the mortar box');
  await hand.write(text(page, 'Ore put through'), ore.amount);
  if (ore.unit !== undefined) await hand.pick(list(page, 'Unit of Ore put through'), ore.unit);
  if (ore.percent !== undefined) {
    await hand.press(fold(group(page, 'Ore'), 'Further answers'));
    await hand.write(text(page, 'Its standard uncertainty'), ore.percent);
  }
  if (ore.parcel !== undefined) await hand.pick(list(page, 'Parcel'), ore.parcel);
}

export async function issue(page: Page, hand: Hand, day: number, from: string, to: string, amount: string): Promise<void> {
  await writeUp(page, hand, 'Issue of mercury');
  await on(page, day);
  await hand.pick(list(page, 'From which vessel'), from);
  const part = to === 'Mortar box' || to === 'Plates';
  await hand.choose(choice(page, 'Issued to'), part ? to : 'Another vessel');
  if (!part) await hand.pick(list(page, 'Into which vessel'), to);
  await hand.write(reading(page, 'Mercury issued'), amount);
}

/** Answers the question that stands while more is drawn off than the book has. */
export async function weighedSo(page: Page, hand: Hand): Promise<void> {
  await main(page).getByText('More than the book says is there').waitFor();
  await hand.tick(page.getByRole('checkbox', { name: 'It was weighed so: keep it' }));
}

async function cleaning(page: Page, hand: Hand): Promise<void> {
  const { added, plates, battery: mortar, strained } = data.cleaning;
  await writeUp(page, hand, 'Cleaning of amalgam');
  await on(page, 26);
  await hand.write(reading(page, 'Mercury put to it'), added);
  await hand.pick(list(page, 'From which vessel'), 'Bottle');
  for (const [i, [label, ozt, source]] of [
    ['From the plates', plates, 'Outside plate'],
    ['From the battery', mortar, 'Mortar box'],
  ].entries()) {
    if (i > 0) await hand.press(button(page, 'Add: Lot'));
    const lot = page.getByRole('group', { name: new RegExp(`^Lot ${i + 1}`) });
    await hand.write(text(lot, 'Label'), label ?? '');
    await hand.write(reading(lot, 'Weight'), ozt ?? '');
    await hand.press(fold(lot, 'Further answers'));
    await hand.choose(choice(lot, 'State'), 'Squeezed');
    await hand.choose(choice(lot, 'Where it came from'), source ?? '');
  }
  await hand.write(reading(page, 'Strained mercury'), strained);
  await hand.pick(list(page, 'Into which vessel'), 'Bottle');
  await weighedSo(page, hand);
  await keep(page, hand);
}

async function chargeAndFire(page: Page, hand: Hand): Promise<void> {
  await hand.press(room(page, 'Retort'));
  await hand.press(page.getByRole('link', { name: 'Charge a retort', exact: true }));
  await on(page, 27);
  await hand.write(page.getByLabel('Weight of From the plates at charging', { exact: true }), `${data.cleaning.plates} ozt`);
  await hand.write(page.getByLabel('Weight of From the battery at charging', { exact: true }), `${data.cleaning.battery} ozt`);
  await hand.press(button(page, 'Keep'));
  await hand.press(page.getByRole('link', { name: 'Go to the run' }));

  const opened = page.getByRole('group', { name: 'Opened', exact: true });
  await hand.press(opened.getByRole('button', { name: 'Another time' }));
  await opened.getByLabel('Day').fill('2026-03-28');
  await opened.getByLabel('Time').fill('09:00');
  await hand.choose(choice(page, 'How was it known to be cold?'), 'A temperature was measured');
  await hand.write(text(page, 'Temperature measured at the retort'), '21');
  await hand.write(reading(page, 'Sponge'), `${data.sponge} ozt`);
  await hand.write(reading(page, 'Mercury caught'), `${data.condensed} ozt`);
  await hand.pick(list(page, 'Vessel the mercury went to'), 'Bottle');
  await hand.choose(choice(page, 'Mercury when weighed'), 'Dry');
  await hand.press(fold(main(page), 'Water, colour, fuel and lute'));
  await hand.write(reading(page, 'Water that came over'), '0 ozt');
  await hand.press(button(page, 'Keep'));
  await page.getByRole('heading', { name: 'What the numbers say' }).waitFor();
}

async function melt(page: Page, hand: Hand): Promise<void> {
  await hand.press(page.getByRole('link', { name: 'Write up the melt' }));
  await main(page).locator('form').waitFor();
  await on(page, 29);
  await hand.write(page.getByLabel('Bar 1: number or name', { exact: true }), 'No. 1');
  await hand.write(page.getByLabel('Bar 1: weight', { exact: true }), `${data.bar} ozt`);
  await keep(page, hand);
}

export async function parcel(page: Page, hand: Hand, label: string): Promise<void> {
  await register(page, hand, 'Parcels', 'Enter a parcel');
  await hand.write(text(page, 'Name of the parcel'), label);
  await keep(page, hand);
}

/** Everything that is named in the month. */
export async function registers(page: Page, hand: Hand): Promise<void> {
  await person(page, hand);
  await underAuthority(page, hand);
  await scale(page, hand);
  for (const [label, use] of [
    ['Flask 1', 'Flask'],
    ['Flask 2', 'Flask'],
    ['Bottle', 'Bottle'],
  ])
    await vessel(page, hand, label ?? '', use ?? '');
  await retort(page, hand);
  await battery(page, hand);
}

const circuit = (plates: string, mortar: string): Readonly<Record<string, Answer>> => ({
  'mortar box (in circuit)': { how: 'estimated', mass: `${mortar} ozt`, method: 'sand washed', percent: '20' },
  'plates (in circuit)': { how: 'estimated', mass: `${plates} ozt`, method: 'by area', percent: '10' },
  'pan (in circuit)': { how: 'estimated', mass: '0 ozt', method: 'there is none' },
  'traps (in circuit)': { how: 'estimated', mass: '0', method: 'emptied and dry' },
});

/** The month, after its registers, from what was there to the melt; the page of the melt that was kept is left open. */
export async function month(page: Page, hand: Hand): Promise<void> {
  const { opening, fed, drawn } = data;
  const [one = '', two = ''] = opening.flasks;
  await alreadyHere(page, hand, 'Flask 1', one, 'S1');
  await alreadyHere(page, hand, 'Flask 2', two, 'S2');
  await alreadyHere(page, hand, 'Bottle', opening.bottle);
  await count(page, hand, 1, {
    'Flask 1': { how: 'sealed', seal: 'S1' },
    'Flask 2': { how: 'sealed', seal: 'S2' },
    Bottle: { how: 'weighed', ozt: opening.bottle },
    ...circuit(opening.plates, opening.mortar),
  });
  await crush(page, hand, { amount: data.oreLongTons, unit: 'long-ton (2,240 lb)', percent: '5' });
  await keep(page, hand);
  await issue(page, hand, 2, 'Flask 2', 'Bottle', drawn);
  await keep(page, hand);
  await issue(page, hand, 3, 'Bottle', 'Mortar box', fed.mortar);
  await weighedSo(page, hand);
  await keep(page, hand);
  await issue(page, hand, 4, 'Bottle', 'Plates', fed.plates);
  await weighedSo(page, hand);
  await keep(page, hand);
  await cleaning(page, hand);
  await chargeAndFire(page, hand);
  await melt(page, hand);
}

/** The closing count of the month. */
export async function closingCount(page: Page, hand: Hand): Promise<void> {
  const { closing } = data;
  await count(page, hand, 31, {
    'Flask 1': { how: 'sealed', seal: 'S1' },
    'Flask 2': { how: 'weighed', ozt: closing.partFlask },
    Bottle: { how: 'weighed', ozt: closing.bottle },
    ...circuit(closing.plates, closing.mortar),
  });
}
