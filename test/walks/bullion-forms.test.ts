/**
 * The forms of a melt and of an assay, by keyboard in a browser: two sponges to a bar, a duplicate assay with proofs, and input that cannot be. Figures of
 * the assay: methods.md WE-18, reckoned there and not here.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { problem } from '../../app/core/result.ts';
import { en } from '../../app/words/en.ts';
import { flagText } from '../../app/words/flags.ts';
import { problemText } from '../../app/words/problems.ts';
import { bullion } from '../../app/words/screens-bullion.ts';
import { assaying } from '../../app/words/screens-bullion-assaying.ts';
import { settleWords } from '../../app/words/screens-bullion-forms.ts';
import { meltForm } from '../../app/words/screens-bullion-melt.ts';
import { byKeyboard, type Hand, pressIfOffered } from './hands.ts';
import { plainInBoth } from './looked-at.ts';
import { daysAgo, draft, siteAtWork } from './site-entries.ts';
import { openWalk, type WalkedWindow } from './window.ts';

let walked: WalkedWindow;
let hand: Hand;
const read = (gross: string) => ({ how: 'scale' as const, scale: 'bench-scale', gross });
const main = () => walked.page.getByRole('main');
const plain = (text: string | null): string => (text ?? '').replace(/[\u00a0\u202f]/g, ' ');
const field = (name: string | RegExp) =>
  main().getByRole('textbox', { name, ...(typeof name === 'string' ? { exact: true } : {}) });
const box = (name: RegExp) => main().getByRole('checkbox', { name });
const fold = (title: string) => main().locator('summary', { hasText: title }).first();
const sample = (n: number, what: string) => field(assaying.field(what, assaying.sampleOne, n));
const proof = (n: number, what: string) => field(assaying.field(what, assaying.proofOne, n));
const keptLine = () => main().getByText(/^Kept · entry/);
const toKeep = () => main().getByRole('button', { name: 'Keep', exact: true });
const barOf = (label: string) =>
  main()
    .getByRole('link', { name: label, exact: true })
    .first()
    .getAttribute('href')
    .then((href) => decodeURIComponent(href ?? '').replace('#/bullion/bar/', ''));

async function open(hash: string) {
  await walked.go('#/bullion');
  await walked.go(hash);
  const writer = main().getByRole('button', { name: 'Keeper', exact: true });
  await pressIfOffered(hand, writer, main().locator('form'));
}

beforeAll(async () => {
  walked = await openWalk('Invented battery');
  hand = byKeyboard(walked.page);
  await walked.keep([
    ...siteAtWork(),
    draft(
      'charge-walk',
      'charge',
      { retort: 'pot-retort', rows: [{ take: 'whole', key: '1', lot: 'clean-up-two/1', weight: read('510.0 g') }] },
      daysAgo(4, '07:00'),
    ),
    draft(
      'firing-walk',
      'firing',
      {
        heats: [{ charge: 'charge-walk', sponge: read('190.4 g') }],
        opened: daysAgo(4, '15:00'),
        opening: { measuredC: 20 },
        mercury: { weight: read('318.0 g'), vessel: 'bottle-one', state: 'dry' },
      },
      daysAgo(4, '15:00'),
    ),
    draft(
      'melt-before',
      'melt',
      {
        sponges: [],
        added: [{ key: 'a1', label: 'old sponge', weight: read('30.0 g') }],
        flux: 'borax and soda',
        bars: [{ key: 'b1', label: 'W-6', weight: read('27.0 g') }],
        prills: read('1.4 g'),
        slag: read('22.0 g'),
      },
      daysAgo(3),
    ),
    draft('away-before', 'transfer', { way: 'out', what: 'bar', party: 'A refiner', bar: 'melt-before/b1' }, daysAgo(2)),
  ]);
}, 240_000);
afterAll(() => walked?.close());

test('a melt is opened at the sponge that waits; sponges, prills and old slag are ticked from stock, each with its mass', async () => {
  await walked.go('#/bullion');
  await hand.press(
    main()
      .getByRole('link', { name: new RegExp(`^${bullion.meltIt}`) })
      .first(),
  );
  await main().getByRole('heading', { name: meltForm.title, level: 1 }).waitFor();
  const writer = main().getByRole('button', { name: 'Keeper', exact: true });
  await pressIfOffered(hand, writer, main().locator('form'));
  expect(await box(/^Sponge of the charge/).count()).toBe(2);
  expect(await main().getByRole('checkbox', { checked: true }).count()).toBe(1);
  await main().getByText('Sponge still holds mercury', { exact: false }).first().waitFor();
  const told = plain(await main().textContent());
  for (const mass of ['370.5 g', '190.4 g', '1.4 g', '22.0 g']) expect(told).toContain(mass);
  for (const name of [/^Sponge of the charge/, /^Prills of the melt/, /^Slag of the melt/])
    for (const one of await box(name).all()) if (!(await one.isChecked())) await hand.tick(one);
  expect(await field(meltForm.flux).or(field(/^Flux/)).inputValue()).toBe('borax and soda');
});

test('the stamped number is offered, the shrinkage stands between its bounds, and the line reads back what will be kept', async () => {
  expect(await field(meltForm.labelOf(meltForm.barOne, 1)).inputValue()).toBe('W-7');
  await hand.write(field(meltForm.weightOf(meltForm.barOne, 1)), '550.0');
  // 370.5 + 190.4 + 1.4 in, 550.0 out; the slag stands in no figure
  const live = plain(await main().getByRole('region', { name: meltForm.live }).textContent());
  expect(live).toContain('562.3');
  expect(live).toContain('12.3');
  const back = plain(await main().locator('p.back').textContent());
  expect(back).toContain('W-7 550');
  expect(back).toContain('shrinkage 12.3 g');
  await plainInBoth(walked, 'melt');
});

test('a bar over its charge is named at the bars with the mend while it is typed', async () => {
  // what old slag gave back was weighed by nobody: only without it can a bar be said to be too heavy
  await hand.tick(box(/^Slag of the melt/));
  await hand.write(field(meltForm.weightOf(meltForm.barOne, 1)), '570.0');
  const bars = main().getByRole('group', { name: meltForm.bars, exact: true });
  expect(plain(await bars.getByRole('status').textContent())).toContain('7.7 g more than what went in');
  await plainInBoth(walked, 'melt-over');
  await hand.write(field(meltForm.weightOf(meltForm.barOne, 1)), '550.0');
  await bars.getByRole('status').waitFor({ state: 'detached' });
  await hand.tick(box(/^Slag of the melt/));
});

test('a picture of the bar goes with the melt and is seen on its entry; what is no picture is refused in words', async () => {
  await hand.press(fold(en.particulars));
  const asked = main().getByLabel(en.evidence, { exact: true });
  await asked.setInputFiles({ name: 'bar.png', mimeType: 'image/png', buffer: Buffer.from('no picture') });
  await main()
    .getByText(problemText(problem('evidence-kind', '')))
    .waitFor();
  await asked.setInputFiles({
    name: 'Bar on the bench.png',
    mimeType: 'image/png',
    buffer: readFileSync('assets/icons/64x64.png'),
  });
  expect(await field(en.evidenceShows(1)).inputValue()).toBe('Bar on the bench');
  await hand.write(field(en.evidenceShows(1)), 'Bar W-7, stamped');
  await plainInBoth(walked, 'melt-picture');
});

test('the melt is kept, its prills and slag are stock no more, and the bar waits for its assay', async () => {
  await hand.press(toKeep());
  await keptLine().waitFor();
  const next = main().getByRole('link', { name: meltForm.toAssay('W-7') });
  const bar = /^#\/bullion\/assay\/(.*)$/.exec((await next.getAttribute('href')) ?? '')?.[1] ?? '';
  await walked.go(`#/daybook/${decodeURIComponent(bar).split('/')[0]}`);
  const seen = main().getByRole('img', { name: 'Bar W-7, stamped' });
  await seen.scrollIntoViewIfNeeded();
  await expect.poll(() => seen.evaluate((img) => (img as HTMLImageElement).naturalWidth)).toBe(64);
  await open('#/bullion/melt');
  expect(await box(/^Prills|^Slag|^Sponge/).count()).toBe(0);
});

test('an assay is opened at the bar with the bar filled in: method first, and only its fields', async () => {
  await walked.go('#/bullion');
  await hand.press(main().getByRole('link', { name: new RegExp(`^${bullion.assayIt}.*W-7`) }));
  await main().getByRole('heading', { name: assaying.title, level: 1 }).waitFor();
  expect(await main().getByRole('combobox', { name: assaying.bar }).locator('option:checked').textContent()).toBe('W-7');
  expect(await sample(1, assaying.taken).count()).toBe(0);
  await main().getByText(assaying.pickMethod).waitFor();
  await plainInBoth(walked, 'assay-empty');
  await hand.choose(main().getByRole('radiogroup', { name: assaying.method }), 'Fire assay');
  await sample(1, assaying.taken).waitFor();
  expect(await main().getByRole('group', { name: assaying.air }).count()).toBe(0);
});

test('replicates and proofs give the fineness while they are typed, with the term of sampling apart', async () => {
  const rows: readonly (readonly [ReturnType<typeof sample>, string])[] = [
    [sample(1, assaying.taken), '250.12'],
    [sample(1, assaying.cornet), '221.437'],
    [sample(2, assaying.taken), '250.08'],
    [sample(2, assaying.cornet), '221.402'],
    [proof(1, assaying.goldTaken), '221.50'],
    [proof(1, assaying.goldFound), '221.58'],
    [proof(2, assaying.goldTaken), '221.46'],
    [proof(2, assaying.goldFound), '221.53'],
  ];
  for (const [at, text] of rows) await hand.write(at, text);
  await hand.press(fold(assaying.own));
  await hand.write(field(new RegExp(`^${assaying.balanceU.split(' (')[0]}`)), '0.01');
  await hand.write(field(assaying.repeatability), '0.15');
  await hand.write(field(assaying.proofScatter), '0.12');
  await hand.press(fold(assaying.sampling));
  await hand.pick(main().getByRole('combobox', { name: assaying.samplingHow }), 'Dipped from the molten metal');
  await hand.write(field(new RegExp(`^${assaying.samplingU.split(' (')[0]}`)), '0.8');
  const live = main().getByRole('region', { name: assaying.live });
  const told = plain(await live.textContent());
  expect(told).toContain('885.024');
  // k = 2: of the assay 2 × 0.146541, of sampling 2 × 0.8, of both the root of the sum of squares
  expect(plain(await live.locator('tbody tr').first().textContent())).toMatch(/0\.29.*1\.6.*1\.6/);
  expect(plain(await main().locator('p.back').textContent())).toContain('Bar W-7, Fire assay, gold 885.0');
  await plainInBoth(walked, 'assay-fire');
  await hand.press(toKeep());
  await keptLine().waitFor();
});

test('from the bar the difference is settled through the umpire, and the bar record is read back by another program', async () => {
  await hand.press(main().getByRole('link', { name: assaying.toBar }));
  await main()
    .getByRole('heading', { name: bullion.one.title('W-7'), level: 1 })
    .waitFor();
  await hand.press(main().getByRole('link', { name: bullion.one.settle }));
  await main().getByRole('heading', { name: settleWords.title, level: 1 }).waitFor();
  await hand.write(field(new RegExp(`^${settleWords.ours}`)), '885.02');
  await hand.write(field(new RegExp(`^${settleWords.theirs}`)), '884.30');
  await hand.write(field(new RegExp(`^${settleWords.limit}`)), '0.5');
  await main().getByText(settleWords.waits, { exact: true }).waitFor();
  await hand.choose(main().getByRole('radiogroup', { name: settleWords.rule }), 'Mean of the umpire and the nearer party');
  await hand.write(field(new RegExp(`^${settleWords.umpireFigure}`)), '884.90');
  // the nearer is ours: (884.90 + 885.02) / 2
  await main().getByText('884.96', { exact: false }).first().waitFor();
  await hand.press(toKeep());
  await keptLine().waitFor();
  await hand.press(main().getByRole('link', { name: settleWords.toBar }));
  const download = walked.page.waitForEvent('download');
  await hand.press(main().getByRole('button', { name: bullion.one.print }));
  const place = mkdtempSync(join(tmpdir(), 'bar-record-'));
  try {
    const file = join(place, 'bar.pdf');
    await (await download).saveAs(file);
    const text = plain(execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' })).replace(/\s+/g, ' ');
    for (const told of ['W-7', '550', '885.0', '884.96', 'certifies nothing']) expect(text).toContain(told);
  } finally {
    rmSync(place, { recursive: true, force: true });
  }
});

test('a cornet heavier than its sample and a proof that found too much are refused at their fields, and nothing is written', async () => {
  await walked.go('#/bullion');
  const bar = await barOf('W-7');
  await open(`#/bullion/assay/${encodeURIComponent(bar)}`);
  await hand.choose(main().getByRole('radiogroup', { name: assaying.method }), 'Fire assay');
  // what the site knows of its own weighing stands from its last assay
  await hand.press(fold(assaying.own));
  expect(await field(assaying.repeatability).inputValue()).toBe('0.15');
  await hand.write(sample(1, assaying.taken), '250.0');
  await hand.write(sample(1, assaying.cornet), '251.0');
  await hand.write(proof(1, assaying.goldTaken), '200');
  await hand.write(proof(1, assaying.goldFound), '210.1');
  await hand.press(toKeep());
  expect(await sample(1, assaying.cornet).getAttribute('aria-invalid')).toBe('true');
  expect(await proof(1, assaying.goldFound).getAttribute('aria-invalid')).toBe('true');
  await main()
    .getByText(problemText(problem('cornet-over-sample', '')))
    .waitFor();
  await main()
    .getByText(problemText(problem('proof-over-taken', '', { taken: '200 mg', found: '210.1 mg' })))
    .waitFor();
  expect(await keptLine().count()).toBe(0);
  await plainInBoth(walked, 'assay-refused');
  await walked.go(`#/bullion/bar/${encodeURIComponent(bar)}`);
  expect(await main().getByRole('region', { name: bullion.one.assays }).locator('.assay').count()).toBe(1);
});

test('gold and silver over 1000 are named while typed, kept as stated, and marked on the bar', async () => {
  await walked.go('#/bullion');
  const bar = await barOf('W-7');
  await open(`#/bullion/assay/${encodeURIComponent(bar)}`);
  await hand.choose(main().getByRole('radiogroup', { name: assaying.method }), 'Certificate');
  await hand.write(field(assaying.laboratory), 'Second laboratory');
  await hand.write(field(assaying.gold), '930.0');
  await hand.write(field(assaying.silver), '95.0');
  await main().getByText('Over 1000 parts.', { exact: false }).first().waitFor();
  await plainInBoth(walked, 'assay-over');
  await hand.press(toKeep());
  await keptLine().waitFor();
  await walked.go(`#/bullion/bar/${encodeURIComponent(bar)}`);
  await main().getByText(bullion.one.baseBelow).first().waitFor();
});

test('a density is indicative, for a bar only, and names the second metal it was told', async () => {
  await walked.go('#/bullion');
  const bar = await barOf('W-7');
  await open(`#/bullion/assay/${encodeURIComponent(bar)}`);
  await hand.choose(main().getByRole('radiogroup', { name: assaying.method }), 'Weighed in air and water');
  expect(await main().getByRole('combobox', { name: assaying.subject }).locator('option').allTextContents()).not.toContain('Ore');
  await hand.write(field(assaying.air), '550.0');
  await hand.write(field(assaying.water), '515.0');
  await hand.write(field(assaying.waterDensity), '0.9982');
  await hand.choose(main().getByRole('radiogroup', { name: assaying.other }), 'Silver');
  await main().getByText('The second metal is taken as silver.', { exact: false }).first().waitFor({ state: 'attached' });
  expect(plain(await main().locator('p.back').textContent())).toContain('indicative');
  await plainInBoth(walked, 'assay-density');
});

test('a bar that was handed over can be ticked only apart, is named with the mend, and is kept and marked', async () => {
  await open('#/bullion/melt');
  await hand.press(fold(meltForm.gone));
  await hand.tick(box(/^Bar W-6/));
  await main().getByText(meltForm.left('W-6')).waitFor();
  await plainInBoth(walked, 'melt-gone');
  await hand.press(toKeep());
  await keptLine().waitFor();
  await walked.go(`#/bullion/bar/${encodeURIComponent('melt-before/b1')}`);
  await main()
    .getByText(flagText({ code: 'bar-left-melted', entry: '', data: { label: 'W-6' } } as Parameters<typeof flagText>[0]))
    .first()
    .waitFor();
  // melted once, it is offered no more
  await open('#/bullion/melt');
  expect(await box(/^Bar W-6/).count()).toBe(0);
});

test('a melt of which nothing is said is refused, and a draft is taken up again', async () => {
  await hand.press(toKeep());
  await main().getByText('Nothing went into this melt', { exact: false }).waitFor();
  await hand.tick(box(/^Bar W-7/));
  await walked.page.waitForTimeout(600);
  await walked.page.reload();
  await main().getByRole('heading', { name: meltForm.title, level: 1 }).waitFor();
  await main().getByRole('checkbox', { checked: true }).first().waitFor();
  expect(await main().getByRole('checkbox', { checked: true }).count()).toBe(1);
});

test('a bar that stands in a melt already is refused where it is ticked, and nothing is written', async () => {
  await walked.go('#/bullion');
  const bar = await barOf('W-7');
  await walked.keep([
    draft(
      'melt-meanwhile',
      'melt',
      { sponges: [], added: [{ key: 'a1', label: 'W-7', bar, weight: read('550.0 g') }], bars: [] },
      daysAgo(0, '00:02'),
    ),
  ]);
  await open('#/bullion/melt');
  await main().getByRole('heading', { name: meltForm.lost }).waitFor();
  await hand.press(toKeep());
  await main()
    .getByText(problemText(problem('bar-melted', '', { label: 'W-7' })))
    .waitFor();
  expect(await box(/^Bar W-7/).getAttribute('aria-invalid')).toBe('true');
  expect(await keptLine().count()).toBe(0);
  await plainInBoth(walked, 'melt-refused');
  expect(walked.errors).toEqual([]);
});
