/** What is out of step, in sentences: what stands there and what to look at. They name things, not faults of people, and clear nobody. */

import type { Notice } from '../contract.ts';
import type { Book } from '../core/book/book.ts';
import type { FlagCode } from '../core/book/flags.ts';
import type { OwnCode } from '../core/book/out-of-step/item.ts';
import type { Twice } from '../core/book/out-of-step/weights.ts';
import type { OutOfStep, OutOfStepGroup } from '../core/book/out-of-step.ts';
import { decimalFromNumber } from '../core/decimal.ts';
import type { Slip } from '../core/unit-slip.ts';
import { dayText, momentText } from './dates.ts';
import { checkDueNames } from './daybook-names-year.ts';
import { entryName, kindName, nameIn } from './daybook-naming.ts';
import { decimalText, gramText, massHead } from './figures.ts';
import { flagText } from './flags.ts';
import { marked } from './notation.ts';
import { noticeText } from './notices.ts';
import { placeText } from './places.ts';

const times = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

export const outOfStepGroupNames: Readonly<Record<OutOfStepGroup, string>> = {
  contested: 'Two corrections of one entry',
  record: 'Record, forks and clocks',
  standing: 'Standing',
  gains: 'Gains',
  weights: 'Weights to look at twice',
  runs: 'Runs',
  checks: 'Checks answered no',
  due: 'Scales, meters, drums and people out of date',
  lots: 'Lots',
  late: 'Written late',
};

const units: Readonly<Record<Slip, string>> = {
  ounces: 'troy and avoirdupois ounces are 1.097 apart',
  pounds: 'avoirdupois and troy pounds are 1.215 apart',
  tons: 'long and short tons are 1.12 apart',
  fluid: 'a fluid ounce of mercury weighs about 12.4 troy ounces',
};

const twice: Readonly<Record<Twice, (name: string) => string>> = {
  lot: (name) => `“${name}” at charging and on its label`,
  sides: (name) => `Our weight and that of ${name}`,
  doses: () => 'The doses by count and their weight',
  sponge: () => 'The sponge at the melt and at the firing',
  count: (name) => `What was counted in ${name} and what the book had there`,
};

type Data = OutOfStep['data'];
type Say = (d: Data, book: Book) => string;

const texts: Readonly<Record<OwnCode, Say>> = {
  'run-no-checks': () => 'No check before or during this run is recorded.',
  'run-no-witness': () => 'Nobody is named as having seen this run besides who wrote it.',
  'run-no-air-reading': () => 'No air reading is written up on the days of this run.',
  'scale-due': (d) => `The calibration of “${d.name}” was due on ${dayText(String(d.due))}.`,
  'scale-no-certificate': (d) => `“${d.name}” has no certificate on the book: its readings are unverified.`,
  'meter-due': (d) => `The calibration of the meter “${d.name}” was due on ${dayText(String(d.due))}.`,
  'retort-due': (d) => `The inspection of “${d.name}” was due on ${dayText(String(d.due))}.`,
  'check-overdue': (d) =>
    d.of === 'person'
      ? `${checkName(d)} is past its day: the safety officer sees whose and when.`
      : `${checkName(d)} was due on ${dayText(String(d.due))}.`,
  'check-not-done': (d) => `${checkName(d)} was not done, and no day is set for it.`,
  'drum-due': (d) => `The drum “${d.name}” was to go by ${dayText(String(d.due))}, by the site’s own word, and is still here.`,
  'writer-left': (d, book) =>
    `It names ${nameIn(book, 'person', String(d.person), String(d.left))} as writer or witness, whose last day with the site was ${dayText(String(d.left))}.`,
  'lot-old': (d) => `“${d.label}”, ${gramText(Number(d.ug))}, has lain in the safe for ${times(Number(d.days), 'day', 'days')}.`,
  'unit-slip': (d, book) => {
    const name = d.of === 'count' ? placeText(book, String(d.name)) : String(d.name);
    const factor = decimalText(decimalFromNumber(Number(d.quotient)), 3);
    return `${twice[d.of as Twice](name)} are ${factor} times apart: ${marked(units[d.slip as Slip])}. Look which unit was read.`;
  },
  'run-gain': (d) => `More came out of this run than went in: ${gramText(Number(d.ug))}.`,
  'count-gain': (d, book) =>
    `The count found ${gramText(Number(d.ug))} more in ${placeText(book, String(d.place))} than the book had there.`,
  'period-gain': (d) =>
    `The period ${d.from === '' ? 'from the beginning of the book' : `after the count of ${dayText(String(d.from))}`} closes with ${gramText(Number(d.ug))} more than came in.`,
  'clock-back': (d) =>
    `Entry ${d.n} of desk ${d.desk} was written at ${momentText(String(d.written))}, before the entry in front of it (${momentText(String(d.before))}): the clock of that machine was set back.`,
  'happened-later': (d) =>
    `It is said to have happened on ${momentText(String(d.happened))}, after it was written down on ${momentText(String(d.written))}.`,
  'same-id': (d) =>
    `Entry ${d.n} of desk ${d.desk} has the name of entry ${d.otherN} of desk ${d.other} and says something else. Only the one written first counts.`,
  'correction-adrift': (d) => `${kindName(String(d.kind))} of an entry that is not in the book here.`,
  'not-understood': (d) => `A newer program wrote this entry of the kind “${d.kind}”. It counts in no figure of this one.`,
  notice: (d) => noticeText(noticeOf(d)),
  'standing-none': () => 'The site has stated no standing: what mercury it holds and what is done with it is not said.',
  'standing-expired': () => 'Nothing that the standing says is done here holds on this day any more.',
  'standing-holds-none': (d) => `The standing says that no mercury is held; by the book there are ${gramText(Number(d.ug))}.`,
  'authority-expired': (d) => `The last day of “${d.name}”, ${d.number}, was ${dayText(String(d.due))}.`,
  'written-late': (d) =>
    `Written ${times(Number(d.days), 'day', 'days')} after it happened${d.book === '' ? '' : `, copied from “${d.book}”`}.`,
};

