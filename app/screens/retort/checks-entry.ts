/** Answers to a list of checks as a form holds them, and the list they make in an entry. A question without an answer is left out, never a no. */
import type { Body } from '../../core/kinds/index.ts';
import type { Checked } from '../../core/shapes.ts';

/** Plain data by the check's name, so that it goes into drafts. */
export type CheckAnswers = Record<string, { answer: '' | 'yes' | 'no' | 'na'; note: string }>;

export const noAnswer = (): CheckAnswers[string] => ({ answer: '', note: '' });

/** The answers given, in the order of `names`; undefined when there are none. */
export function checksOf(answers: CheckAnswers, names: readonly string[]): Checked[] | undefined {
  const given = names.flatMap((check) => {
    const one = answers[check];
    if (!one || one.answer === '') return [];
    return [{ check, answer: one.answer, ...(one.note.trim() === '' ? {} : { note: one.note.trim() }) } as Checked];
  });
  return given.length > 0 ? given : undefined;
}

/** Every check a charge answered, those that are fields of their own first. */
export const answersOf = (body: Body<'charge'>): readonly Checked[] => [
  ...(body.pipeClear ? [{ check: 'pipe-clear', answer: body.pipeClear }] : []),
  ...(body.waterOn ? [{ check: 'water-on', answer: body.waterOn }] : []),
  ...(body.dry ? [{ check: 'dry', answer: body.dry }] : []),
  ...(body.checks ?? []),
];
