/**
 * The room Bullion walked in a browser: two sponges melted to a bar, proofs, another laboratory's certificate, a difference over the splitting limit, the
 * umpire, the settlement, and the bar record read back by another program. Figures: methods.md WE-18 and WE-29, reckoned there and not here.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bullion as words } from '../../app/words/screens-bullion.ts';
import { settleWords } from '../../app/words/screens-bullion-forms.ts';
import { historyWords } from '../../app/words/screens-bullion-history.ts';
import { byKeyboard, pressIfOffered } from './hands.ts';
import { daysAgo, draft, siteAtWork } from './site-entries.ts';
import { openWalk, type WalkedWindow } from './window.ts';

let walked: WalkedWindow;
let folder = '';
const barId = 'melt-walk/b1';
const read = (gross: string) => ({ how: 'scale' as const, scale: 'bench-scale', gross });
const main = () => walked.page.getByRole('main');
const plain = (text: string | null): string => (text ?? '').replace(/[\u00a0\u202f]/g, ' ');
const region = (name: string) => main().getByRole('region', { name, exact: true });
const bar = (id: string) => walked.go(`#/bullion/bar/${encodeURIComponent(id)}`);

/** Two sponges fired, neither melted. */
const twoSponges = () => [
  draft(
    'clean-up-walk',
    'clean-up',
    {
      type: 'routine',
      where: 'Battery 1',
      lots: [
        { key: '1', label: 'Walk 1', weight: read('1800.0 g') },
        { key: '2', label: 'Walk 2', weight: read('1700.0 g') },
      ],
    },
    daysAgo(8),
  ),
  ...([1, 2] as const).flatMap((n) => [
    draft(
      `charge-walk-${n}`,
      'charge',
      {
        retort: 'pot-retort',
        rows: [{ take: 'whole', key: '1', lot: `clean-up-walk/${n}`, weight: read(n === 1 ? '1800.0 g' : '1700.0 g') }],
      },
      daysAgo(7, n === 1 ? '07:00' : '12:00'),
    ),
    draft(
      `firing-walk-${n}`,
      'firing',
      {
        heats: [{ charge: `charge-walk-${n}`, sponge: read(n === 1 ? '650.0 g' : '620.0 g') }],
        opened: daysAgo(6, n === 1 ? '09:00' : '15:00'),
        opening: { measuredC: 20 },
        mercury: { weight: read(n === 1 ? '1145.0 g' : '1075.0 g'), vessel: 'bottle-one', state: 'dry' },
      },
      daysAgo(6, n === 1 ? '09:00' : '15:00'),
    ),
  ]),
];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'bullion-walk-'));
  walked = await openWalk('Invented battery');
  await walked.keep([...siteAtWork(), ...twoSponges()]);
}, 240_000);
afterAll(async () => {
  await walked?.close();
  if (folder !== '') rmSync(folder, { recursive: true, force: true });
});

test('sponges that were fired wait here, and the next step is to melt them', async () => {
  await walked.go('#/bullion');
  const waits = region(words.waits);
  await waits.getByText('650.0 g').waitFor();
  await waits.getByText('620.0 g').waitFor();
  expect(await waits.getByRole('link', { name: new RegExp(`^${words.meltIt}`) }).count()).toBeGreaterThanOrEqual(2);
  expect(await main().locator('a.action.main').textContent()).toBe(words.newMelt);
});

