/**
 * What comes after the first figures: a weight that was still missing, a second firing, charges caught together, an answer "no", a lot that was not
 * found. Walked in a real browser; the beginnings are kept through the host.
 */
import type { Page } from 'playwright';
import { afterAll, afterEach, beforeEach, expect, it } from 'vitest';
import { closeBrowser, type EmptyHome, openEmptyHome } from './empty-home.ts';
import { byMouse, type Hand } from './hands.ts';
import * as steps from './run-steps.ts';

let home: EmptyHome;
let page: Page;
let by: Hand;

/** Keeps entries in order through the host and reads the page anew. */
async function keep(entries: readonly { id: string; kind: string; body: Record<string, unknown> }[]): Promise<void> {
  const refused = await page.evaluate(
    async (all) => {
      const ask = async (question: string, body: unknown) =>
        (
          await fetch(`/ask/${question}`, {
            method: 'POST',
            headers: { 'content-type': 'application/json' },
            body: JSON.stringify(body),
          })
        ).json();
      const { value } = (await ask('state', {})) as { value: { now: string } };
      // to the minute, as the window's own clock has it
      const happened = value.now.replace(/(T\d\d:\d\d):\d\d/, '$1');
      for (const entry of all) {
        const answer = (await ask('keep', { ...entry, happened, by: 'keeper-1' })) as { ok: boolean };
        if (!answer.ok) return JSON.stringify(answer);
      }
      return '';
    },
    entries as { id: string; kind: string; body: Record<string, unknown> }[],
  );
  expect(refused).toBe('');
  await page.reload();
  await page.getByRole('navigation', { name: 'Rooms' }).waitFor();
}

const read = (g: string) => ({ how: 'scale', scale: 'scale-1', gross: `${g} g` });
const charge = (id: string, lots: readonly (readonly [string, string])[]) => ({
  id,
  kind: 'charge',
  body: { retort: 'retort-1', rows: lots.map(([lot, g], i) => ({ take: 'whole', key: `l${i + 1}`, lot, weight: read(g) })) },
});
const go = async (hash: string) => {
  await page.evaluate((to) => {
    location.hash = to;
  }, hash);
  await page.locator('h1').first().waitFor();
};
const button = (name: string) => page.getByRole('button', { name, exact: true });
const summary = async (name: string) =>
  ((await page.locator(`[data-figure="${name}"] summary`).first().textContent()) ?? '').replaceAll('\u00a0', ' ');
const reading = (group: string) => page.getByRole('group', { name: group, exact: true }).getByRole('textbox').first();

beforeEach(async () => {
  home = await openEmptyHome();
  page = home.page;
  by = byMouse(page);
  await steps.makeDaybook(page, by);
  await keep([
    { id: 'keeper-1', kind: 'person', body: { name: 'Keeper', roles: ['keeper'] } },
    { id: 'standing-1', kind: 'standing', body: { held: [{ what: 'stock' }], done: [{ what: 'clearing' }] } },
    {
      id: 'scale-1',
      kind: 'scale',
      body: { label: 'Bench scale', maximum: '3000 g', d: '0.1 g', certificate: { U: '0.1 g', at: '2000 g' } },
    },
    { id: 'bottle-1', kind: 'vessel', body: { label: 'Bottle 1', use: 'bottle' } },
    { id: 'retort-1', kind: 'retort', body: { label: 'Pot retort' } },
    {
      id: 'clean-up-1',
      kind: 'clean-up',
      body: {
        type: 'routine',
        lots: [
          { key: 'b1', label: 'B1', weight: read('500.0') },
          { key: 'b2', label: 'B2', weight: read('300.0') },
        ],
      },
    },
  ]);
  await by.press(page.getByRole('banner').getByRole('button', { name: 'nobody named' }));
  await by.press(page.getByRole('dialog').getByRole('button', { name: 'Keeper' }));
});
afterEach(async () => {
  expect(home.faults).toEqual([]);
  await home.close();
});
afterAll(closeBrowser);

it('a run kept without its mercury waits for it, and the weight comes as a correction that leaves the first reading', async () => {
  await keep([charge('charge-1', [['clean-up-1/b1', '500.0']])]);
  await go('#/retort/charge-1');
  await by.write(reading('Sponge'), '190.0');
  await by.press(button('Keep'));
  await page.getByText('awaiting mercury', { exact: true }).waitFor();
  expect(await page.locator('[data-figure="gap"]').count()).toBe(0);
  await by.write(reading('Mercury caught'), '305.0');
  await by.pick(page.getByRole('combobox', { name: /^Vessel the mercury went to/ }), 'Bottle 1');
  const before = home.journalLines();
  await by.press(button('Keep'));
  await page.getByRole('heading', { name: 'What the numbers say' }).waitFor();
  expect(home.journalLines()).toBe(before + 1);
  expect(await summary('gap')).toContain('5.00 ±');
  await page.getByText('The mercury was weighed later').waitFor();
  await page.getByRole('rowheader', { name: 'mercury · reading' }).waitFor();
});

