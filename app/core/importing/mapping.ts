/**
 * Which column is which field, and how its cells are written: the unit where a cell has none, the decimal mark, the order of day, month and year. Said
 * once for a column and never guessed from the cells. A heading can say it itself: "body.weight.mass [ozt, comma]", "happened [day-month-year]".
 */
import { evidenceName } from '../entry.ts';
import type { Kind } from '../kinds/index.ts';
import { massUnits } from '../mass.ts';
import { label } from '../shapes.ts';
import { z } from '../zod.ts';
import { importFields, isWeight, plainPath } from './fields.ts';
import { mostColumns, separators } from './separated.ts';

/** Orders of day, month and year. */
export const dayForms = ['year-month-day', 'day-month-year', 'month-day-year'] as const;
export type DayForm = (typeof dayForms)[number];

/** `ozt-dwt-gr`: three numbers in a cell, ounces, pennyweights and grains, however they are set apart. */
export const columnUnits = [...massUnits, 'ozt-dwt-gr', 'ml', 'l', 'fl-oz-imp', 'fl-oz-us', 'percent'] as const;
export type ColumnUnit = (typeof columnUnits)[number];

export const decimalMarks = ['point', 'comma'] as const;

const settings = {
  unit: z.enum(columnUnits).optional(),
  decimal: z.enum(decimalMarks).optional(),
  days: z.enum(dayForms).optional(),
};
const fieldPath = z.string().max(200);

const columnShape = z.strictObject({ column: z.string().max(200), field: fieldPath, ...settings });
export type ColumnMapping = z.infer<typeof columnShape>;
export type CellSettings = Pick<ColumnMapping, 'unit' | 'decimal' | 'days'>;

export const mapping = z.strictObject({
  separator: z.enum(Object.keys(separators) as [keyof typeof separators, ...(keyof typeof separators)[]]).optional(),
  /** One for each column; an empty field leaves the column out. */
  columns: z.array(columnShape).max(mostColumns).optional(),
  /** What is the same for every row and stands in no column, written as a cell would be. */
  same: z
    .array(z.strictObject({ field: fieldPath, text: z.string().max(4000), ...settings }))
    .max(60)
    .optional(),
  /** The offset of local time where a cell has none: "+13:00". Left out: the machine's. */
  offset: z
    .string()
    .regex(/^[+-]\d\d:\d\d$/)
    .optional(),
  /** Pictures of the old book's pages, by the page as its column has it; without a page, for every row. */
  pictures: z
    .array(z.strictObject({ file: evidenceName, page: label.optional(), shows: label.optional() }))
    .max(200)
    .optional(),
});
export type Mapping = z.infer<typeof mapping>;

/** Columns an export writes that no import takes: they belong to the book they were written in. */
export const ofTheOtherBook = ['written', 'desk', 'n', 'corrected', 'hash', 'prev', 'format'] as const;
/** Columns an export writes that must be empty, or "no", in what is taken over. */
export const mustBeEmpty = ['struck', 'contested'] as const;

const short: Readonly<Record<string, string>> = {
  date: 'happened',
  day: 'happened',
  when: 'happened',
  book: 'transcribed.book',
  page: 'transcribed.page',
};

/** The field a path or a heading stands for, with the path as it is kept; null where it is none. */
export function fieldFor(kind: Kind, said: string): string | null {
  const fields = importFields(kind);
  const tidy = said.trim();
  for (const path of [tidy, `body.${tidy}`, short[tidy.toLowerCase()] ?? '']) {
    const plain = plainPath(path);
    if (path.includes('[]') || path === '' || /\[\d{4,}\]/.test(path)) continue;
    if (isWeight(fields, plain)) return `${path}.mass`;
    if (fields.leaves.has(plain) || fields.groups.has(plain)) return path;
  }
  return null;
}

/** What a heading says of its column: its name, and in brackets at its end how its cells are written. */
export function headingSays(heading: string): { readonly name: string } & CellSettings {
  const match = /^(.*\S)\s*\[([^\]]*[a-z][^\]]*)\]$/i.exec(heading);
  if (!match) return { name: heading };
  const said: { unit?: ColumnUnit; decimal?: 'point' | 'comma'; days?: DayForm } = {};
  for (const word of (match[2] ?? '').split(',').map((part) => part.trim())) {
    const unit = columnUnits.find((one) => one === word);
    const decimal = decimalMarks.find((one) => one === word);
    const days = dayForms.find((one) => one === word);
    if (unit) said.unit = unit;
    else if (decimal) said.decimal = decimal;
    else if (days) said.days = days;
    else return { name: heading };
  }
  return { name: match[1] ?? heading, ...said };
}

/** The mapping that the headings themselves give; a column that none of them names is left for a person to place. */
export function mappingFromHeadings(kind: Kind, headings: readonly string[]): readonly ColumnMapping[] {
  return headings.map((column) => {
    const { name, ...said } = headingSays(column);
    return { column, field: fieldFor(kind, name) ?? '', ...said };
  });
}
