/**
 * Runs of periods walked in a browser: seven counts of the whole, six periods, and small losses that no single one of them shows. The figures on the
 * page are the core's, the false alarm is the site's, both bases are named, and axe finds nothing in either theme.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { periodsInRow } from '../../app/core/book/periods-in-row.ts';
import { sequenceOf, sequenceTest } from '../../app/core/book/sequence.ts';
import { en } from '../../app/words/en.ts';
import { outOfStepWords } from '../../app/words/out-of-step.ts';
import { alarmText, drawnTrend, sequenceCells, verdictText, sequenceWords as words } from '../../app/words/sequence.ts';
import { bookOnDisk, draftsBy } from './invented.ts';
import { plainInBoth } from './looked-at.ts';
import { openWalk, type WalkedWindow } from './window.ts';

let walked: WalkedWindow;
const draft = draftsBy('keeper-one');
/** What is in the bottle at each count: from one to the next 35 less, 80 more, then 110, 60, 95 and 120 less; methods.md WE-5. */
const counted = [5000, 4965, 5045, 4935, 4875, 4780, 4660];
const known = (g: number) => ({ how: 'stated', mass: `${g} g`, u: '60 g' });
const empty = { mass: '0 g', method: 'seen empty' };

beforeAll(async () => {
  walked = await openWalk('Invented battery');
  await walked.context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await walked.keep([
    draft('keeper-one', 'person', { name: 'Keeper', roles: ['keeper'] }, 240),
    draft('standing-one', 'standing', { held: [{ what: 'stock' }], done: [{ what: 'clearing' }] }, 240),
    draft('bottle-one', 'vessel', { label: 'Working bottle', use: 'bottle', mercury: 'new' }, 240),
    draft('bottle-in', 'receipt', { vessel: 'bottle-one', weight: known(5000), way: 'already-here' }, 239),
    ...counted.map((g, i) =>
      draft(
        `count-${i + 1}-of-all`,
        'stock-take',
        {
          scope: 'whole',
          lines: [
            { how: 'weighed', place: 'vessel:bottle-one', weight: known(g) },
            ...['mortar', 'plates', 'pan', 'trap'].map((part) => ({
              how: 'estimated',
              place: `circuit:${part}`,
              estimate: empty,
            })),
          ],
        },
        220 - 30 * i,
      ),
    ),
  ]);
}, 240_000);
afterAll(() => walked?.close());

const onDisk = () => bookOnDisk(walked);
const main = () => walked.page.locator('main');
const columns = () => main().getByRole('group', { name: words.chart }).getByRole('link');

test('it is led to from the room Mercury and says what the core finds', async () => {
  await walked.go('#/mercury');
  await main().getByRole('link', { name: words.link }).click();
  await main().getByRole('heading', { level: 1, name: words.title }).waitFor();
  const book = onDisk();
  const sequence = sequenceOf(book, { basis: 'as-known-today' });
  const rows = periodsInRow(book, sequence);
  expect(rows).toHaveLength(6);
  expect(sequence.differences.map((d) => Math.round(d.ug / 1e6))).toEqual([35, -80, 110, 60, 95, 120]);
  // no period alone, and all of them together
  expect(sequence.test?.z.every((z) => Math.abs(z) <= 2)).toBe(true);
  expect(sequence.test?.signalAt).not.toBeNull();
  expect(verdictText(rows, sequence.test)).toContain(words.noneAlone);
  await main().getByText(verdictText(rows, sequence.test)).waitFor();
  await main()
    .getByText(words.chosen(alarmText(0.05), 6, 'as-known-today'))
    .waitFor();
  const table = main().getByRole('table', { name: words.table });
  expect(await table.locator('tbody tr').count()).toBe(6);
  for (const [i, row] of rows.entries()) {
    const cells = sequenceCells(row, sequence.test, i);
    const shown = await table.locator('tbody tr').nth(i).textContent();
    for (const text of [cells.opening, cells.closing, cells.difference, cells.cumulative, cells.page])
      expect(shown).toContain(text);
    const usual = await main().getByRole('table', { name: words.usualTable }).locator('tbody tr').nth(i).textContent();
    for (const text of [cells.perTonne, cells.usual, cells.usualFrom, cells.beyond]) expect(usual).toContain(text);
  }
});

