/** The rooms Today and Daybook in a real browser: a note is written, an entry corrected, one struck, and every old reading is found again. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { daybookWords } from '../../app/words/daybook.ts';
import { en } from '../../app/words/en.ts';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { daysAgo, draft, siteAtWork } from './site-entries.ts';
import { openWalk, type WalkedWindow } from './window.ts';

let w: WalkedWindow;
const hostile = '<img src=x onerror="window.hit=1"> =HYPERLINK("x")';

beforeAll(async () => {
  w = await openWalk('Invented Creek Battery');
});
afterAll(async () => {
  await w?.close();
});

const main = () => w.page.locator('main');
const keep = async () => {
  await main().getByRole('button', { name: 'Keep', exact: true }).click();
};

/** Every page of the two rooms, in both themes, as axe sees it. */
async function clean(pages: readonly string[]): Promise<string[]> {
  const faults: string[] = [];
  for (const theme of ['light', 'dark'] as const) {
    await w.theme(theme);
    for (const hash of pages) {
      await w.go(hash);
      faults.push(...(await w.axe()).map((fault) => `${theme} ${hash}: ${fault}`));
    }
  }
  await w.theme('light');
  return faults;
}

describe('an empty book', () => {
  test('shows first steps on Today, and the daybook says where to begin', async () => {
    await w.go('#/today');
    await main().getByRole('link', { name: 'Enter a scale' }).waitFor();
    expect(await main().getByRole('listitem').count()).toBe(8);
    await w.go('#/daybook');
    await main().getByText('Nothing is written in this daybook yet.').waitFor();
    expect(await clean(['#/today', '#/daybook', '#/daybook/note'])).toEqual([]);
  });
});

