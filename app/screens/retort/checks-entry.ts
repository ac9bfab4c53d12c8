/** Answers to a list of checks as a form holds them, and the list they make in an entry. A question without an answer is left out, never a no. */
import type { Body } from '../../core/kinds/index.ts';
import type { Checked } from '../../core/shapes.ts';

/** Plain data by the check's name, so that it goes into drafts. */
export type CheckAnswers = Record<string, { answer: '' | 'yes' | 'no' | 'na'; note: string; by?: string }>;

export const noAnswer = (): CheckAnswers[string] => ({ answer: '', note: '', by: '' });

/** The answers given, in the order of `names`, those to the site's own questions last; undefined when there are none. */
export function checksOf(answers: CheckAnswers, names: readonly string[]): Checked[] | undefined {
  const own = Object.keys(answers).filter((check) => !names.includes(check));
  const given = [...names, ...own].flatMap((check) => {
    const one = answers[check];
    if (!one || one.answer === '') return [];
    const by = one.by ?? '';
    const note = one.note.trim();
    return [{ check, answer: one.answer, ...(by === '' ? {} : { by }), ...(note === '' ? {} : { note }) } as Checked];
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
