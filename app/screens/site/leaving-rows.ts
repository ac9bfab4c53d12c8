/** The register of what leaves: drums that stand here, and what was sent away with its papers, as rows for the eye and as CSV. It judges nothing and permits nothing. */

import type { Book } from '../../core/book/book.ts';
import type { Reading } from '../../core/book/current.ts';
import { type Drum, drumsOf } from '../../core/book/drums.ts';
import { keptUntil, retentionAt } from '../../core/book/site-says.ts';
import { toText } from '../../core/decimal.ts';
import type { Weight } from '../../core/shapes.ts';
import { dayNumber, dayOf } from '../../core/time.ts';
import { askedAt } from '../../words/asked-checks.ts';
import { dayText } from '../../words/dates.ts';
import { thingNames } from '../../words/daybook-names-year.ts';
import { entryName, nameIn } from '../../words/daybook-naming.ts';
import { netOf } from '../../words/daybook-weights.ts';
import { gramText, massFigure, massUnit } from '../../words/figures.ts';
import { marked } from '../../words/notation.ts';
import { retortForms } from '../../words/retort-forms.ts';
import { leavingWords as words } from '../../words/screens-leaving.ts';
import { csvOf } from '../mercury/copied.ts';
import { entryHref, registerHref } from '../shared/places.ts';

export interface DrumRow {
  readonly label: string;
  readonly href: string;
  readonly begun: string;
  readonly inIt: string;
  readonly codes: string;
  readonly due: string;
  readonly standing: string;
}

function drumRow(drum: Drum, now: string): DrumRow {
  const days = drum.due === null ? null : (dayNumber(drum.due) ?? 0) - (dayNumber(dayOf(now)) ?? 0);
  return {
    label: drum.label,
    href: registerHref('vessel', drum.vessel),
    begun: dayText(drum.started),
    inIt: gramText(drum.mass.net.ug),
    codes: drum.codes.join(', '),
    due: drum.due === null ? words.noDay : dayText(drum.due),
    standing: days === null ? '' : days < 0 ? words.past(-days) : words.left(days),
  };
}

/** Drums that hold waste and have not left, the one begun first at the top. */
export const drumRows = (book: Book, now: string): readonly DrumRow[] =>
  drumsOf(book.current, book.registers)
    .filter((drum) => drum.left === null)
    .map((drum) => drumRow(drum, now));

export interface SentRow {
  readonly id: string;
  readonly day: string;
  /** The same, as a spreadsheet reads it. */
  readonly isoDay: string;
  readonly what: string;
  readonly weight: string;
  readonly theirs: string;
  readonly to: string;
  readonly carrier: string;
  readonly document: string;
  readonly theirDocument: string;
  readonly seal: string;
  readonly checks: string;
  readonly keptUntil: string;
  readonly entry: string;
  readonly href: string;
}

function thingSent(book: Book, { body, happened }: Reading<'transfer'>): string {
  const name =
    body.what === 'amalgam'
      ? body.lot && nameIn(book, 'lot', body.lot, happened)
      : body.what === 'sponge'
        ? body.charge && nameIn(book, 'charge', body.charge, happened)
        : body.what === 'plate'
          ? body.plate && nameIn(book, 'plate', body.plate, happened)
          : body.vessel && nameIn(book, 'vessel', body.vessel, happened);
  return name ? `${thingNames[body.what]}: ${name}` : thingNames[body.what];
}

function checksTold(book: Book, { body, happened }: Reading<'transfer'>): string {
  const given = body.checks ?? [];
  const no = given.filter((c) => c.answer === 'no').length;
  const of = Math.max(given.length, askedAt(book.current, 'transport', happened).questions.length);
  if (given.length === 0) return retortForms.checks.none;
  return words.answered(given.length, of, no);
}

/** What was sent away that holds mercury, or may: everything but bars, the newest first. */
export function sentRows(book: Book, now: string): readonly SentRow[] {
  const years = retentionAt(book.current, now)?.body.periods.find((p) => p.records === 'waste')?.years;
  const grams = (weight: Weight | undefined, at: string): string =>
    weight === undefined
      ? words.notWeighed
      : massUnit() === 'g'
        ? marked(toText(netOf(book, weight, at)))
        : massFigure(netOf(book, weight, at), 4);
  return book.current
    .of('transfer')
    .filter(({ body }) => body.way === 'out' && body.what !== 'bar')
    .map((reading): SentRow => {
      const { id, body, happened } = reading;
      const until = years === undefined ? null : keptUntil(happened, years);
      return {
        id,
        day: dayText(happened),
        isoDay: dayOf(happened),
        what: thingSent(book, reading),
        weight: grams(body.weight, happened),
        theirs: body.theirs ? grams(body.theirs.weight, happened) : words.notWeighed,
        to: body.party,
        carrier: body.carrier ?? words.notWeighed,
        document: body.document ?? words.notWeighed,
        theirDocument: body.theirs?.document ?? '',
        seal: body.seal ?? '',
        checks: checksTold(book, reading),
        keptUntil: until === null ? '' : dayText(until),
        entry: entryName(book, id),
        href: entryHref(id),
      };
    })
    .toReversed();
}

export const sentCsv = (rows: readonly SentRow[]): string =>
  csvOf([
    [
      words.day,
      words.what,
      words.weight,
      words.to,
      words.carrier,
      words.document,
      words.seal,
      words.theirs,
      words.theirDocument,
      words.checks,
      words.keptUntil,
      words.entry,
    ],
    ...rows.map((r) => [
      r.isoDay,
      r.what,
      r.weight,
      r.to,
      r.carrier,
      r.document,
      r.seal,
      r.theirs,
      r.theirDocument,
      r.checks,
      r.keptUntil,
      r.id,
    ]),
  ]);
