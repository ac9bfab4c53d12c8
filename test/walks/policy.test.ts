/**
 * The window keeps to its own content policy: every room, every register, the page of an entry of every kind with its forms, every run and every
 * form of the sample site is opened in a real browser, and nothing is refused by the policy and nothing told as an error. That such a refusal would
 * be seen is shown with a page into which a script was put.
 */
import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { paperNames } from '../../app/contract.ts';
import type { Entry } from '../../app/core/entry.ts';
import { registerKinds } from '../../app/core/kinds/index.ts';
import { deedHref, noteHref } from '../../app/screens/daybook/hrefs.ts';
import { plainKinds, writeHref, writeListHref } from '../../app/screens/daybook/write/routes.ts';
import { newForms, newHref } from '../../app/screens/retort/routes.ts';
import {
  chargeHref,
  entryHref,
  newThingHref,
  paperHref,
  registerHref,
  roomHref,
  standingHref,
} from '../../app/screens/shared/places.ts';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { closeBrowser, type EmptyHome, openEmptyHome } from './empty-home.ts';
import { byKeyboard } from './hands.ts';

let home: EmptyHome;
let page: Page;

/** From the next load on the page remembers what its policy refused. */
const listen = (to: Page) =>
  to.addInitScript(() => {
    const refused: string[] = [];
    Object.assign(window, { refused });
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI, sample }) => {
      refused.push(`${location.hash} ${effectiveDirective} ${blockedURI} ${sample}`);
    });
  });
const refusedOn = (of: Page): Promise<string[]> => of.evaluate(() => (window as unknown as { refused: string[] }).refused);

beforeAll(async () => {
  home = await openEmptyHome();
  page = home.page;
  await listen(page);
  await page.reload();
  await byKeyboard(page).press(page.getByRole('button', { name: 'Open the sample site' }));
  await page.getByRole('navigation').getByRole('link', { name: 'Papers', exact: true }).waitFor();
});
afterAll(async () => {
  await home?.close();
  await closeBrowser();
});

function entriesOnDisk(): readonly Entry[] {
  const read = readDaybook(home.daybook());
  if (!read.ok) throw new Error('the sample on the disk cannot be read');
  return read.value.entries;
}

/** Addresses of the rooms, as the window offers them. */
async function roomsOffered(): Promise<readonly string[]> {
  const links = await page.getByRole('navigation').getByRole('link').all();
  const hrefs = await Promise.all(links.map((link) => link.getAttribute('href')));
  return hrefs.filter((href): href is string => href?.startsWith('#/') ?? false);
}

/** Addresses of every kind of page there is. */
function addresses(rooms: readonly string[]): readonly string[] {
  const entries = entriesOnDisk();
  const firsts = [...new Map(entries.toReversed().map((entry) => [entry.kind, entry])).values()];
  const of = (kind: string) => firsts.find((entry) => entry.kind === kind)?.id;
  const [melt, spill] = [of('melt'), of('spill')];
  return [
    ...rooms,
    ...firsts.map(({ id }) => entryHref(id)),
    ...firsts
      .filter(({ kind }) => kind !== 'correction' && kind !== 'strike')
      .flatMap(({ id }) => (['correct', 'strike', 'note'] as const).map((deed) => deedHref(id, deed))),
    ...entries.filter(({ kind }) => kind === 'charge').map(({ id }) => chargeHref(id)),
    ...registerKinds.flatMap((kind) => [
      registerHref(kind),
      newThingHref(kind),
      ...entries.filter((e) => e.kind === kind && !('of' in e.body)).map(({ id }) => registerHref(kind, id)),
    ]),
    standingHref,
    ...newForms.map(newHref),
    noteHref,
    writeListHref,
    ...plainKinds.map((kind) => writeHref(kind)),
    ...paperNames.map((name) => roomHref(`papers/${name}`)),
    ...(melt ? [paperHref('melt-sheet', melt)] : []),
    ...(spill ? [paperHref('incident-sheet', spill)] : []),
    '#/daybook/find/text=ball',
  ];
}

test('every page is opened, in both lights, and its policy refuses nothing and its console tells no error', async () => {
  const rooms = await roomsOffered();
  expect(rooms.length).toBeGreaterThanOrEqual(6);
  const all = [...new Set(addresses(rooms))];
  expect(all.length).toBeGreaterThan(100);
  const begun = Date.now();
  const blank: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    // the dark walk goes over the rooms only: beyond their colours the pages are the same
    for (const hash of colorScheme === 'light' ? all : rooms) {
      const words = await page.evaluate(async (to) => {
        location.hash = to;
        // two frames and a turn: what a page loads when it is first seen is asked for by then
        for (let i = 0; i < 2; i++) await new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)));
        for (const fold of document.querySelectorAll('main details')) (fold as HTMLDetailsElement).open = true;
        await new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)));
        return document.querySelector('main h1')?.textContent?.trim() ?? '';
      }, hash);
      if (words === '') blank.push(hash);
    }
  }
  expect(blank).toEqual([]);
  expect(await refusedOn(page)).toEqual([]);
  expect(home.faults).toEqual([]);
  expect(Date.now() - begun).toBeLessThan(200_000);
});

test('a script and a style that got into the page are not run, and are told: the walk above would have seen them', async () => {
  const other = await home.another();
  await listen(other);
  await other.route('**/*', async (route) => {
    if (route.request().resourceType() !== 'document') return route.continue();
    const answer = await route.fetch();
    const injected = '<script>window.ran = true</script><p style="color: red" onclick="window.ran = true">x</p>';
    const html = (await answer.text()).replace('</body>', `${injected}</body>`);
    expect(html).toContain(injected);
    return route.fulfill({ response: answer, body: html });
  });
  const before = home.faults.length;
  await other.goto(page.url());
  await other.locator('main h1').first().waitFor();
  const refused = await refusedOn(other);
  for (const directive of ['script-src-elem inline', 'script-src-attr inline', 'style-src-attr inline'])
    expect(refused.some((line) => line.includes(directive))).toBe(true);
  expect(await other.evaluate(() => 'ran' in window)).toBe(false);
  expect(home.faults.length).toBeGreaterThan(before);

  // a text given to the page as markup is refused too, and told
  const fell = await other.evaluate(() => {
    try {
      document.createElement('div').innerHTML = '<img src="x" onerror="window.ran = true">';
      return false;
    } catch (error) {
      return error instanceof TypeError;
    }
  });
  expect(fell).toBe(true);
  expect((await refusedOn(other)).some((line) => line.includes('require-trusted-types-for'))).toBe(true);
});
