import type { Content } from 'pdfmake/interfaces';
import { expect, test } from 'vitest';
import { paperNames } from '../../app/contract.ts';
import { readBook } from '../../app/core/book/book.ts';
import { formKinds } from '../../app/core/kinds/by-hand.ts';
import { layAirDay } from '../../app/drawings/air-day-layout.ts';
import { layHistory } from '../../app/drawings/history-layout.ts';
import { layTrend } from '../../app/drawings/trend-layout.ts';
import { subjectsOf } from '../../app/screens/papers/subjects.ts';
import { marked, writtenIn } from '../../app/words/notation.ts';
import { drawnUp, orderFrom } from '../../main/host/papers.ts';
import { frameOf, textOf } from './site-of-runs.ts';
import { year } from './year.ts';

/** As far from the program's own notation as a site can write. */
const odd = { decimal: 'comma', masses: 'troy', temperature: 'fahrenheit', days: 'd/m/y' } as const;
const months = 'January|February|March|April|May|June|July|August|September|October|November|December';
const plain = new RegExp(String.raw`\d\.\d|(?<!µ)\bg\b|°C|\d{4}-\d{2}-\d{2}|\d (?:${months}) \d{4}`);

/** Texts that stay as they are, and why. Any other text must be in the site's notation. */
const stays: readonly (readonly [text: RegExp, why: string])[] = [
  [/^(?:gross|stated) [^.]*$/, 'a reading keeps its own unit, with the mark of the site'],
  [/weighed there as [\d,]+ g on [\d/]+$/, 'another party’s reading keeps its own unit'],
  [/\(453,6 g\)/, 'a published amount is quoted as published'],
  [/g per tonne$|g\/cm³$|^\[ {2}\] mg\/m³ \(milligrams\)/, 'units that are not masses of the site'],
  [/at 20 °C|25 °C and 101,325 kPa/, 'the state gases are stated at, as published'],
  [/^\[ {2}\] (?:With a point|°C|14 March 2026)/, 'the answers among which a site chooses its notation'],
];

/** Texts of a paper that are in another notation than the odd one, each once. */
function plainIn(content: Content): string[] {
  const texts = textOf(content).split('\n');
  return [...new Set(texts)].filter((text) => plain.test(text) && !stays.some(([as]) => as.test(text)));
}

const { book: maker } = year();
const book = readBook(maker.entries);
const frame = { ...frameOf(maker), version: 'nine' };

test.each(paperNames)('%s has no point, gram, °C or ISO day where the site writes otherwise, its foot too', (name) => {
  const subjects = name === 'blank-forms' ? formKinds : subjectsOf(book, name).map(({ value }) => value);
  let drawn = 0;
  for (const id of [undefined, ...subjects]) {
    const asked = orderFrom(name, id, {});
    if (!asked.ok) continue;
    const made = writtenIn(odd, () => drawnUp(name, book, asked.value, frame));
    if (!made.ok) throw new Error(made.problems.map(({ code }) => code).join(', '));
    drawn += 1;
    // the paper machine asks for the foot when the paper’s notation no longer stands
    const { footer, content } = made.value;
    const foot = typeof footer === 'function' ? footer(1, 1, { width: 595, height: 842, orientation: 'portrait' }) : footer;
    expect(plainIn([content, foot ?? ''] as Content)).toEqual([]);
  }
  expect(drawn).toBeGreaterThan(0);
});

test('a run’s account is headed with the unit its figures are in', () => {
  const id = subjectsOf(book, 'run-sheet')[0]?.value;
  const asked = orderFrom('run-sheet', id, {});
  if (!asked.ok) throw new Error('no run');
  const made = writtenIn(odd, () => drawnUp('run-sheet', book, asked.value, frame));
  expect(made.ok && textOf(made.value.content)).toMatch(/^ozt$/m);
});

test('ticks of drawings are written as the caller writes figures', () => {
  const ticks = writtenIn(odd, () => [
    ...layTrend([{ id: 'a', name: 'a', form: 'line', values: [{ value: 0.3, half: 0.1 }] }], ['one'], 600, marked).panels.flatMap(
      (panel) => panel.ticks,
    ),
    ...layHistory(
      [{ id: 'a', name: 'a', values: [{ at: 1, value: 850.25, half: 0.5, usual: null, outside: false }] }],
      [],
      600,
      marked,
    ).panels.flatMap((panel) => panel.ticks),
    ...layAirDay(
      {
        minutes: 60,
        steps: [{ from: 0, to: 60, value: 0.02, mark: 'read' }],
        gaps: [],
        moments: [],
        lines: [],
        hours: [],
        gapName: '',
        scaleName: '',
        aboveName: '',
      },
      600,
      marked,
    ).ticks,
  ]).map(({ text }) => text);
  expect(ticks.filter((text) => text.includes(',')).length).toBeGreaterThan(5);
  expect(ticks.filter((text) => text.includes('.'))).toEqual([]);
});