it('a second firing of a charge counts its own sponge and adds its mercury, and the first stays to be read', async () => {
  await keep([
    charge('charge-1', [['clean-up-1/b1', '500.0']]),
    {
      id: 'firing-1',
      kind: 'firing',
      body: {
        heats: [{ charge: 'charge-1', sponge: read('270.0') }],
        mercury: { weight: read('225.0'), vessel: 'bottle-1', state: 'dry' },
      },
    },
  ]);
  await go('#/retort/charge-1');
  await page.locator('[data-finding="heavy-sponge"]').waitFor();
  await by.press(button('Fire it again'));
  await by.write(reading('Sponge'), '195.0');
  await by.write(reading('Mercury caught'), '74.0');
  await page.locator('.live').getByText('6.00 ± ').first().waitFor();
  await by.press(button('Keep'));
  await page.getByRole('heading', { name: 'First firing' }).waitFor();
  expect(await summary('gap')).toContain('6.00 ±');
  expect(await summary('ratio')).toContain('39.00');
  expect(await page.locator('[data-finding="heavy-sponge"]').count()).toBe(1);
});

it('charges caught together are one run with one figure of mercury', async () => {
  await keep([charge('charge-1', [['clean-up-1/b1', '500.0']]), charge('charge-2', [['clean-up-1/b2', '300.0']])]);
  await go('#/retort/charge-1');
  await by.press(page.getByText('Caught together with other charges'));
  await by.tick(page.getByRole('checkbox').last());
  const sponges = page.getByRole('group', { name: /^Sponge of/ });
  await by.write(sponges.nth(0).getByRole('textbox').first(), '190.0');
  await by.write(sponges.nth(1).getByRole('textbox').first(), '114.0');
  await by.write(reading('Mercury caught'), '490.0');
  await page.locator('.live').getByText('6.00 ± ').first().waitFor();
  await by.press(button('Keep'));
  await page.getByText('Caught together: judged as a group').waitFor();
  await go('#/retort');
  await page.getByText(/, caught together$/).waitFor();
  expect(await page.locator('.runs > li').count()).toBe(1);
});

it('an answer “no” and a hot opening stop nothing and stay in sight', async () => {
  await keep([charge('charge-1', [['clean-up-1/b1', '500.0']])]);
  await go('#/retort/charge-1');
  await by.press(page.getByText('Checks while it is hot'));
  await by.choose(page.getByRole('radiogroup', { name: 'Heat raised slowly and never left alone' }), 'No');
  await by.write(page.getByRole('textbox', { name: 'Note on: Heat raised slowly and never left alone' }), 'called away');
  await by.press(page.getByRole('group', { name: 'Opened' }).getByRole('button', { name: 'Now' }));
  await by.choose(page.getByRole('radiogroup', { name: 'How was it known to be cold?' }), 'A temperature was measured');
  await by.write(page.getByRole('textbox', { name: /^Temperature measured/ }), '65');
  // while it is typed, before anything is kept
  await page.getByText(/^65\s°C is above 40\s°C/).waitFor();
  await by.write(reading('Sponge'), '190.0');
  await by.write(reading('Mercury caught'), '305.0');
  await by.press(button('Keep'));
  await page.getByText('“Heat raised slowly and never left alone” was answered no: called away.').waitFor();
  await page.getByText(/^Opened at 65\s°C, above 40\s°C/).waitFor();
  // what the run comes to now is in view, and the page begins there
  expect(await page.locator('h1').evaluate((heading) => heading === document.activeElement)).toBe(true);
  expect(await page.evaluate(() => window.scrollY)).toBe(0);
  expect(await page.locator('[data-not-recorded]').textContent()).toMatch(
    /^Not recorded: .*checks before 15 of 15; checks while hot 4 of 5/,
  );
});

it('a lot that was not found is a reservation of the run, and the lot stays on the book as missing', async () => {
  await go('#/retort/new/charge');
  await by.write(page.getByLabel('Weight of B1 at charging', { exact: true }), '500.0');
  await by.press(page.getByText('B2: only a part, not found, or weighed another way'));
  await by.choose(page.getByRole('radiogroup', { name: 'What of it?' }).last(), 'It was not found');
  await page.getByText(/not found: B2/).waitFor();
  await by.press(button('Keep'));
  await by.press(page.getByRole('link', { name: 'Go to the run' }));
  const reservation = page.getByRole('alert');
  await reservation.getByText('Reservations').waitFor();
  await reservation.getByText(/“B2” was not found at charging/).waitFor();
  await go('#/retort');
  await page.getByRole('heading', { name: 'Not found' }).waitFor();
});