describe('a book at work', () => {
  beforeAll(async () => {
    await w.keep([...siteAtWork(), draft('helper-one', 'person', { name: hostile, roles: ['helper'] }, daysAgo(3))]);
  });

  test('Today tells what is open in a keeper’s order, and what to write next', async () => {
    await w.go('#/today');
    const headings = await main().getByRole('heading', { level: 2 }).allTextContents();
    expect(headings).toEqual([
      'In the safe',
      'Charged, not fired',
      'Runs to look at',
      'Firings without a charge',
      'To look at',
      'Due',
    ]);
    await main().getByText('Mercury is missing').waitFor();
    await main()
      .getByRole('link', { name: /^Write up the firing/ })
      .click();
    expect(new URL(w.page.url()).hash).toBe('#/retort/charge-two');
  });

  test('a note begun and left is on Today, is taken up again, and is kept', async () => {
    await w.go('#/today');
    await main().getByRole('navigation', { name: 'Write up' }).getByRole('link', { name: 'Note' }).click();
    await main().getByLabel('Note', { exact: true }).fill('The lamp over the plates');
    await w.page.waitForTimeout(600);
    await w.page.reload();
    await w.go('#/today');
    await main()
      .getByRole('link', { name: /^Note, last touched/ })
      .click();
    const field = main().getByLabel('Note', { exact: true });
    await expect.poll(() => field.inputValue()).toBe('The lamp over the plates');
    await field.fill('The lamp over the plates was out.');
    await main().getByRole('button', { name: 'Keeper', exact: true }).click();
    await keep();
    await main().getByRole('heading', { level: 1, name: 'Note', exact: true }).waitFor();
    await main().getByText('written by Keeper').waitFor();
    await w.go('#/today');
    expect(await main().getByText('Left unfinished').count()).toBe(0);
  });

  test('marks that turn the direction of text around are refused in words, and nothing is kept', async () => {
    await w.go('#/daybook/note');
    const lines = await main().getByRole('heading', { level: 1 }).textContent();
    expect(lines).toBe('A note');
    await main().getByLabel('Note', { exact: true }).fill('abc \u202e def');
    await keep();
    await main().getByText('There are characters here that cannot be printed').waitFor();
    await main().getByLabel('Note', { exact: true }).fill(`Said by ${hostile}`);
    await keep();
    await main().getByRole('heading', { level: 1, name: 'Note', exact: true }).waitFor();
    await main().getByText(`Said by ${hostile}`).first().waitFor();
  });

  test('entries are found by text, kind and writer, and what was looked for stays in the address', async () => {
    await w.go('#/daybook');
    await main().getByText('Find entries').click();
    await main().getByLabel(/^Text/).fill('ball 3');
    await main()
      .getByText(/^1 of \d+ entries/)
      .waitFor();
    expect(new URL(w.page.url()).hash).toBe('#/daybook/find/text=ball%203');
    await w.page.reload();
    await main()
      .getByText(/^1 of \d+ entries/)
      .waitFor();
    await main().getByRole('link', { name: 'Show all' }).click();
    await main()
      .getByText(/^All \d+ entries/)
      .waitFor();
    await main().getByLabel(/^Kind/).selectOption('firing');
    await main()
      .getByText(/^2 of \d+ entries/)
      .waitFor();
    expect(await main().getByText('Kitchen scale').count()).toBe(0);
    await w.page.goBack();
    await w.page.goForward();
    await main()
      .getByText(/^2 of \d+ entries/)
      .waitFor();
  });

  test('a correction is written from the entry, and both readings stand side by side with who and why', async () => {
    await w.go('#/daybook/clean-up-one');
    await main().getByRole('link', { name: 'Correct', exact: true }).click();
    await main().getByText('Nothing has been changed yet.').waitFor();
    await main()
      .getByLabel(/^Batteries or plates/)
      .fill('Battery 2');
    // the row is one line that says what it holds, until it is opened
    const row = main().getByRole('group', { name: /^Lot 1/ });
    const reading = row.getByRole('textbox', { name: /^Reading/ });
    expect(await reading.isVisible()).toBe(false);
    await row.getByText(/^955\.6 g ·/).click();
    await reading.fill('956.6');
    await main().getByText('Changed: Batteries or plates; Lot 1, Weight').waitFor();
    await keep();
    await main().getByText('One thing is not right yet.').waitFor();
    await main()
      .getByLabel(/^Why it is corrected/)
      .fill('Misread by lamplight.');
    await keep();
    const table = main().getByRole('table', { name: 'Readings side by side' });
    await table.waitFor();
    const rows = await table.locator('tbody tr').allInnerTexts();
    expect(rows.map((row) => row.split(/\s*[\t\n]\s*/).filter((t) => t !== '')).slice(1)).toEqual([
      ['Batteries or plates', 'Battery 1', 'Battery 2', 'changed'],
      ['Lot 1, Weight', '955.6\u00a0g', '956.6\u00a0g', 'changed'],
    ]);
    await table.getByText('Misread by lamplight.').waitFor();
    await table
      .getByText(/Keeper, /)
      .first()
      .waitFor();
  });

  test('a correction opened from one lot has that row open and in focus, and the others folded', async () => {
    await w.go('#/daybook/clean-up-one');
    await main()
      .getByRole('link', { name: /^Correct\s*: .*Lot 1$/ })
      .click();
    const row = main().getByRole('group', { name: /^Lot 1/ });
    await row.getByRole('textbox', { name: /^Reading/ }).waitFor();
    await expect.poll(() => row.evaluate((element) => element.contains(document.activeElement))).toBe(true);
    expect(await main().locator('fieldset.item > details[open]').count()).toBe(1);
  });

  test('a second window only reads, says so wherever the page is turned, and holds back what leads to writing', async () => {
    const second = await w.context.newPage();
    await second.goto(new URL('/#/today', w.page.url()).href);
    await second.getByRole('alert').getByText('This window only reads').waitFor();
    const note = second.getByRole('navigation', { name: 'Write up' }).getByRole('link', { name: /^Note/ });
    expect(await note.getAttribute('aria-disabled')).toBe('true');
    await second.setViewportSize({ width: 640, height: 400 });
    await second.mouse.wheel(0, 4000);
    const told = second.getByRole('alert').filter({ hasText: 'This window only reads' });
    await expect.poll(async () => (await told.boundingBox())?.y).toBe(0);
    await second.close();
  });

  test('the readings of a corrected entry open to their workings and lead to what they touch', async () => {
    await w.go('#/daybook/clean-up-one');
    const working = main()
      .locator('details', { hasText: /^Net 956\.60/ })
      .first();
    await working.locator('summary').click();
    await working.getByText('Certificate C 118').waitFor();
    const charged = main().getByRole('listitem').filter({ hasText: 'Ball 1: charged' }).first();
    await charged.getByRole('link').last().click();
    await main().getByRole('heading', { level: 1, name: 'Charge' }).waitFor();
    await main().getByText('meter at the workshop').first().waitFor();
  });

  test('a struck entry counts no more and can still be read whole', async () => {
    await w.go('#/daybook/loose-firing');
    await main().getByRole('link', { name: 'Strike' }).click();
    await main()
      .getByLabel(/^Why it is struck/)
      .fill('Written at the wrong site.');
    await main().getByRole('button', { name: 'Strike it' }).click();
    await main().getByText('it counts in no figure and stays readable').waitFor();
    await main().getByText('Written at the wrong site.').first().waitFor();
    await main().getByText('41.0').first().waitFor();
    await w.go('#/today');
    expect(await main().getByText('Firings without a charge').count()).toBe(0);
    await w.go('#/daybook/find/text=wrong site');
    expect(await main().getByRole('link', { name: 'Strike', exact: true }).count()).toBe(1);
  });

  test('two corrections side by side are both shown and flagged, whoever wrote them', async () => {
    const body = siteAtWork().find((d) => d.id === 'clean-up-two')?.body ?? {};
    await w.keep([
      draft(
        'rain-fix',
        'correction',
        { corrects: 'clean-up-two', body: { ...body, note: 'rain' }, why: 'Forgotten.' },
        daysAgo(1),
      ),
      draft(
        'snow-fix',
        'correction',
        { corrects: 'clean-up-two', body: { ...body, note: 'snow' }, why: 'It snowed.' },
        daysAgo(1),
      ),
    ]);
    await w.go('#/daybook/clean-up-two');
    await main().getByText('Two corrections name the same reading.').waitFor();
    for (const text of ['rain', 'snow', 'Forgotten.', 'It snowed.'])
      await main().getByText(text, { exact: true }).first().waitFor();
    await w.go('#/today');
    await main().getByText('Two corrections of this entry were written side by side.').waitFor();
  });

  test('evidence is shown with its entry', async () => {
    // one white pixel, PNG
    const png = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8z8BQDwAEhQGAhKmMIQAAAABJRU5ErkJggg==';
    const file = await w.page.evaluate(async (base64) => {
      const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
      const answer = await fetch('/ask/evidence', {
        method: 'POST',
        headers: { 'content-type': 'application/octet-stream' },
        body: bytes.buffer,
      });
      return ((await answer.json()) as { value: { file: string } }).value.file;
    }, png);
    await w.keep([
      draft('note-seal', 'note', { text: 'The seal was whole.' }, daysAgo(0, '00:10'), {
        evidence: [{ file, shows: 'Seal of flask 3' }],
      }),
    ]);
    await w.go('#/daybook/note-seal');
    const picture = main().getByRole('img', { name: 'Seal of flask 3' });
    await picture.scrollIntoViewIfNeeded();
    await expect.poll(() => picture.evaluate((img) => (img as HTMLImageElement).naturalWidth)).toBe(1);
  });

  test('names that look like markup stay the text they are, and nothing in them runs', async () => {
    await w.go('#/daybook/helper-one');
    await main().getByText(hostile).first().waitFor();
    expect(await w.page.evaluate(() => 'hit' in window)).toBe(false);
    expect(w.errors).toEqual([]);
  });

  test('axe finds nothing on any page of the two rooms, in both themes', async () => {
    const pages = [
      '#/today',
      '#/daybook',
      '#/daybook/find/text=ball',
      '#/daybook/clean-up-one',
      '#/daybook/clean-up-two',
      '#/daybook/loose-firing',
      '#/daybook/rain-fix',
      '#/daybook/note-seal',
      '#/daybook/charge-one/correct',
      '#/daybook/standing-one/correct',
      '#/daybook/charge-one/strike',
      '#/daybook/charge-one/note',
      '#/daybook/nothing-here',
    ];
    expect(await clean(pages)).toEqual([]);
  });

  test('no page is wider than a window at 200 %', async () => {
    await w.page.setViewportSize({ width: 640, height: 400 });
    const wide: string[] = [];
    for (const hash of ['#/today', '#/daybook', '#/daybook/clean-up-one', '#/daybook/charge-one/correct', '#/daybook/note']) {
      await w.go(hash);
      if (await w.page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth)) wide.push(hash);
    }
    await w.page.setViewportSize({ width: 1280, height: 800 });
    expect(wide).toEqual([]);
  });
});