test('a bar without an assay says so; with proofs its fineness stands with every term', async () => {
  await walked.keep([
    draft(
      'melt-walk',
      'melt',
      {
        sponges: [
          { charge: 'charge-walk-1', weight: read('650.0 g') },
          { charge: 'charge-walk-2', weight: read('620.0 g') },
        ],
        bars: [{ key: 'b1', label: 'W-1', weight: { how: 'stated', mass: '1243.62 g', u: '0.06 g' } }],
        prills: read('3.1 g'),
      },
      daysAgo(5),
    ),
  ]);
  await bar(barId);
  await main().getByText(words.one.holdsNone).waitFor();
  await walked.keep([
    draft(
      'assay-ours',
      'assay',
      {
        method: 'fire-assay',
        subject: 'bar',
        bar: barId,
        laboratory: 'the site',
        balanceU: '0.01 mg',
        repeatability: '0.15',
        proofScatter: '0.12',
        replicates: [
          { sample: '250.12 mg', cornet: '221.437 mg' },
          { sample: '250.08 mg', cornet: '221.402 mg' },
        ],
        proofs: [
          { taken: '221.50 mg', found: '221.58 mg' },
          { taken: '221.46 mg', found: '221.53 mg' },
        ],
      },
      daysAgo(4),
    ),
  ]);
  await bar(barId);
  const assays = region(words.one.assays);
  await assays.locator('summary').first().press('Enter');
  const told = plain(await assays.textContent());
  for (const figure of ['885.023 ‰', '885.025 ‰', '885.024 ‰', '−0.0750 mg', '+0.3386 ‰', '0.1465 ‰'])
    expect(told).toContain(figure);
  // the bar's fine gold, from the same example
  expect(plain(await main().locator('table').first().textContent())).toContain('1 100.63');
  expect(await walked.axe()).toEqual([]);
});

test('Today names a bar that nobody has assayed', async () => {
  await walked.keep([
    draft(
      'melt-plain',
      'melt',
      {
        sponges: [],
        added: [{ key: 'a1', label: 'old prills', weight: read('12.0 g') }],
        bars: [{ key: 'b1', label: 'W-9', weight: read('11.9 g') }],
      },
      daysAgo(4, '15:00'),
    ),
  ]);
  await walked.go('#/today');
  const link = main().getByRole('link', { name: /W-9, 11\.9/ });
  expect(await link.getAttribute('href')).toBe(`#/bullion/bar/${encodeURIComponent('melt-plain/b1')}`);
});

test('a clean-up without ore has no yield, in words', async () => {
  await walked.go('#/bullion/yields');
  await region('By clean-up').getByText('not computable: no ore is written down for it').first().waitFor();
});

test('the histories are reached from the front page, each value tells itself as it gets the focus, and the arrow keys go on', async () => {
  const { page } = walked;
  await walked.go('#/bullion');
  await main().getByRole('link', { name: historyWords.link }).click();
  const sponge = region(historyWords.kinds.sponge.title);
  const values = sponge.getByRole('group', { name: historyWords.kinds.sponge.chart }).getByRole('link');
  await values.first().focus();
  const told = sponge.locator('.told');
  expect(plain(await told.textContent())).toMatch(/: 36\.1\d* ± [\d.]+ %; too few before it to say$/);
  await page.keyboard.press('ArrowRight');
  expect(plain(await told.textContent())).toMatch(/: 36\.4\d* ± /);
  expect(await values.nth(1).getAttribute('href')).toBe('#/retort/charge-walk-2');
  await sponge.getByRole('row', { name: /36\.4/ }).getByText(historyWords.marks.early).waitFor();
});

test('the way back leads from the bar to its charges, lots and clean-up', async () => {
  await bar(barId);
  const origin = region(words.one.origin);
  const hrefs = await origin.getByRole('link').evaluateAll((all) => all.map((a) => a.getAttribute('href')));
  for (const href of ['#/daybook/melt-walk', '#/retort/charge-walk-1', '#/retort/charge-walk-2', '#/daybook/clean-up-walk'])
    expect(hrefs).toContain(href);
});

test('a difference over the limit asks for the umpire, by keyboard, and with it settles by the rule', async () => {
  const { page } = walked;
  const hand = byKeyboard(page);
  await walked.go(`#/bullion/settle/${encodeURIComponent(barId)}`);
  const field = (name: string) => page.getByRole('textbox', { name: new RegExp(`^${name}`) });
  const writer = page.getByRole('main').getByRole('button', { name: 'Keeper', exact: true });
  await pressIfOffered(hand, writer, page.getByRole('main').locator('form'));
  await hand.write(field(settleWords.ours), '884.6');
  await hand.write(field(settleWords.theirs), '885.3');
  await hand.write(field(settleWords.limit), '0.5');
  await main().getByText(settleWords.waits, { exact: true }).waitFor();
  await hand.choose(page.getByRole('radiogroup', { name: settleWords.rule }), 'Mean of the umpire and the nearer party');
  await hand.write(field(settleWords.umpireFigure), '884.9');
  await main().getByText('884.75 ‰').waitFor();
  expect(await walked.axe()).toEqual([]);
  await hand.press(page.getByRole('button', { name: 'Keep', exact: true }));
  await main()
    .getByText(/^Kept · entry/)
    .waitFor();
  await bar(barId);
  expect(plain(await region(words.one.settlement).textContent())).toContain('884.75 ‰');
});

