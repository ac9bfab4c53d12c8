/**
 * What went into the retort: each lot by its label and as it weighed at charging, with the drift between the two; parts taken, lots that were not
 * found, and what was put in besides.
 */
import type { Content } from 'pdfmake/interfaces';
import type { Book } from '../../core/book/book.ts';
import { type Charge, emptySum, joined, type Sum } from '../../core/book/charges.ts';
import type { ChargedLot, Lot } from '../../core/book/lots.ts';
import type { Run } from '../../core/book/runs.ts';
import type { Entry } from '../../core/entry.ts';
import { dayText, momentText } from '../../words/dates.ts';
import { percentText } from '../../words/figures.ts';
import { notRecorded, runSheet as words } from '../../words/papers.ts';
import { gramsText, ugText, withGrams } from '../amounts.ts';
import { facts, ledger, part, type Row, section, sentence, together } from '../ledger.ts';
import { personName, thingName } from '../names.ts';
import { happenedText } from './moments.ts';

/** Paper forms, older books and pictures an entry came from or carries. */
export function keptWith({ form, transcribed, evidence }: Entry): string {
  const page = (p: string | undefined) => (p === undefined ? '' : words.formPage(p));
  return [
    ...(form ? [words.formOf(form.number, page(form.page))] : []),
    ...(transcribed ? [words.copied(transcribed.book, page(transcribed.page))] : []),
    ...(evidence && evidence.length > 0 ? [words.kept(evidence.length)] : []),
  ].join('; ');
}

export const witnessText = (book: Book, { witness = [] }: Entry, moment: string): string =>
  witness.length === 0 ? notRecorded : witness.map((id) => personName(book, id, moment)).join(', ');

function particulars(book: Book, { reading, retort, holds }: Charge): Content[] {
  const { body, entry, happened } = reading;
  const kept = keptWith(entry);
  return facts([
    [words.retort, thingName(book, 'retort', retort, happened)],
    [words.chargedAt, happenedText(reading)],
    [words.recordedBy, words.changedBy(personName(book, entry.by, happened), momentText(entry.written))],
    [words.witness, witnessText(book, entry, happened)],
    [words.holds, words.holdsWords[holds]],
    [words.fill, body.fill === undefined ? notRecorded : percentText(body.fill, 0)],
    [words.lining, body.lining ?? notRecorded],
    [words.lute, body.lute ?? notRecorded],
    ...(body.note === undefined ? [] : [[words.note, body.note] as const]),
    ...(kept === '' ? [] : [[words.papersKept, kept] as const]),
  ]);
}

function describe(lot: Lot | null): string {
  if (!lot) return '';
  return [
    ...(lot.source ? [words.sources[lot.source]] : []),
    ...(lot.state ? [words.states[lot.state]] : []),
    words.made(dayText(lot.made)),
    ...(lot.seal === null ? [] : [words.seal(lot.seal)]),
  ].join(', ');
}

function done(book: Book, charge: Charge, row: ChargedLot): string {
  const written = charge.reading.body.rows.find((r) => r.key === row.key);
  if (written?.take === 'not-found' && written.looked !== undefined) return words.looked(written.looked);
  if (written?.take !== 'part') return words.take[row.take];
  const rest = book.lots.all.get(`${charge.id}/${row.key}b`);
  return rest
    ? words.rest(rest.label, withGrams(rest.grams), written.rest ? words.restWeighed : words.restReckoned)
    : words.take.part;
}

const driftPlaces = 2;
/** A table of so many lots is kept on one page. */
const fewRows = 8;

function lotRow(book: Book, charge: Charge, row: ChargedLot): Row {
  // a part has no label of its own: what it weighs is what was weighed now
  const labelled = row.take === 'part' ? null : row.lot;
  return {
    cells: [
      row.label,
      labelled ? gramsText(labelled.grams) : '–',
      row.charged ? gramsText(row.charged.grams) : '–',
      row.drift ? ugText(row.drift.ug, driftPlaces, true) : '–',
      [done(book, charge, row), describe(row.lot)].filter((text) => text !== '').join('; '),
    ],
  };
}

function lots(book: Book, charge: Charge): Content[] {
  if (charge.rows.length === 0) return [sentence(words.noLots)];
  const charged = charge.rows.reduce<Sum>((sum, row) => (row.charged ? joined(sum, row.charged) : sum), emptySum);
  const whole = charge.rows.some((row) => row.drift);
  const mixed = charge.rows.some((row) => !row.drift);
  return ledger(
    [
      { head: words.lot, share: 22 },
      { head: words.label, share: 13, amount: true },
      { head: words.charging, share: 15, amount: true },
      { head: words.drift, share: 10, amount: true },
      { head: words.what, share: 40 },
    ],
    [
      ...charge.rows.map((row) => lotRow(book, charge, row)),
      {
        cells: [
          words.lotsTotal,
          whole ? gramsText(charge.labels.grams) : '–',
          gramsText(charged.grams),
          whole ? ugText(charge.drift.ug, driftPlaces, true) : '–',
          whole && mixed ? words.driftTotal : '',
        ],
        sum: true,
        closing: true,
      },
    ],
  );
}

function others(book: Book, charge: Charge): Content[] {
  if (charge.others.length === 0) return [];
  const vessel = (key: string) => charge.reading.body.others?.find((o) => o.key === key)?.vessel;
  const from = (key: string): string => {
    const id = vessel(key);
    return id === undefined ? '' : `, ${words.fromVessel(thingName(book, 'vessel', id, charge.reading.happened))}`;
  };
  return [
    part(words.others),
    ...ledger(
      [
        { head: words.item, share: 70 },
        { head: words.charging, share: 30, amount: true },
      ],
      [
        ...charge.others.map((o) => ({
          cells: [
            `${o.label}: ${words.otherWhat[o.what as keyof typeof words.otherWhat]}${from(o.key)}`,
            gramsText(o.weighed.grams),
          ],
        })),
        { cells: [words.total, gramsText(charge.total.grams)], sum: true, closing: true },
      ],
    ),
  ];
}

/** Each charge of the run: who and when, lots, and what else. */
export function wentIn(book: Book, run: Run): Content[] {
  return run.charges.flatMap((charge, i) => [
    ...together([
      ...(i === 0 ? [section(words.wentIn)] : []),
      ...(run.together ? [part(words.wentInOf(i + 1, run.charges.length, happenedText(charge.reading)))] : []),
      ...particulars(book, charge),
    ]),
    ...(charge.rows.length > fewRows ? lots(book, charge) : together(lots(book, charge))),
    ...together(others(book, charge)),
  ]);
}
