/**
 * A body of any kind as a form holds it, and the body it makes. Nothing is judged here: what is half typed goes through as typed and the schema
 * says what is wrong with it. Filling a form and making the body again without a change gives the same body.
 */
import { decimalFromNumber, decimalFromText, shifted, toNumber, toText } from '../../core/decimal.ts';
import type { Weight } from '../../core/shapes.ts';
import { clockOf, dayOf, minutesOf } from '../../core/time.ts';
import { type MassEntry, massEntry, massText, noMass } from '../../parts/mass-entry.ts';
import type { Clock, Timing } from '../../parts/moment.ts';
import type { FieldWords } from '../../words/daybook-shapes.ts';
import { noWeighing, type WeighingEntry, weighingEntry, weightOf } from '../shared/weighing-entry.ts';

/** A day and time as typed; `was` is the moment it was filled from, so that untouched it keeps its offset and its seconds. */
export interface TypedMoment {
  day: string;
  time: string;
  timing: Timing;
  was?: string;
}

export type TypedValue = string | string[] | MassEntry | WeighingEntry | TypedMoment | Typed | Typed[];
/** The fields of a form by their names on disk: plain data only, as it goes into drafts. */
export interface Typed {
  [key: string]: TypedValue;
}

type Member = Readonly<Record<string, unknown>>;

export const typedMoment = (moment: string | undefined): TypedMoment => ({
  day: moment === undefined ? '' : dayOf(moment),
  time: moment === undefined ? '' : clockOf(moment),
  timing: 'exact',
  was: moment ?? '',
});

/** The moment typed; `offset` goes with one that was not there before. Undefined while both fields are empty. */
export function momentOf({ day, time, was = '' }: TypedMoment, offset: string): string | undefined {
  if (day === '' && time === '') return undefined;
  if (was !== '' && day === dayOf(was) && time === clockOf(was)) return was;
  return `${day}T${time}${was === '' ? offset : was.slice(-6)}`;
}

/** The machine's clock as it would read at an entry's own offset ("+13:00"), so that "now" in its fields is a time beside the others. */
export function clockThere(clock: Clock, offset: string): Clock {
  const minutes = (text: string) => (text.startsWith('-') ? -1 : 1) * (Number(text.slice(1, 3)) * 60 + Number(text.slice(4, 6)));
  const there = () => {
    const at = new Date(((minutesOf(clock.now()) ?? 0) + minutes(offset)) * 60_000);
    return `${at.toISOString().slice(0, 16)}${offset}`;
  };
  return { now: there, offsetAt: () => offset };
}

/** The scale that a weighing begins with, and the unit it reads in. */
export interface UsualScale {
  readonly scale: string;
  readonly unit: MassEntry['unit'];
}

function filledOne(field: FieldWords, value: unknown, usual: UsualScale | undefined): TypedValue {
  const { shape } = field;
  switch (shape.is) {
    case 'mass':
      return value === undefined ? noMass() : massEntry(String(value));
    case 'weight':
      return value === undefined ? noWeighing(usual?.scale, usual?.unit) : weighingEntry(value as Weight);
    case 'moment':
      return typedMoment(value === undefined ? undefined : String(value));
    case 'many':
    case 'refs':
      return [...((value ?? []) as readonly string[])];
    case 'group':
      return filled(shape.fields, (value ?? {}) as Member, usual);
    case 'list':
      return ((value ?? []) as readonly Member[]).map((item) => filled(shape.fields, item, usual));
    case 'number':
      return value === undefined ? '' : toText(decimalFromNumber(Number(value)));
    case 'share':
      return value === undefined ? '' : toText(shifted(decimalFromNumber(Number(value)), 2));
    default:
      return value === undefined ? '' : String(value);
  }
}

/** Fields filled from a body; an empty body gives empty fields, their weighings on the usual scale where one is given. */
export const filled = (fields: readonly FieldWords[], body: Member, usual?: UsualScale): Typed =>
  Object.fromEntries(
    fields.filter((f) => f.shape.is !== 'body').map((field) => [field.key, filledOne(field, body[field.key], usual)]),
  );

/** The fields with one item in every list, those within others too: what a draft is held against. */
export const oneOfEach = (fields: readonly FieldWords[]): Typed => {
  const typed = filled(fields, {});
  for (const { key, shape } of fields) {
    if (shape.is === 'group') typed[key] = oneOfEach(shape.fields);
    if (shape.is === 'list') typed[key] = [oneOfEach(shape.fields)];
  }
  return typed;
};

const text = (typed: string): string | undefined => (typed.trim() === '' ? undefined : typed.trim());

/** The number typed, moved by powers of ten; what is no number goes through as text. */
function numeric(typed: string, power: number): number | string | undefined {
  const plain = text(typed)?.replace('−', '-');
  if (plain === undefined) return undefined;
  const read = decimalFromText(plain);
  return read ? toNumber(shifted(read, power)) : plain;
}

function madeOne(field: FieldWords, value: TypedValue, offset: string): unknown {
  const { shape } = field;
  switch (shape.is) {
    case 'mass':
      return massText(value as MassEntry);
    case 'weight':
      return weightOf(value as WeighingEntry);
    case 'moment':
      return momentOf(value as TypedMoment, offset);
    case 'many':
    case 'refs':
      return (value as string[]).length > 0 || field.needed ? [...(value as string[])] : undefined;
    case 'group': {
      const made = bodyOf(shape.fields, value as Typed, offset);
      return Object.values(made).some((v) => v !== undefined) ? made : undefined;
    }
    case 'list': {
      const items = (value as Typed[]).map((item) => bodyOf(shape.fields, item, offset));
      return items.length > 0 || field.needed ? items : undefined;
    }
    case 'number':
      return numeric(value as string, 0);
    case 'share':
      return numeric(value as string, -2);
    default:
      return text(value as string);
  }
}

/** Whether a field is asked, given the answers beside it. */
export const isAsked = (field: FieldWords, beside: Typed): boolean =>
  field.only === undefined || field.only.has.includes(String(beside[field.only.key]));

/** The body that the fields make; `offset` ("+13:00") goes with moments that were not there before. */
export const bodyOf = (fields: readonly FieldWords[], typed: Typed, offset: string): Record<string, unknown> =>
  Object.fromEntries(
    fields.flatMap((field) => {
      const value = typed[field.key];
      if (value === undefined || !isAsked(field, typed)) return [];
      const made = madeOne(field, value, offset);
      return made === undefined ? [] : [[field.key, made]];
    }),
  );

/** All keys of parts in a form. */
function keysIn(typed: TypedValue): readonly string[] {
  if (typeof typed === 'string') return [];
  if (Array.isArray(typed)) return typed.flatMap((item) => (typeof item === 'string' ? [] : keysIn(item)));
  return Object.entries(typed).flatMap(([key, value]) =>
    key === 'key' && typeof value === 'string' ? [value] : typeof value === 'object' ? keysIn(value as TypedValue) : [],
  );
}

/** An empty item of a list, with a key that no part of the form has. */
export function newItem(fields: readonly FieldWords[], whole: Typed, usual?: UsualScale): Typed {
  const item = filled(fields, {}, usual);
  const most = Math.max(0, ...keysIn(whole).map((key) => (/^\d+$/.test(key) ? Number(key) : 0)));
  if (fields.some((f) => f.shape.is === 'key')) item.key = String(most + 1);
  return item;
}
