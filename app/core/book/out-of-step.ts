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
export { startingLotDays } from './site-figures.ts';

/** A day stands at its end among moments: newest first means by day, and by the clock within it. */
const newer = (a: string, b: string): number => {
  const [one, other] = [a.slice(0, 10), b.slice(0, 10)];
  return one !== other ? (one < other ? 1 : -1) : a.length > 10 && b.length > 10 ? compareMoments(b, a) : b.length - a.length;
};

/** What only the book tells, whoever asks and when: worked out once for a book, since Today and the list ask for it again and again. */
const byBook = new WeakMap<Book, readonly OutOfStep[]>();
function whoeverAsks(book: Book): readonly OutOfStep[] {
  const known = byBook.get(book);
  if (known) return known;
  const found = [
    ...contestedOutOfStep(book),
    ...gainsOutOfStep(book),
    ...weightsOutOfStep(book),
    ...runsOutOfStep(book),
    ...fromFlags(book, 'checks', ['check-no']),
    ...lateOutOfStep(book),
  ];
  byBook.set(book, found);
  return found;
}

/** What the moment of asking, the site's days and the files tell as well. */
const whenAsked = (book: Book, asked: Asked): readonly OutOfStep[] => [
  ...recordOutOfStep(book, asked),
  ...standingOutOfStep(book, asked),
  ...dueOutOfStep(book, asked),
  ...lotsOutOfStep(book, asked),
];

/** How many things are out of step: the length of the list, without putting it in order. */
export const countOutOfStep = (book: Book, asked: Asked): number => whoeverAsks(book).length + whenAsked(book, asked).length;

/** Everything out of step, group by group in their order, in each the newest first; what nothing dates stands last. */
export function outOfStepOf(book: Book, asked: Asked): readonly OutOfStep[] {
  const all = [...whoeverAsks(book), ...whenAsked(book, asked)];
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
