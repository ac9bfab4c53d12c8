/** The questions asked at a work on a day: those that come with the program, as the site has worded, left out or added to them; and an old answer's question in the words it was asked in. */
import { type CheckListNow, listFrom, wordingAt } from '../core/book/check-lists.ts';
import type { Current } from '../core/book/current.ts';
import { checkListAt } from '../core/book/site-says.ts';
import type { Work } from '../core/kinds/check-list.ts';
import { type CheckPhase, type CheckWords, checkText, runChecks } from './run-checks.ts';
import { workChecks } from './work-checks.ts';

/** The lists that come with the program. */
export const shippedChecks: Readonly<Record<Work, readonly CheckWords[]>> = {
  'run-before': runChecks.before,
  'run-during': runChecks.during,
  'run-after': runChecks.after,
  ...workChecks,
};

/** The list of a work that holds at that moment. */
export const askedAt = (current: Current, work: Work, at: string): CheckListNow =>
  listFrom(shippedChecks[work], checkListAt(current, work, at)?.body ?? null);

/** The questions of a phase of a run that hold at that moment. */
export const runQuestionsAt = (current: Current, phase: CheckPhase, at: string): readonly CheckWords[] =>
  askedAt(current, `run-${phase}`, at).questions;

/** The question of an answer given at that moment; its name as entered where neither program nor site has words for it. */
export const askedText = (current: Current, check: string, at: string): string =>
  wordingAt(current, check, at) ?? checkText(check);