it('a firing written up before its charge is an open end of the room', async () => {
  await go('#/retort/new/firing');
  await by.pick(page.getByRole('combobox', { name: /^Which retort was fired/ }), 'Pot retort');
  await by.write(reading('Sponge'), '190.0');
  const before = home.journalLines();
  await steps.keep(page, by);
  expect(home.journalLines()).toBe(before + 1);
  await go('#/retort');
  await page.getByText(/^Firing of .* names no charge yet\./).waitFor();
});

it('a stamp that cannot be meant is told at its field, and keeping leads back to it', async () => {
  await keep([charge('charge-1', [['clean-up-1/b1', '500.0']])]);
  await go('#/retort/charge-1');
  const lit = page.getByRole('group', { name: 'Fire lit', exact: true });
  await by.press(lit.getByRole('button', { name: 'Now' }));
  await by.press(lit.getByRole('button', { name: 'Change' }));
  await lit.getByLabel('Day').fill('2062-03-14');
  await lit.getByLabel('Time').press('Tab');
  await lit.getByText(/14 March 2062 has not come yet/).waitFor();
  const before = home.journalLines();
  await by.press(button('Keep'));
  const day = lit.getByLabel('Day');
  expect(await day.getAttribute('aria-invalid')).toBe('true');
  expect(await day.evaluate((field) => field === document.activeElement)).toBe(true);
  expect(home.journalLines()).toBe(before);
});

it('a fire lit before its charge was weighed in is told on the run page', async () => {
  await keep([
    charge('charge-1', [['clean-up-1/b1', '500.0']]),
    { id: 'firing-1', kind: 'firing', body: { heats: [{ charge: 'charge-1' }], lit: '2020-03-14T08:00+13:00' } },
  ]);
  await go('#/retort/charge-1');
  await page.getByText(/^The fire was lit at 08:00, before the charge was weighed in/).waitFor();
});

it('what was answered at charging stands in the firing as answered, and only the rest is asked', async () => {
  const kept = charge('charge-1', [['clean-up-1/b1', '500.0']]);
  await keep([{ ...kept, body: { ...kept.body, pipeClear: 'yes', checks: [{ check: 'no-food', answer: 'no' }] } }]);
  await go('#/retort/charge-1');
  await by.press(page.locator('summary', { hasText: 'Checks before lighting' }));
  const answered = page.getByRole('list', { name: 'answered at charging' });
  expect(await answered.getByRole('listitem').count()).toBe(2);
  await answered.getByText(/Pipe proved clear from end to end/).waitFor();
  const asked = page.getByRole('list', { name: 'Checks before lighting' });
  expect(await asked.getByRole('radiogroup').count()).toBe(13);
});

it('Enter after the last ball leads on and keeps nothing', async () => {
  const before = home.journalLines();
  await go('#/retort/new/charge');
  await by.write(page.getByLabel('Weight of B1 at charging', { exact: true }), '500.0');
  await page.keyboard.press('Enter');
  await by.write(page.getByLabel('Weight of B2 at charging', { exact: true }), '300.0');
  await page.keyboard.press('Enter');
  await page.locator('summary:focus', { hasText: 'Other things put in' }).waitFor();
  await page.keyboard.press('Enter');
  await go('#/retort/new/clean-up');
  await by.write(page.getByLabel('Label of row 1'), 'C1');
  await by.write(page.getByLabel('Weight of row 1'), '100.0');
  await page.keyboard.press('Enter');
  await page.locator('[aria-label="Weight of row 2"]:focus').waitFor();
  await page.keyboard.press('Enter');
  await page.locator('summary:focus', { hasText: 'About this clean-up' }).waitFor();
  await page.keyboard.press('Enter');
  expect(home.journalLines()).toBe(before);
});

it('a window that only reads stamps nothing', async () => {
  await keep([charge('charge-1', [['clean-up-1/b1', '500.0']])]);
  await go('#/retort/charge-1');
  const stamp = (of: Page) => of.getByRole('group', { name: 'Fire lit', exact: true }).getByRole('button', { name: 'Now' });
  expect(await stamp(page).isEnabled()).toBe(true);
  const second = await home.another();
  await second.goto(page.url());
  await second
    .getByText(/^This window only reads/)
    .first()
    .waitFor();
  expect(await stamp(second).isDisabled()).toBe(true);
});
