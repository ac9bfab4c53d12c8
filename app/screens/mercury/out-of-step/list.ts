/** The list of what is out of step for the eye: groups with their counts, each line a sentence that leads to its entry or thing; and the same as CSV. */

import type { Book } from '../../../core/book/book.ts';
import { resultsUnder } from '../../../core/book/out-of-step/contested.ts';
import { type OutOfStep, type OutOfStepGroup, outOfStepGroups } from '../../../core/book/out-of-step.ts';
import type { Measured } from '../../../core/measured.ts';
import { dayText, momentText } from '../../../words/dates.ts';
import { entryName } from '../../../words/daybook-naming.ts';
import { asText } from '../../../words/formula.ts';
import { writtenPlainly } from '../../../words/notation.ts';
import { outOfStepGroupNames, outOfStepOpens, outOfStepText, outOfStepWords as words } from '../../../words/out-of-step.ts';
import { entryHref, registerHref } from '../../shared/places.ts';
import { figureText } from '../figures.ts';

/** What the book comes to under one of two corrections, as a row. */
export interface UnderRow {
  readonly id: string;
  readonly name: string;
  readonly href: string;
  readonly counts: boolean;
  readonly cells: readonly { readonly label: string; readonly text: string }[];
}

export interface OutOfStepLine {
  readonly key: string;
  readonly text: string;
  /** What it opens, by name, and where that is; without an address where nothing opens it. */
  readonly name: string;
  readonly href: string | undefined;
  readonly since: string;
  /** Where two corrections stand side by side: what comes of each, made when it is asked for. */
  readonly under: (() => readonly UnderRow[]) | null;
}

export interface OutOfStepSection {
  readonly group: OutOfStepGroup;
  readonly name: string;
  readonly lines: readonly OutOfStepLine[];
}

export const hrefOfItem = ({ opens }: OutOfStep): string | undefined =>
  opens === null ? undefined : 'entry' in opens ? entryHref(opens.entry) : registerHref(opens.register, opens.id);

const figure = (value: Measured | null): string => (value ? figureText(value) : words.noFigure);

/** The key figures of an entry under each of its corrections. */
export const underRows = (book: Book, id: string): readonly UnderRow[] =>
  resultsUnder(book, id).map(({ correction, counts, happened, weight, charge, gap, unaccounted }) => ({
    id: correction,
    name: entryName(book, correction),
    href: entryHref(correction),
    counts,
    cells: [
      { label: words.happened, text: momentText(happened) },
      { label: words.weight(), text: figure(weight) },
      { label: words.charge(), text: figure(charge) },
      { label: words.gap(), text: figure(gap) },
      { label: words.unaccounted(), text: figure(unaccounted) },
    ],
  }));

export const sectionsOf = (book: Book, items: readonly OutOfStep[]): readonly OutOfStepSection[] =>
  outOfStepGroups.flatMap((group) => {
    const own = items.filter((item) => item.group === group);
    if (own.length === 0) return [];
    return [
      {
        group,
        name: outOfStepGroupNames[group],
        lines: own.map((item, i) => ({
          key: `${item.code} ${i}`,
          text: outOfStepText(book, item),
          name: outOfStepOpens(book, item),
          href: hrefOfItem(item),
          since: item.since === '' ? '' : dayText(item.since),
          under: item.code === 'contested' && item.opens && 'entry' in item.opens ? underOf(book, item.opens.entry) : null,
        })),
      },
    ];
  });

const underOf = (book: Book, id: string) => (): readonly UnderRow[] => underRows(book, id);

const cell = (text: string): string => {
  const plain = asText(text);
  return /[",\n\r]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
};

/** The list as comma-separated text (RFC 4180, plain line ends). */
export const csvOf = (book: Book, items: readonly OutOfStep[]): string => writtenPlainly(() => csvIn(book, items));

const csvIn = (book: Book, items: readonly OutOfStep[]): string =>
  [
    words.csvHeader,
    ...items.map((item) => [
      outOfStepGroupNames[item.group],
      item.code,
      item.since,
      outOfStepOpens(book, item),
      item.opens === null ? '' : 'entry' in item.opens ? item.opens.entry : item.opens.id,
      outOfStepText(book, item),
    ]),
  ]
    .map((row) => `${row.map(cell).join(',')}\n`)
    .join('');
