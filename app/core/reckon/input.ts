/**
 * The shared pieces of what a reckoning takes in: masses as text, numbers as numbers, uncertainties not below zero, fineness in parts per
 * thousand. Nothing here guesses: a number written as text, an unknown field or a bare ounce is refused.
 */
import { type Decimal, decimalFromNumber } from '../decimal.ts';
import { gramsFromText } from '../mass.ts';
import { read } from '../read.ts';
import { bad, type Problem, type Result } from '../result.ts';
import { millilitresFromText } from '../volume.ts';
import { z } from '../zod.ts';

/** A schema whose value comes from a reader of ours, with the reader's own problems. */
export const through = <T>(reader: (value: unknown, field: string) => Result<T>) =>
  z.unknown().transform((value, context): T => {
    const got = reader(value, '');
    if (got.ok) return got.value;
    for (const p of got.problems)
      context.issues.push({ code: 'custom', params: { code: p.code, ...p.data }, message: p.code, input: value });
    return z.NEVER;
  });

/** "955.6 g" as exact grams. */
export const grams = through<Decimal>(gramsFromText);
/** "186.0 ml" as exact millilitres. */
export const millilitres = through<Decimal>(millilitresFromText);

const numberAtLeast = (least: number, code: string) => z.number().refine((value) => value >= least, { params: { code, least } });

/** Any finite number. */
export const anyNumber = z.number();
/** A number that cannot be meant below zero. */
export const notNegative = numberAtLeast(0, 'below-zero');
/** A standard uncertainty. */
export const uncertainty = numberAtLeast(0, 'u-below-zero');
/** A mixing factor. */
export const oneOrMore = numberAtLeast(1, 'mixing-below-one');

/** A number as the exact decimal it is written as. */
export const decimal = z.number().transform(decimalFromNumber);
export const decimalNotNegative = notNegative.transform(decimalFromNumber);
export const decimalUncertainty = uncertainty.transform(decimalFromNumber);

/** Parts per thousand, 0 to 1000, exact. */
export const permille = z
  .number()
  .refine((value) => value >= 0 && value <= 1000, { params: { code: 'fineness-range' } })
  .transform(decimalFromNumber);

/** One calculation: its input in, its output or every problem out. */
export type Topic = (input: unknown) => Result<Record<string, unknown>>;

/** The first problem of each field: one line per field. */
export function onePerField(problems: readonly Problem[]): readonly Problem[] {
  const seen = new Set<string>();
  return problems.filter((p) => !seen.has(p.field) && seen.add(p.field));
}

/** A topic from its schema and its calculation; the calculation sees only what the schema has accepted. */
export const topic =
  <T>(schema: z.ZodType<T>, compute: (input: T) => Result<Record<string, unknown>>): Topic =>
  (input) => {
    const got = read(schema, input);
    return got.ok ? compute(got.value) : bad(...onePerField(got.problems));
  };