test('each period is told in words as it gets the focus, the signal among them, and leads to its account', async () => {
  const book = onDisk();
  const sequence = sequenceOf(book, { basis: 'as-known-today' });
  const drawn = drawnTrend(periodsInRow(book, sequence), sequence.test);
  expect(await columns().evaluateAll((all) => all.map((a) => a.getAttribute('aria-label')))).toEqual(
    drawn.columns.map((c) => c.text),
  );
  expect(drawn.columns.filter((c) => c.text.includes(words.signal))).toHaveLength(1);
  await columns().first().focus();
  for (const key of ['ArrowRight', 'ArrowRight', 'ArrowLeft']) await walked.page.keyboard.press(key);
  await main()
    .locator('figcaption')
    .getByText(drawn.columns[1]?.text ?? '')
    .waitFor();
  await walked.page.keyboard.press('Enter');
  await main().getByRole('table', { name: 'Account of a period' }).waitFor();
  expect(walked.page.url()).toMatch(/from=\d{4}-\d\d-\d\d\/to=\d{4}-\d\d-\d\d/);
});

test('the false alarm is the one the site set at its own page, and closing a period starts from it', async () => {
  await walked.go('#/mercury/periods');
  await main()
    .getByText(words.alarmFrom(alarmText(0.05), 'start'))
    .waitFor();
  await main().getByRole('link', { name: words.toFigures }).click();
  await main().getByRole('heading', { level: 1 }).waitFor();
  expect(walked.page.url()).toMatch(/#\/site\/site-figures$/);
  await plainInBoth(walked, 'site-figures-unset');
  const why = 'agreed before the year began';
  await walked.keep([draft('figures-one', 'site-figures', { falseAlarm: { value: 0.01, why }, lotDays: { value: 30, why } }, 1)]);
  await walked.page.reload();
  await main().getByText(why).first().waitFor();
  await plainInBoth(walked, 'site-figures-set');
  await walked.go('#/mercury/periods');
  const book = onDisk();
  const { differences, periods } = sequenceOf(book, { basis: 'as-known-today' });
  const rows = periodsInRow(book, sequenceOf(book, { basis: 'as-known-today' }));
  await main()
    .getByText(words.chosen(alarmText(0.01), periods.length, 'as-known-today'))
    .waitFor();
  await main()
    .getByText(verdictText(rows, sequenceTest(differences, 0.5, 0.01)))
    .waitFor();
  await walked.go('#/mercury/out-of-step');
  await main().getByText(outOfStepWords.lots(30)).waitFor();
  await walked.go('#/mercury/close');
  await main().getByText(en.particulars).first().click();
  await expect
    .poll(() =>
      main()
        .getByRole('textbox', { name: /^False alarm of the sequence test/ })
        .inputValue(),
    )
    .toBe('0.01');
  await walked.go('#/mercury/periods');
});

test('both bases are offered by name, and the page says which one it shows', async () => {
  const bases = main().getByRole('radiogroup', { name: words.basis });
  await bases.getByRole('radio', { name: /^As closed/ }).check();
  await main()
    .getByText(words.chosen(alarmText(0.01), 6, 'as-closed'))
    .waitFor();
  await main().getByText(words.never).waitFor();
});

test('table and drawing are copied', async () => {
  await main().getByRole('button', { name: words.copyCsv }).click();
  await main().getByText('Copied.').waitFor();
  const csv = await walked.page.evaluate(() => navigator.clipboard.readText());
  expect(csv.trimEnd().split('\n')).toHaveLength(7);
  expect(csv).toContain('"as-closed"');
  await main().getByRole('button', { name: words.copySvg }).click();
  await expect.poll(() => walked.page.evaluate(() => navigator.clipboard.readText())).toContain('</svg>');
});

test('axe finds nothing in either theme, no page is wider than a window at 200 %, and none met an error', async () => {
  for (const theme of ['light', 'dark'] as const) {
    await walked.theme(theme);
    await walked.go('#/mercury/periods');
    await columns().first().waitFor();
    expect(await walked.axe(), theme).toEqual([]);
  }
  await walked.page.setViewportSize({ width: 640, height: 400 });
  expect(
    await walked.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
  ).toBeLessThanOrEqual(0);
  expect(walked.errors).toEqual([]);
});
