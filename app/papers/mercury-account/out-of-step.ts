/**
 * What is out of step in the period of an account: how many of each kind after the reservations, and one by one at the end. What two corrections of one
 * entry would come to stands under both. The paper clears nobody: an empty list says only that nothing of these kinds stands in the record.
 */
import type { Content } from 'pdfmake/interfaces';
import type { Book } from '../../core/book/book.ts';
import { resultsUnder } from '../../core/book/out-of-step/contested.ts';
import { concerning, type OutOfStep, outOfStepGroups, outOfStepOf } from '../../core/book/out-of-step.ts';
import type { Period } from '../../core/book/period.ts';
import { lotDaysAt } from '../../core/book/site-figures.ts';
import { lastSaid } from '../../core/book/site-says.ts';
import { type Measured, uOf } from '../../core/measured.ts';
import { dayText, momentText } from '../../words/dates.ts';
import { entryName } from '../../words/daybook-naming.ts';
import { gramsOf, withU } from '../../words/figures.ts';
import { outOfStepGroupNames, outOfStepOpens, outOfStepText, outOfStepWords } from '../../words/out-of-step.ts';
import { commonWords } from '../../words/papers-common.ts';
import { aside, ledger, part, section, sentence, small } from '../ledger.ts';

const words = outOfStepWords.paper;
/** Things printed one by one of each group; the program's list has them all. */
const mostOfGroup = 60;

/** What concerns the period, as it stands at the moment `end`. */
export const outOfStepIn = (book: Book, period: Period, end: string): readonly OutOfStep[] =>
  end === '' ? [] : concerning(outOfStepOf(book, { at: end }), period);

/** How many of each group. */
export function outOfStepCounts(book: Book, items: readonly OutOfStep[], end: string): Content[] {
  const counts = outOfStepGroups.flatMap((group) => {
    const n = items.filter((item) => item.group === group).length;
    return n === 0 ? [] : [{ cells: [outOfStepGroupNames[group], String(n)] }];
  });
  if (counts.length === 0) return [section(words.section), sentence(words.nothing)];
  return [
    section(words.section),
    aside(words.note(lotDaysAt(book.current, end), lastSaid(book.current, 'site-figures', end)?.body.lotDays !== undefined)),
    ...ledger(
      [
        { head: words.group, share: 80 },
        { head: words.times, share: 20, amount: true },
      ],
      counts,
    ),
  ];
}

const figure = (value: Measured | null): string =>
  value ? withU(gramsOf(Math.round(value.ug)), uOf(value) / 1e6) : commonWords.notCounted;

/** Both results of a contested entry. */
function under(book: Book, id: string): Content[] {
  const results = resultsUnder(book, id);
  if (results.length === 0) return [];
  const row = (name: string, text: (r: (typeof results)[number]) => string) => ({ cells: [name, ...results.map(text)] });
  return [
    small(words.contested(entryName(book, id))),
    ...ledger(
      [
        { head: '', share: 28 },
        ...results.map(({ correction, counts }) => ({
          head: counts ? `${entryName(book, correction)} (${outOfStepWords.counts})` : entryName(book, correction),
          share: 72 / results.length,
        })),
      ],
      [
        row(outOfStepWords.happened, (r) => momentText(r.happened)),
        row(outOfStepWords.weight(), (r) => figure(r.weight)),
        row(outOfStepWords.charge(), (r) => figure(r.charge)),
        row(outOfStepWords.gap(), (r) => figure(r.gap)),
        row(outOfStepWords.unaccounted(), (r) => figure(r.unaccounted)),
      ],
    ),
  ];
}

/** One by one, group by group. */
export function outOfStepList(book: Book, items: readonly OutOfStep[]): Content[] {
  if (items.length === 0) return [];
  return [
    section(words.listed),
    ...outOfStepGroups.flatMap((group): Content[] => {
      const own = items.filter((item) => item.group === group);
      if (own.length === 0) return [];
      return [
        part(outOfStepGroupNames[group]),
        ...ledger(
          [
            { head: words.since, share: 16 },
            { head: words.entry, share: 28 },
            { head: words.says, share: 56 },
          ],
          own.slice(0, mostOfGroup).map((item) => ({
            cells: [dayText(item.since), outOfStepOpens(book, item), outOfStepText(book, item)],
          })),
        ),
        ...(own.length > mostOfGroup ? [small(words.rest(own.length - mostOfGroup))] : []),
        ...(group === 'contested' ? own.flatMap(({ opens }) => (opens && 'entry' in opens ? under(book, opens.entry) : [])) : []),
      ];
    }),
  ];
}
