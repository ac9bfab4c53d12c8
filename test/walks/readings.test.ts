/**
 * The readings of a run held against one another, walked in a browser: a run that agrees shows adjusted figures beside what was read, one with a
 * transposed figure asks about it and leads to its correction, and after the correction the readings agree. axe finds nothing in either theme.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Draft } from '../../app/core/entry.ts';
import { reconcileWords as words } from '../../app/words/reconciling.ts';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { day, draftsBy } from './invented.ts';
import { openWalk, type WalkedWindow } from './window.ts';

let walked: WalkedWindow;
const draft = draftsBy('keeper-one');
const grams = (g: string) => ({ how: 'scale', scale: 'bench-scale', gross: `${g} g` });
const run = (name: string, labels: readonly string[], charged: readonly string[], daysAgo: number): Draft[] => [
  draft(
    `clean-up-${name}`,
    'clean-up',
    {
      type: 'routine',
      lots: labels.map((g, i) => ({
        key: `${i + 1}`,
        label: `Ball ${name} ${i + 1}`,
        weight: grams(g),
        state: 'squeezed',
        source: 'outside-plate',
      })),
    },
    daysAgo + 2,
  ),
  draft(
    `charge-${name}`,
    'charge',
    {
      retort: 'pot-retort',
      rows: charged.map((g, i) => ({ take: 'whole', key: `${i + 1}`, lot: `clean-up-${name}/${i + 1}`, weight: grams(g) })),
      dry: 'yes',
    },
    daysAgo + 1,
  ),
  draft(
    `firing-${name}`,
    'firing',
    {
      heats: [{ charge: `charge-${name}`, sponge: grams('268.30') }],
      mercury: { weight: grams('434.10'), vessel: 'bottle-one', state: 'dry' },
      water: grams('0'),
    },
    daysAgo,
  ),
];

beforeAll(async () => {
  walked = await openWalk('Invented battery');
  await walked.keep([
    draft('keeper-one', 'person', { name: 'Keeper', roles: ['keeper'] }, 60),
    draft('standing-one', 'standing', { held: [{ what: 'stock' }], done: [{ what: 'clearing' }] }, 60),
    draft(
      'bench-scale',
      'scale',
      {
        label: 'Bench scale',
        maximum: '6 kg',
        d: '0.01 g',
        certificate: { U: '0.03 g', k: 2, at: '2000 g', on: day(90).slice(0, 10), due: day(-200).slice(0, 10) },
      },
      60,
    ),
    draft('pot-retort', 'retort', { label: 'Pot retort', capacity: '2 kg' }, 60),
    draft('bottle-one', 'vessel', { label: 'Working bottle', use: 'bottle', mercury: 'mixed' }, 60),
    ...run('right', ['215.41', '188.02', '302.77'], ['215.40', '188.03', '302.75'], 20),
    ...run('wrong', ['215.40', '188.02', '302.77'], ['251.40', '188.03', '302.75'], 10),
  ]);
}, 240_000);
afterAll(() => walked?.close());

const main = () => walked.page.locator('main');
const table = () => main().getByRole('table', { name: words.readings });
const journal = () => {
  const read = readDaybook(walked.folder);
  if (!read.ok) throw new Error('the book on the disk cannot be read');
  return read.value.entries;
};

test('a run that agrees says so on its page and shows as read, adjusted and adjustment side by side', async () => {
  await walked.go('#/retort/charge-right');
  await main().locator('[data-agreement]').getByText(words.agree(4)).waitFor();
  await main().getByRole('link', { name: words.link }).click();
  await main().getByRole('heading', { level: 1, name: words.title }).waitFor();
  for (const title of [words.columns.raw, words.columns.adjusted, words.columns.adjustment])
    await table().getByRole('columnheader', { name: title }).waitFor();
  const first = table().locator('tbody tr').filter({ hasText: 'Ball right 1, label' });
  expect(await first.textContent()).toContain('215.41 g');
  await main().getByText(words.adjustedNote).waitFor();
});

test('a run with a transposed figure gives no adjusted figures, names the reading, and asks', async () => {
  const before = journal().length;
  await walked.go('#/retort/charge-wrong/readings');
  await main().getByText(words.oneOff('Ball wrong 1, weighed at charging')).waitFor();
  expect(await table().getByRole('columnheader', { name: words.columns.adjusted }).count()).toBe(0);
  await main().getByText(words.notAdjusted).waitFor();
  expect(await main().locator('[data-swap]').allTextContents()).toEqual([
    words.swap('Ball wrong 1, weighed at charging', 'gross', '251.40 g', '215.40 g'),
  ]);
  // looking changes nothing
  expect(journal().length).toBe(before);
});

test('axe finds nothing on either in both themes, none is wider than a window at 200 %, and none met an error', async () => {
  for (const theme of ['light', 'dark'] as const) {
    await walked.theme(theme);
    for (const hash of ['#/retort/charge-right/readings', '#/retort/charge-wrong/readings', '#/retort/charge-wrong']) {
      await walked.go(hash);
      expect(await walked.axe(), `${theme} ${hash}`).toEqual([]);
    }
  }
  await walked.page.setViewportSize({ width: 640, height: 400 });
  for (const hash of ['#/retort/charge-right/readings', '#/retort/charge-wrong/readings']) {
    await walked.go(hash);
    const over = await walked.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(over, hash).toBeLessThanOrEqual(0);
  }
  await walked.page.setViewportSize({ width: 1280, height: 800 });
  expect(walked.errors).toEqual([]);
});

test('the suspect leads to its correction at its own field; corrected, the readings agree and the old one stays on the record', async () => {
  await walked.go('#/retort/charge-wrong/readings');
  await main()
    .getByRole('link', { name: `${words.correct}: Ball wrong 1, weighed at charging` })
    .click();
  await walked.page.waitForURL(/charge-wrong\/correct\?field=rows/);
  await main().locator('h1').first().waitFor();
  const entry = journal().find((e) => e.id === 'charge-wrong');
  const body = structuredClone(entry?.body) as { rows: { weight: { gross: string } }[] };
  const row = body.rows[0];
  if (!row) throw new Error('the charge has no row');
  row.weight.gross = '215.40 g';
  await walked.keep([draft('right-again', 'correction', { corrects: 'charge-wrong', body, why: 'The sheet says 215.40 g.' }, 0)]);
  await walked.go('#/retort/charge-wrong/readings');
  await main().locator('[data-agreement]').getByText(words.agree(4)).waitFor();
  expect(JSON.stringify(journal().find((e) => e.id === 'charge-wrong')?.body)).toContain('251.40 g');
});
