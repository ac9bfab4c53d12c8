/** What is wrong with the stamps of a firing while they are typed. The rules are the book's own; here they are only asked before anything is kept. */
import type { Daybook } from '../../daybook/book.svelte.ts';
import { problemText } from '../../words/problems.ts';
import type { stages } from './firing-form.ts';

export type Stamp = (typeof stages)[number] | 'opened';
/** Moments, or empty text where nothing was stamped. */
export type Stamps = Readonly<Record<Stamp, string>>;

/** Sentences for each stamp that cannot be meant: a day that has not come, a step before the one it follows. */
export function stampProblems(
  daybook: Pick<Daybook, 'check' | 'clock'>,
  stamps: Stamps,
): Readonly<Record<Stamp, readonly string[]>> {
  const given = Object.fromEntries(Object.entries(stamps).filter(([, moment]) => moment !== ''));
  const read = daybook.check({
    id: 'stamps-as-typed',
    happened: daybook.clock.now(),
    by: null,
    kind: 'firing',
    body: { heats: [{}], ...given },
  });
  const problems = read.ok ? [] : read.problems;
  const of = (stamp: Stamp) => problems.filter((p) => p.field === `body.${stamp}`).map(problemText);
  return {
    lit: of('lit'),
    firstMercury: of('firstMercury'),
    lastMercury: of('lastMercury'),
    finishFrom: of('finishFrom'),
    finishTo: of('finishTo'),
    opened: of('opened'),
  };
}
