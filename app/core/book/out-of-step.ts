/**
 * Out of step: one list of what an auditor would raise, each thing with the entry it opens. It gathers what the book already knows (flags, findings,
 * registers) and adds what only the whole record shows; it changes nothing, forgives nothing and calls nobody to account.
 */
import { compareMoments } from '../time.ts';
import type { Book } from './book.ts';
import { contestedOutOfStep } from './out-of-step/contested.ts';
import { dueOutOfStep } from './out-of-step/due.ts';
import { gainsOutOfStep } from './out-of-step/gains.ts';
import { type Asked, fromFlags, type OutOfStep, outOfStepGroups } from './out-of-step/item.ts';
import { lateOutOfStep } from './out-of-step/late.ts';
import { lotsOutOfStep } from './out-of-step/lots.ts';
import { recordOutOfStep } from './out-of-step/record.ts';
import { runsOutOfStep } from './out-of-step/runs.ts';
import { standingOutOfStep } from './out-of-step/standing.ts';
import { weightsOutOfStep } from './out-of-step/weights.ts';
import type { Period } from './period.ts';

export { type Asked, type OutOfStep, type OutOfStepGroup, outOfStepGroups, type RecordNotice } from './out-of-step/item.ts';
export { startingLotDays } from './out-of-step/lots.ts';

/** A day stands at its end among moments: newest first means by day, and by the clock within it. */
const newer = (a: string, b: string): number => {
  const [one, other] = [a.slice(0, 10), b.slice(0, 10)];
  return one !== other ? (one < other ? 1 : -1) : a.length > 10 && b.length > 10 ? compareMoments(b, a) : b.length - a.length;
};

/** Everything out of step, group by group in their order, in each the newest first; what nothing dates stands last. */
export function outOfStepOf(book: Book, asked: Asked): readonly OutOfStep[] {
  const all = [
    ...contestedOutOfStep(book),
    ...recordOutOfStep(book, asked),
    ...standingOutOfStep(book, asked),
    ...gainsOutOfStep(book),
    ...weightsOutOfStep(book),
    ...runsOutOfStep(book),
    ...fromFlags(book, 'checks', ['check-no']),
    ...dueOutOfStep(book, asked),
    ...lotsOutOfStep(book, asked),
    ...lateOutOfStep(book),
  ];
  return outOfStepGroups.flatMap((group) => all.filter((item) => item.group === group).sort((a, b) => newer(a.since, b.since)));
}

/**
 * Those that concern a period: what began in it, and what began before it and still stands (things due, lots, the standing, oddities that nothing
 * dates). Ends are whole days, or moments of which the day counts; null: open.
 */
export function concerning(items: readonly OutOfStep[], { from, to }: Pick<Period, 'from' | 'to'>): readonly OutOfStep[] {
  const stands: ReadonlySet<OutOfStep['code']> = new Set([
    'scale-due',
    'scale-no-certificate',
    'meter-due',
    'retort-due',
    'check-overdue',
    'check-not-done',
    'drum-due',
    'authority-expired',
    'standing-none',
    'standing-expired',
    'standing-holds-none',
    'lot-old',
    'notice',
  ]);
  return items.filter(({ code, since }) => {
    const day = since.slice(0, 10);
    if (to !== null && day > to.slice(0, 10)) return false;
    return from === null || stands.has(code) || day >= from.slice(0, 10);
  });
}
