/**
 * A site that writes commas, troy ounces, °F and day before month: nothing its window shows, and nothing on its papers, is in another notation, whether
 * the figures were worked out or typed.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openSample, type WalkedWindow } from './window.ts';

let walked: WalkedWindow;

beforeAll(async () => {
  walked = await openSample();
  const body = { decimal: 'comma', masses: 'troy', temperature: 'fahrenheit', days: 'd/m/y' };
  const happened = `${new Date(Date.now() - 60_000).toISOString().slice(0, 16)}+00:00`;
  await walked.keep([{ id: 'notation-one', kind: 'site-notation', body, happened, by: null }]);
}, 240_000);
afterAll(() => walked?.close());

const months = 'January|February|March|April|May|June|July|August|September|October|November|December';
const other = new RegExp(String.raw`\d\.\d|°C|\d{4}-\d{2}-\d{2}|\d (?:${months}) \d{4}`);
/** What stays as it is: the numbering of standards and of law, the names and sources of limits as printed, the state gases are stated at, answers to choose from. */
const stays = [
  /JCGM 100:2008/,
  /29 CFR|NIOSH|OSHA|DGUV|Wisconsin/,
  /an older entry of 0\.1 is still on the web/,
  /25 °C and 101,325 kPa|brought to 25 °C itself/,
  /°C or °F|20 °C is 68 °F/,
  /^With a point: 12\.5$|^°C$|^14 March 2026$|^14\.3\.2026$|^2026-03-14$/,
];

/** Texts of the page that are in another notation, folds opened; names read out are among them. */
const inAnother = async (): Promise<string[]> => {
  const texts = await walked.page.evaluate(() => {
    const main = document.querySelector('main');
    if (!main) return [];
    for (const fold of main.querySelectorAll('details')) fold.open = true;
    const found: string[] = [];
    const walker = document.createTreeWalker(main, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) found.push(node.textContent?.trim() ?? '');
    for (const named of main.querySelectorAll('[aria-label]')) found.push(named.getAttribute('aria-label') ?? '');
    return found;
  });
  if (texts.length < 5) throw new Error('there is nothing on the page');
  return [...new Set(texts)].filter((text) => other.test(text.replaceAll('\u00a0', ' ')) && !stays.some((as) => as.test(text)));
};

const day = encodeURIComponent('area:Retort house, bench@2026-03-10T07:30+10:00');
const addresses = [
  ...['today', 'daybook', 'find/ball', 'words', 'workings', 'papers'],
  ...['', '/account/whole', '/stocks', '/movements', '/yields', '/out-of-step'].map((page) => `mercury${page}`),
  ...['', '/charge-0003', '/charge-0003/readings', '/plate/all', '/lot/clean-up-0014%2F1'].map((page) => `retort${page}`),
  ...['/new/clean-up', '/new/charge', '/new/firing', '/new/receipt'].map((page) => `retort${page}`),
  ...['', '/bar/melt-0001%2F1', '/yields', '/history', '/assay', '/melt', '/settle'].map((page) => `bullion${page}`),
  ...['', `/day/${day}`, '/limits', '/plan/vapour', '/plan/room', '/plan/opening', '/plan/mixture'].map((page) => `air${page}`),
  ...['', '/scale', '/vessel', '/retort', '/limit', '/site-figures', '/site-notation', '/lead-times'].map(
    (page) => `site${page}`,
  ),
];

describe('the sample site in another notation', () => {
  test.each(addresses)('#/%s is in it throughout', async (address) => {
    await walked.go(`#/${address}`);
    // the page before may still stand for a moment
    await walked.page.waitForTimeout(150);
    expect(await walked.page.locator('main h1').first().textContent()).not.toMatch(/^No such/);
    expect(await inAnother()).toEqual([]);
  });

  test('and what is not in it would be seen', async () => {
    await walked.page
      .locator('main h1')
      .first()
      .evaluate((heading) => {
        heading.textContent = 'The mercury account of 12.5 g';
      });
    expect(await inAnother()).toEqual(['The mercury account of 12.5 g']);
    expect(walked.errors).toEqual([]);
  });
});
