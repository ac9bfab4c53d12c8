/**
 * What the folded parts of a correction hold, in a few words, and which of them is open from the start. It reads what is typed as it stands and judges
 * nothing: half a number is shown as half a number.
 */
import { getContext, setContext } from 'svelte';
import type { Book } from '../../core/book/book.ts';
import type { MassEntry } from '../../parts/mass-entry.ts';
import { massText } from '../../parts/mass-entry.ts';
import { dayText } from '../../words/dates.ts';
import { nameIn } from '../../words/daybook-naming.ts';
import type { FieldWords } from '../../words/daybook-shapes.ts';
import type { WeighingEntry } from '../shared/weighing-entry.ts';
import { isAsked, type Typed, type TypedMoment, type TypedValue } from './typed.ts';

/** Longest text of one answer told in a folded line. */
const longest = 48;

const short = (text: string): string => (text.length > longest ? `${text.slice(0, longest - 1).trimEnd()}…` : text);
const massIn = (entry: MassEntry): string => massText(entry) ?? '';

function weightIn(entry: WeighingEntry): string {
  if (entry.how === 'stated') return massIn(entry.mass);
  if (entry.how === 'volume') return entry.volume.trim() === '' ? '' : `${entry.volume.trim()} ${entry.volumeUnit}`;
  const tare = entry.tareHow === 'none' ? '' : massIn(entry.tare);
  return [massIn(entry.gross), tare].filter((part) => part !== '').join(' − ');
}

function one(book: Book, at: string, { shape }: FieldWords, value: TypedValue): readonly string[] {
  switch (shape.is) {
    case 'weight':
      return [weightIn(value as WeighingEntry)];
    case 'mass':
      return [massIn(value as MassEntry)];
    case 'moment': {
      const { day, time } = value as TypedMoment;
      return [[day === '' ? '' : dayText(day), time].filter(Boolean).join(', ')];
    }
    case 'day':
    case 'expiry':
      return [dayText(String(value))];
    case 'number':
      return [value === '' ? '' : [value, shape.unit].filter(Boolean).join(' ')];
    case 'share':
      return [value === '' ? '' : `${value} %`];
    case 'one':
      return [shape.names[String(value)] ?? String(value)];
    case 'many':
      return [(value as string[]).map((v) => shape.names[v] ?? v).join(', ')];
    case 'ref':
      return [value === '' ? '' : nameIn(book, shape.to, String(value), at)];
    case 'refs':
      return [(value as string[]).map((id) => nameIn(book, shape.to, id, at)).join(', ')];
    case 'group':
      return heldIn(book, at, shape.fields, value as Typed);
    case 'list': {
      const { length } = value as Typed[];
      return [length === 0 ? '' : `${shape.one} × ${length}`];
    }
    case 'text':
      return [String(value)];
    default:
      return [];
  }
}

/** The answers among these fields, each in a few words, in their order; what was not answered is left out. `at`: when it happened. */
export function heldIn(book: Book, at: string, fields: readonly FieldWords[], typed: Typed): readonly string[] {
  return fields
    .filter((field) => field.key !== 'label' && isAsked(field, typed))
    .flatMap((field) => {
      const value = typed[field.key];
      return value === undefined ? [] : one(book, at, field, value);
    })
    .filter((text) => text.trim() !== '')
    .map(short);
}

const key = Symbol('open at');

/** Says which field a form was opened for, by its path in the draft; empty for none. To be called while the form's page is made. */
export const setOpenAt = (path: string): void => {
  setContext(key, path);
};

/** Whether the part at this path holds the field that the form was opened for. */
export function opensHere(): (path: string) => boolean {
  const wanted = getContext<string | undefined>(key) ?? '';
  return (path) => wanted !== '' && (wanted === path || wanted.startsWith(`${path}.`) || wanted.startsWith(`${path}[`));
}
