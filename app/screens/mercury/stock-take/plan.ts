/**
 * The form of the guided stock-take: a row for every place of the list, what is typed into it, and the line it makes. A row without an answer makes
 * a line without one, which the record refuses by its place; in a count of a part it makes none.
 */
import type { Book } from '../../../core/book/book.ts';
import { type CountPlace, countListOf } from '../../../core/book/count-list.ts';
import { placeParts } from '../../../core/book/places.ts';
import type { Registers } from '../../../core/book/registers.ts';
import { bodyFrom } from '../../../core/kinds/index.ts';
import type { CountLine, CountWay } from '../../../core/kinds/stock-take.ts';
import { type FormPlan, textOr } from '../../../daybook/form.svelte.ts';
import { type MassEntry, massText, noMass } from '../../../parts/mass-entry.ts';
import type { UsualScale } from '../../daybook/typed.ts';
import { Weighing } from '../../shared/weighing.svelte.ts';
import { noWeighing, type WeighingEntry, weightOf } from '../../shared/weighing-entry.ts';

/** Plain data only: it goes into drafts. */
export interface CountRow {
  place: string;
  how: CountWay | '';
  seal: string;
  newSeal: string;
  sealBroken: boolean;
  weight: WeighingEntry;
  mass: MassEntry;
  method: string;
  /** Percent, as typed. */
  sharedU: string;
  ownU: string;
  why: string;
  note: string;
  /** Answered, and shown beside the book from then on. */
  done: boolean;
}

export interface CountValues {
  scope: 'whole' | 'part';
  rows: CountRow[];
  /** The place that is asked about now. */
  at: string;
  note: string;
}

/** A vessel weighed empty before is weighed with what it holds inside it: its tare is there, to be changed where it was emptied out. */
function weighingAt(place: string, usual: UsualScale, registers: Registers, at: string): WeighingEntry {
  const empty = noWeighing(usual.scale, usual.unit);
  const { kind, of } = placeParts(place);
  const tare =
    kind === 'vessel'
      ? new Weighing(
          () => empty,
          () => ({ registers, at }),
        ).tareOf(of)
      : undefined;
  return tare === undefined ? empty : { ...empty, tareHow: 'vessel', vessel: of, tare };
}

/** An unanswered row of a place. */
export const countRow = (place: string, usual: UsualScale, registers: Registers, at: string): CountRow => ({
  place,
  how: '',
  seal: '',
  newSeal: '',
  sealBroken: false,
  weight: weighingAt(place, usual, registers, at),
  mass: noMass('g'),
  method: '',
  sharedU: '',
  ownU: '',
  why: '',
  note: '',
  done: false,
});

/** A percentage as a share, its digits moved and not reckoned; what is no number goes through as text for the schema to refuse. */
export function shareOf(typed: string): number | string | undefined {
  const text = typed.trim().replace('%', '').trim().replace('−', '-');
  if (text === '') return undefined;
  return /^-?\d+(\.\d+)?$/.test(text) ? Number(`${text}e-2`) : text;
}

/** The line a row makes, to be read by the schema. */
export function lineOf(row: CountRow): Record<string, unknown> {
  const { place, how } = row;
  const sealBroken = row.sealBroken ? 'yes' : undefined;
  switch (how) {
    case '':
      return { place };
    case 'sealed':
      return { how, place, seal: textOr(row.seal) };
    case 'weighed':
      return { how, place, weight: weightOf(row.weight), sealBroken, newSeal: textOr(row.newSeal) };
    case 'estimated':
      return {
        how,
        place,
        estimate: {
          mass: massText(row.mass),
          method: textOr(row.method),
          sharedU: shareOf(row.sharedU),
          ownU: shareOf(row.ownU),
        },
      };
    case 'seen':
    case 'empty':
      return { how, place };
    case 'unanswered':
      return { how, place, why: textOr(row.why), sealBroken };
    case 'not-found':
      return { how, place, note: textOr(row.note) };
  }
}

/** The row as a line of the record, if it is completely answered. */
export function lineRead(row: CountRow): CountLine | null {
  if (row.how === '') return null;
  const got = bodyFrom('stock-take', JSON.parse(JSON.stringify({ lines: [lineOf(row)] })));
  return got.ok ? (got.value.lines[0] ?? null) : null;
}

/** The rows that make lines, in order: all of a whole count, the answered ones of a part. */
export const rowsKept = ({ scope, rows }: Pick<CountValues, 'scope' | 'rows'>): readonly CountRow[] =>
  scope === 'whole' || rows.every((row) => row.how === '') ? rows : rows.filter((row) => row.how !== '');

/** Places of the list that stand in no row yet. */
export const rowsMissing = (list: readonly CountPlace[], rows: readonly CountRow[]): readonly string[] =>
  list.filter(({ place }) => !rows.some((row) => row.place === place)).map(({ place }) => place);

export function stockTakePlan(book: Book, now: string, usual: UsualScale): FormPlan<CountValues> {
  const places = countListOf(book, now).map(({ place }) => place);
  return {
    name: 'stock-take/guided',
    kind: 'stock-take',
    start: () => ({
      scope: 'whole',
      rows: places.map((place) => countRow(place, usual, book.registers, now)),
      at: places[0] ?? '',
      note: '',
    }),
    body: (values) => ({
      scope: values.scope,
      lines: rowsKept(values).map(lineOf),
      note: textOr(values.note),
    }),
  };
}