const checkName = (d: Data): string => {
  const what = (checkDueNames as Readonly<Record<string, string>>)[String(d.what)] ?? String(d.what);
  return d.of === 'person' ? `${what} of one person` : what;
};

const noticeOf = ({ notice, desk, line, detail }: Data): Notice => ({
  code: notice as Notice['code'],
  ...(desk === '' ? {} : { desk: String(desk) }),
  ...(line === 0 ? {} : { line: Number(line) }),
  ...(detail === '' ? {} : { detail: String(detail) }),
});

const isOwn = (code: OutOfStep['code']): code is OwnCode => Object.hasOwn(texts, code);

/** The sentence of a thing out of step. */
export function outOfStepText(book: Book, { code, data, opens }: OutOfStep): string {
  if (isOwn(code)) return texts[code](data, book);
  return flagText({ code: code as FlagCode, entry: opens && 'entry' in opens ? opens.entry : '', data });
}

/** What it opens, by name; empty where it opens nothing. */
export function outOfStepOpens(book: Book, { opens, since }: OutOfStep): string {
  if (!opens) return '';
  return 'entry' in opens
    ? entryName(book, opens.entry)
    : `${kindName(opens.register)}: ${nameIn(book, opens.register, opens.id, since)}`;
}

export const outOfStepWords = {
  title: 'Out of step',
  intro:
    'What somebody from outside would ask about. Each line says what stands in the record and leads there; what to make of it is for people to say. An empty list says that the record shows nothing of these kinds, and no more.',
  back: 'To the room Mercury',
  count: (n: number) => times(n, 'thing', 'things'),
  ofPeriod: 'Concerning a period',
  periodNote: 'What began in it, and what still stood in it',
  lots: (days: number) => `A lot is told after ${times(days, 'day', 'days')} in store, as this site's figures have it.`,
  toFigures: 'Set the figures of the site',
  show: 'Show',
  whole: 'The whole book',
  groups: 'By group',
  none: 'Nothing of these kinds stands in the record.',
  noneIn: 'nothing',
  more: (n: number) => `Show ${times(n, 'more', 'more')}`,
  since: (text: string) => `since ${text}`,
  csv: 'Copy as CSV',
  copied: 'Copied.',
  notCopied: 'This window may not use the clipboard. The text stands below: mark it and copy it.',
  csvText: 'The list as CSV',
  under: 'What the book comes to under each',
  correction: 'Correction',
  counts: 'counts now',
  happened: 'Happened',
  weight: () => massHead('Weights of the entry'),
  charge: () => massHead('Charge of its run'),
  gap: () => massHead('Gap of its run'),
  unaccounted: () => massHead('Not accounted for, whole book'),
  noFigure: '–',
  today: (n: number) => `${times(n, 'thing', 'things')} out of step`,
  csvHeader: ['group', 'code', 'since', 'opens', 'id', 'says'],

  paper: {
    section: 'Out of step',
    group: 'Group',
    times: 'Things',
    note: (days: number, set: boolean) =>
      `What somebody from outside would ask about, in this period or still standing at its end. Lots count as old after ${days} days (${set ? 'as this site set it' : 'common practice, no source'}). What only the files themselves show (forks, torn lines, a cut tail) is told by checking them, not here.`,
    nothing: 'Nothing of these kinds stands in the record for this period. That says no more than that.',
    listed: 'Out of step, one by one',
    since: 'Since',
    entry: 'Entry or thing',
    says: 'What stands there',
    rest: (n: number) => `${times(n, 'more stands', 'more stand')} in the program’s list and are not printed here.`,
    contested: (name: string) => `Under each correction of: ${name}`,
  },
} as const;