describe('a book from elsewhere', () => {
  test('an entry of a kind not understood is shown as the text it is, and said so', async () => {
    const strange = {
      ...draft('strange-one', 'note', { text: '' }, daysAgo(0, '00:20')),
      kind: 'dreaming',
      body: { stamps: 5, remark: hostile },
      format: 1,
      desk: 'desk-other',
      n: 1,
      prev: '0'.repeat(64),
      written: daysAgo(0, '00:20'),
      hash: 'a'.repeat(64),
    };
    await w.page.route('**/ask/entries', async (route) => {
      const answer = await route.fetch();
      await route.fulfill({ response: answer, body: `${await answer.text()}${JSON.stringify(strange)}\n` });
    });
    await w.page.reload();
    await w.go('#/today');
    await main()
      .getByRole('link', { name: /^1 entry of a kind this program does not know/ })
      .click();
    await main().getByRole('link', { name: 'dreaming' }).click();
    await main().getByText('A newer version of this program wrote this kind of entry.').waitFor();
    expect(await main().locator('pre').textContent()).toContain('onerror');
    expect(await w.page.evaluate(() => 'hit' in window)).toBe(false);
    expect(await w.axe()).toEqual([]);
    await w.page.unroute('**/ask/entries');
  });

  test('a time is put right from the window, from a paper form that is named with its sheet, and both times stand side by side', async () => {
    await w.keep([draft('late-note', 'note', { text: 'Rain through the roof' }, daysAgo(2, '16:40'))]);
    await w.go('#/daybook/late-note/correct');
    const when = main().getByRole('group', { name: daybookWords.happened, exact: true });
    await when.getByLabel('Time', { exact: true }).fill('07:15');
    await main()
      .getByLabel(/^Why it is corrected/)
      .fill('It was in the morning.');
    await main().locator('summary', { hasText: en.particulars }).click();
    await main().getByLabel(en.formNumber).fill('Sheet book 4');
    await main().getByLabel(en.formPage).fill('17');
    await keep();
    const table = main().getByRole('table', { name: 'Readings side by side' });
    await table.waitFor();
    const rows = (await table.locator('tbody tr').allInnerTexts()).map((row) =>
      row.split(/\s*[\t\n]\s*/).filter((t) => t !== ''),
    );
    const times = rows.find(([what]) => what === daybookWords.happened);
    expect([times?.[1]?.endsWith('16:40'), times?.[2]?.endsWith('07:15'), times?.[3]]).toEqual([true, true, 'changed']);
    const read = readDaybook(w.folder);
    const kept = read.ok
      ? read.value.entries.find(({ kind, body }) => kind === 'correction' && body.corrects === 'late-note')
      : null;
    expect([kept?.body.happened, kept?.form]).toEqual([daysAgo(2, '07:15'), { number: 'Sheet book 4', page: '17' }]);
    expect(await w.axe()).toEqual([]);
  });

  test('twenty thousand entries: the list is there at once, and a search answers while typing', async () => {
    const line = (i: number) =>
      JSON.stringify({
        ...draft(`many-${String(i).padStart(6, '0')}`, 'note', { text: `Round ${i} of the plates` }, daysAgo(i % 3000)),
        by: null,
        format: 1,
        desk: 'desk-other',
        n: i + 1,
        prev: '0'.repeat(64),
        written: daysAgo(i % 3000),
        hash: 'b'.repeat(64),
      });
    const all = `${Array.from({ length: 20_000 }, (_, i) => line(i)).join('\n')}\n`;
    await w.page.route('**/ask/entries', (route) => route.fulfill({ body: all, contentType: 'application/jsonl' }));
    await w.page.reload();
    await main().locator('h1').first().waitFor();
    const shown = performance.now();
    await w.go('#/daybook');
    await main().getByText('All 20000 entries').waitFor();
    expect(performance.now() - shown).toBeLessThan(3000);
    expect(await main().locator('ol > li').count()).toBe(60);
    await main().getByText('Find entries').click();
    const typed = performance.now();
    await main().getByLabel(/^Text/).fill('Round 19999 ');
    await main().getByText('1 of 20000 entries').waitFor();
    expect(performance.now() - typed).toBeLessThan(3000);
    await w.page.unroute('**/ask/entries');
  });
});
