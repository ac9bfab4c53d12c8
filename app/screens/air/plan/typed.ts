/**
 * What is typed on a planning page, read as a reckoning takes it: numbers as numbers, empty fields left out. What is refused comes back by field; a
 * field still empty is no fault while the page is being filled in, only a figure that waits.
 */
import type { Result } from '../../../core/result.ts';
import { numberOr } from '../../../daybook/form.svelte.ts';
import { problemText } from '../../../words/problems.ts';
import { airPlan } from '../../../words/screens-air-plan.ts';

/** Fields of a page as typed, by the name the reckoning knows them by. */
export type TypedFields = Readonly<Record<string, string>>;

/** The typed fields as the input of a reckoning. */
export const inputOf = (fields: TypedFields): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(fields).flatMap(([name, text]) => {
      const value = numberOr(text);
      return value === undefined ? [] : [[name, value]];
    }),
  );

const blank = (text: string | undefined): boolean => (text ?? '').trim() === '';

/** Sentences on a field; nothing while it is empty. */
export const said = (result: Result<unknown>, fields: TypedFields, name: string): readonly string[] =>
  result.ok || blank(fields[name])
    ? []
    : result.problems.filter((p) => p.field === name).map((p) => (p.code === 'wrong-type' ? airPlan.notNumber : problemText(p)));

/** What is asked by the fields that are still empty, by name; `asked` has the label of each that is needed. */
export const waiting = (fields: TypedFields, asked: Readonly<Record<string, string>>): readonly string[] =>
  Object.entries(asked).flatMap(([name, label]) => (blank(fields[name]) ? [label] : []));

/** A number of a reckoning's answer, or null where it says why there is none. */
export const numberIn = (answer: Readonly<Record<string, unknown>>, name: string): number | null =>
  typeof answer[name] === 'number' ? answer[name] : null;
