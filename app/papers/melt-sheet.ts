/**
 * The melt sheet: what went into one melt, what came out, what shrank, and what that may have been, as bounds. It never turns the shrinkage into
 * mercury, dirt or metal: these weighings cannot tell. Source: practice.md 1 (17), 2.10.
 */
import type { Content } from 'pdfmake/interfaces';
import type { Book } from '../core/book/book.ts';
import type { Reading } from '../core/book/current.ts';
import type { Body } from '../core/kinds/index.ts';
import { bad, good, problem, type Result } from '../core/result.ts';
import { dayText } from '../words/dates.ts';
import { notRecorded, runSheet } from '../words/papers.ts';
import { commonWords } from '../words/papers-common.ts';
import { meltPaper as words } from '../words/papers-melt.ts';
import { checkText } from '../words/run-checks.ts';
import { doubtsOf, notUnderstoodNaming, once } from './doubts.ts';
import { facts, ledger, list, section, sentence, together } from './ledger.ts';
import { accountOfMelt, boundsOfMelt } from './melt-sheet/figures.ts';
import { type MeltWeighed, meltWeighed } from './melt-sheet/weighed.ts';
import { personName } from './names.ts';
import { type Definition, type Frame, paper } from './paper.ts';
import { changesOf } from './run-sheet/changes.ts';
import { happenedText } from './run-sheet/moments.ts';
import { readingsTable } from './run-sheet/readings.ts';
import { keptWith, witnessText } from './run-sheet/went-in.ts';
import { signatures } from './signatures.ts';
import { standingText } from './standing.ts';
import { weighingsOf } from './weighings.ts';

function particulars(book: Book, reading: Reading<'melt'>): Content[] {
  const { body, entry, happened } = reading;
  const kept = keptWith(entry);
  return together([
    section(words.melt),
    ...facts([
      [words.day, happenedText(reading)],
      [words.flux, body.flux ?? notRecorded],
      [words.by, personName(book, entry.by, happened)],
      [words.witness, witnessText(book, entry, happened)],
      ...(body.note === undefined ? [] : [[words.note, body.note] as const]),
      ...(kept === '' ? [] : [[words.papersKept, kept] as const]),
    ]),
  ]);
}

function answers({ checks = [] }: Body<'melt'>): Content[] {
  if (checks.length === 0) return [];
  return [
    section(words.checks),
    ...ledger(
      [
        { head: words.question, share: 58 },
        { head: words.answer, share: 14 },
        { head: words.note, share: 28 },
      ],
      checks.map(({ check, answer, note }) => ({
        cells: [checkText(check), runSheet.answers[answer], note ?? ''],
        strong: answer === 'no',
      })),
    ),
  ];
}

/** Entries the sheet rests on: the melt and, where a sponge was weighed only there, its firing. */
const restsOn = (reading: Reading<'melt'>, { sponges }: MeltWeighed): Reading[] => [
  reading,
  ...new Set(sponges.flatMap(({ firing }) => (firing ? [firing] : []))),
];

function struckOf(book: Book, reading: Reading<'melt'>): Reading[] {
  const charges = reading.body.sponges.map(({ charge }) => `"${charge}"`);
  return [...book.current.byId.values()].filter(
    ({ kind, struck, body }) => kind === 'melt' && struck !== null && charges.some((c) => JSON.stringify(body).includes(c)),
  );
}

/** The sheet of a melt. Problems: `paper-no-such` where the book has no such melt or it was struck, `paper-not-understood`. */
export function meltSheet(book: Book, id: string, frame: Frame): Result<Definition> {
  const reading = book.current.of('melt').find((melt) => melt.id === id);
  if (!reading) return bad(problem('paper-no-such', 'id', { wanted: 'melt', id }));
  const unread = notUnderstoodNaming(book, [id, ...reading.body.sponges.map(({ charge }) => charge)]);
  if (unread) return bad(problem('paper-not-understood', 'id', { kind: unread.kind, entry: unread.id }));
  const melt = meltWeighed(book, reading);
  const about = restsOn(reading, melt);
  const { reservations, remarks } = doubtsOf(book, about);
  const bars = reading.body.bars.map(({ label }) => label).join(', ');
  return good(
    paper(frame, {
      name: words.name,
      subject: words.subject(bars === '' ? words.noBars : bars, dayText(reading.happened)),
      number: words.number(id),
      standing: standingText(book, reading.happened),
      reservations: once([...melt.missing.map(words.noSponge), ...reservations]),
      body: [
        ...accountOfMelt(melt),
        ...boundsOfMelt(book, reading, melt),
        ...together([section(words.cautions), ...list(words.cautionList)]),
        ...particulars(book, reading),
        ...answers(reading.body),
        section(commonWords.remarks),
        ...(remarks.length > 0 ? list(remarks) : [sentence(runSheet.noRemarks)]),
        ...changesOf(book, about, struckOf(book, reading), commonWords.noChanges),
        ...readingsTable(book, [
          ...melt.sponges.flatMap(({ old, weighed, what }) => (old && weighed ? [{ what, at: old, weighed }] : [])),
          ...weighingsOf(book, reading),
        ]),
        ...signatures(book, [reading]),
      ],
    }),
  );
}
