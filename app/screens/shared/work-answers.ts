/** Answers to the checks of a work, between a form's list of typed rows and the answers by name that a check list shows. Nothing is judged here. */
import type { Current } from '../../core/book/current.ts';
import type { Kind } from '../../core/kinds/index.ts';
import { askedAt } from '../../words/asked-checks.ts';
import { type WorkOfForm, worksOf } from '../../words/work-cautions.ts';
import { type CheckAnswers, checksOf } from '../retort/checks-entry.ts';

type Beside = Readonly<Record<string, unknown>>;

const goesWith = ({ only }: WorkOfForm, beside: Beside): boolean => !only || only.has.includes(String(beside[only.key] ?? ''));

/** The works that an entry of this kind is about, as its other answers stand. */
export const worksFor = (kind: Kind, beside: Beside): readonly WorkOfForm[] =>
  (worksOf[kind] ?? []).filter((work) => goesWith(work, beside));

interface TypedCheck {
  check: string;
  answer: string;
  by: string;
  note: string;
}

/** The answers by name, from the rows of a form. */
export const answersFrom = (rows: readonly Readonly<Record<string, unknown>>[]): CheckAnswers =>
  Object.fromEntries(
    rows.map((row): [string, CheckAnswers[string]] => [
      String(row.check),
      {
        answer: String(row.answer ?? '') as CheckAnswers[string]['answer'],
        note: String(row.note ?? ''),
        by: String(row.by ?? ''),
      },
    ]),
  );

/** The rows of a form from the answers by name, in the order they are asked. */
export function rowsFrom(current: Current, kind: Kind, at: string, answers: CheckAnswers): TypedCheck[] {
  const names = (worksOf[kind] ?? []).flatMap(({ work }) => askedAt(current, work, at).questions.map((q) => q.check));
  // a note is kept as typed: what is at its ends goes when the entry is made
  return (checksOf(answers, [...new Set(names)]) ?? []).map(({ check, answer, by }) => ({
    check,
    answer,
    by: by ?? '',
    note: answers[check]?.note ?? '',
  }));
}

/** The rows without answers to a work that the other answers leave out by now: nobody sees those any more. */
export function rowsShown<R extends Readonly<Record<string, unknown>>>(
  current: Current,
  kind: Kind,
  at: string,
  beside: Beside,
  rows: readonly R[],
): readonly R[] {
  const namesOf = (works: readonly WorkOfForm[]) =>
    new Set(works.flatMap(({ work }) => askedAt(current, work, at).questions.map((q) => q.check)));
  const shown = namesOf(worksFor(kind, beside));
  const hidden = namesOf((worksOf[kind] ?? []).filter((work) => !goesWith(work, beside)));
  return rows.filter(({ check }) => shown.has(String(check)) || !hidden.has(String(check)));
}
