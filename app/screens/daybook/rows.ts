/**
 * An entry read out field by field: every answer in words, under the name of its question. Two readings are set against each other row by row;
 * a row of a list is known by its key where it has one, so that taking one out does not shift the others.
 */

import type { Book } from '../../core/book/book.ts';
import { wordingAt } from '../../core/book/check-lists.ts';
import { decimalFromNumber, decimalFromText, shifted, toText, zero } from '../../core/decimal.ts';
import type { Kind } from '../../core/kinds/index.ts';
import { under } from '../../core/result.ts';
import type { Weight } from '../../core/shapes.ts';
import { dayText, momentText } from '../../words/dates.ts';
import { fieldsOf } from '../../words/daybook-fields.ts';
import { nameIn } from '../../words/daybook-naming.ts';
import type { FieldWords, Named } from '../../words/daybook-shapes.ts';
import { exactMass, massAsRead, spaced, weightAsRead } from '../../words/daybook-weights.ts';
import { checkText } from '../../words/run-checks.ts';
import { temperatureText } from '../../words/temperatures.ts';

/** A thing a row names. */
export interface Pointer {
  readonly to: Named;
  readonly id: string;
  readonly name: string;
}

export interface Row {
  /** Where it stands in the body: `lots[0].weight`. */
  readonly path: string;
  /** The same, rows of lists by their key: what two readings are matched by. */
  readonly place: string;
  /** Headings it stands under: "Balls and lots", "Lot 1". */
  readonly under: readonly string[];
  readonly label: string;
  readonly text: string;
  /** What it names, in place of the text. */
  readonly names: readonly Pointer[];
  /** A weight, which opens to its working. */
  readonly weight: Weight | null;
}

type Member = Readonly<Record<string, unknown>>;

interface Reader {
  readonly book: Book;
  readonly at: string;
  readonly rows: Row[];
}

const percent = (share: number): string => `${spaced(toText(shifted(decimalFromNumber(share), 2)))}\u00a0%`;

/** What one answer says; null for shapes that hold further fields. */
function said(shape: FieldWords['shape'], value: unknown): string {
  const text = String(value);
  switch (shape.is) {
    case 'number':
      if (shape.unit === '°C') return temperatureText(toText(decimalFromNumber(Number(value))));
      return `${spaced(toText(decimalFromNumber(Number(value))))}${shape.unit === undefined ? '' : `\u00a0${shape.unit}`}`;
    case 'share':
      return percent(Number(value));
    case 'day':
    case 'expiry':
      return dayText(text);
    case 'moment':
      return momentText(text);
    case 'grams':
      return exactMass(decimalFromText(text) ?? zero);
    case 'mass':
      return massAsRead(text);
    case 'one':
      return shape.names[text] ?? text;
    case 'many':
      return (value as readonly string[]).map((v) => shape.names[v] ?? v).join(', ');
    case 'check':
      return checkText(text);
    default:
      return text;
  }
}

function readCheck(
  { book, at, rows }: Reader,
  item: Member,
  fields: readonly FieldWords[],
  base: Omit<Row, 'label' | 'text'>,
): void {
  const answer = fields.find((f) => f.key === 'answer');
  const by = item.by === undefined ? undefined : nameIn(book, 'person', String(item.by), at);
  const more = [by, item.note].filter((part) => part !== undefined).join(': ');
  const asks = wordingAt(book.current, String(item.check), at) ?? checkText(String(item.check));
  rows.push({
    ...base,
    label: asks,
    text: `${answer ? said(answer.shape, item.answer) : ''}${more === '' ? '' : ` (${more})`}`,
  });
}

function readFields(
  fields: readonly FieldWords[],
  body: Member,
  path: string,
  place: string,
  headings: readonly string[],
  reader: Reader,
): void {
  for (const field of fields) {
    const value = body[field.key];
    const { shape } = field;
    if (value === undefined || shape.is === 'key' || shape.is === 'body') continue;
    const here = { path: under(path, field.key), place: under(place, field.key), under: headings, label: field.label };
    if (shape.is === 'group') {
      readFields(shape.fields, value as Member, here.path, here.place, [...headings, field.label], reader);
      continue;
    }
    if (shape.is === 'list') {
      for (const [i, item] of (value as readonly Member[]).entries()) {
        const asked = shape.fields.some((f) => f.key === 'answer') && shape.fields.some((f) => f.shape.is === 'check');
        const own = asked ? item.check : item.key;
        const at = [under(here.path, i), own === undefined ? under(here.place, i) : `${here.place}[${String(own)}]`] as const;
        if (asked)
          readCheck(reader, item, shape.fields, {
            path: at[0],
            place: at[1],
            under: [...headings, field.label],
            names: [],
            weight: null,
          });
        else readFields(shape.fields, item, at[0], at[1], [...headings, field.label, `${shape.one} ${i + 1}`], reader);
      }
      continue;
    }
    const ids = shape.is === 'ref' ? [String(value)] : shape.is === 'refs' ? (value as readonly string[]) : [];
    const names =
      shape.is === 'ref' || shape.is === 'refs'
        ? ids.map((id) => ({ to: shape.to, id, name: nameIn(reader.book, shape.to, id, reader.at) }))
        : [];
    reader.rows.push({
      ...here,
      text:
        shape.is === 'weight'
          ? weightAsRead(value as Weight)
          : names.length > 0
            ? names.map((n) => n.name).join(', ')
            : said(shape, value),
      names,
      weight: shape.is === 'weight' ? (value as Weight) : null,
    });
  }
}

/** All answers of a body, in the order of its questions. `at`: when it happened. */
export function rowsOf(book: Book, kind: Kind, body: unknown, at: string): readonly Row[] {
  const reader: Reader = { book, at, rows: [] };
  readFields(fieldsOf[kind], body as Member, '', '', [], reader);
  return reader.rows;
}

/** Questions of the first rank that were not answered. The retort of a firing is told by its charge. */
export const unanswered = (kind: Kind, body: unknown): readonly string[] => {
  const answers = body as Member;
  const told =
    kind === 'firing' && (answers.heats as readonly Member[]).some((heat) => heat.charge !== undefined) ? ['retort'] : [];
  const never = ['of', 'about', 'happened', ...told];
  return fieldsOf[kind].filter((f) => !never.includes(f.key) && answers[f.key] === undefined).map((f) => f.label);
};

/** The name of a row with what it stands under: "Lot 1, Weight". */
export const rowName = (row: Row): string => [...row.under.slice(row.under.length > 1 ? 1 : 0), row.label].join(', ');

/** One row of several readings beside each other; null where a reading has no answer. */
export interface Compared {
  readonly name: string;
  readonly texts: readonly (string | null)[];
  /** Which differ from the reading each was written against. */
  readonly changed: readonly boolean[];
}

/** Rows that differ in any reading. `against[i]` is the reading that reading i was written against (−1: none). */
export function comparedRows(readings: readonly (readonly Row[])[], against: readonly number[]): readonly Compared[] {
  const places = new Map<string, string>();
  for (const rows of readings) for (const row of rows) if (!places.has(row.place)) places.set(row.place, rowName(row));
  const maps = readings.map((rows) => new Map(rows.map((row) => [row.place, row.text])));
  return [...places].flatMap(([place, name]) => {
    const texts = maps.map((map) => map.get(place) ?? null);
    const changed = texts.map((text, i) => {
      const before = against[i] ?? -1;
      return before >= 0 && text !== (texts[before] ?? null);
    });
    return changed.includes(true) ? [{ name, texts, changed }] : [];
  });
}