test('the bar record is printed and says what it holds, that it certifies nothing, and no place', async () => {
  await walked.keep([draft('kept-walk', 'bar-kept', { bar: barId, place: 'behind the third stair' }, daysAgo(3))]);
  await bar(barId);
  await main().getByText('behind the third stair').waitFor();
  const download = walked.page.waitForEvent('download');
  await main().getByRole('button', { name: words.one.print }).press('Enter');
  const file = join(folder, 'bar.pdf');
  await (await download).saveAs(file);
  const text = plain(execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' })).replace(/\s+/g, ' ');
  expect(text).toContain('W-1');
  expect(text).toContain('885.02');
  expect(text).toContain('884.75');
  expect(text).toContain('certifies nothing');
  expect(text).not.toContain('third stair');
});

test('a result that cannot be is kept and named; one that cannot be meant is refused', async () => {
  await walked.keep([
    draft(
      'melt-odd',
      'melt',
      { sponges: [{ charge: 'charge-one' }], bars: [{ key: 'b1', label: 'W-2', weight: read('365.0 g') }] },
      daysAgo(3),
    ),
    draft(
      'assay-odd',
      'assay',
      { method: 'outside', subject: 'bar', bar: 'melt-odd/b1', result: { unit: 'permille', gold: '930.0', silver: '95.0' } },
      daysAgo(2),
    ),
  ]);
  await bar('melt-odd/b1');
  await main().getByText(words.one.baseBelow).waitFor();
  await walked.go('#/bullion');
  await region(words.bars).getByText(words.odd).waitFor();
  const heavy = draft(
    'assay-heavy',
    'assay',
    { method: 'fire-assay', subject: 'bar', bar: 'melt-odd/b1', replicates: [{ sample: '250.0 mg', cornet: '251.0 mg' }] },
    daysAgo(1),
  );
  await expect(walked.keep([heavy])).rejects.toThrow('cornet-over-sample');
  // a bar that left and is melted all the same may be a true reading: kept, and marked on its page
  await walked.keep([
    draft('away-odd', 'transfer', { way: 'out', what: 'bar', party: 'A refiner', bar: 'melt-odd/b1' }, daysAgo(1)),
    draft(
      'melt-again',
      'melt',
      { sponges: [], added: [{ key: 'a1', label: 'W-2', bar: 'melt-odd/b1', weight: read('365.0 g') }], bars: [] },
      daysAgo(0, '00:01'),
    ),
  ]);
  await bar('melt-odd/b1');
  await region(words.one.remarks)
    .getByText(/had left the site by the book and was melted here/)
    .first()
    .waitFor();
});

test('room and bar are clean to axe in both themes', async () => {
  for (const theme of ['light', 'dark'] as const) {
    await walked.theme(theme);
    for (const hash of [
      '#/bullion',
      `#/bullion/bar/${encodeURIComponent(barId)}`,
      '#/bullion/away',
      '#/bullion/settle',
      '#/bullion/yields',
      '#/bullion/history',
      '#/today',
    ]) {
      await walked.go(hash);
      expect(await walked.axe(), `${theme} ${hash}`).toEqual([]);
      const pics = process.env.WALK_PICTURES;
      if (pics) await walked.page.screenshot({ path: join(pics, `${theme}-${hash.replace(/\W+/g, '-')}.png`), fullPage: true });
    }
  }
  expect(walked.errors).toEqual([]);
});
