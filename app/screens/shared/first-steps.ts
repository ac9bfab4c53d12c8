/**
 * The first steps of a new book, in the order they are taken: who writes comes first, so that whatever follows names its writer. A function of the
 * book and the clock; a step that is done stays in sight until all are.
 */
import type { Book } from '../../core/book/book.ts';
import { standingAt } from '../../core/book/site.ts';
import type { RegisterKind } from '../../core/kinds/index.ts';
import { limitsHref } from '../air/limits/href.ts';
import { newHref } from '../retort/routes.ts';
import { newThingHref, registerHref, standingHref } from './places.ts';

/** Steps that a site takes where it has such a thing: the list does not wait for them. */
const optional = ['plate', 'meter', 'limit'] as const;

export type StepKey = 'person' | 'standing' | 'scale' | 'vessel' | 'retort' | 'stock' | (typeof optional)[number];

export interface FirstStep {
  readonly key: StepKey;
  readonly done: boolean;
  readonly href: string;
}

/** Whether the site states a stock that no entry has brought into the book yet. */
function stockUnwritten(book: Book, now: string): boolean {
  const held = standingAt(book.current, now)?.body.held ?? [];
  const came = (['receipt', 'found', 'stock-take'] as const).some((kind) => book.current.of(kind).some((r) => !r.struck));
  return held.some((item) => item.what === 'stock') && !came;
}

/**
 * The person who writes, the standing, and what a first weighing asks for; the mercury that is already here, where the standing says there is some;
 * then plates, meter and limits, which wait for whoever has them. Null once nothing is left but those and the standing, which has a place of its own.
 */
export function firstSteps(book: Book, now: string): readonly FirstStep[] | null {
  const register = (kind: RegisterKind & StepKey): FirstStep => {
    const done = book.registers[kind].size > 0;
    return { key: kind, done, href: kind === 'limit' ? limitsHref : done ? registerHref(kind) : newThingHref(kind) };
  };
  const stock: readonly FirstStep[] = stockUnwritten(book, now) ? [{ key: 'stock', done: false, href: newHref('receipt') }] : [];
  const standing: FirstStep = { key: 'standing', done: standingAt(book.current, now) !== null, href: standingHref };
  const steps = [register('person'), standing, register('scale'), register('vessel'), ...stock, register('retort')];
  if (steps.every((step) => step.done || step.key === 'standing')) return null;
  return [...steps, ...optional.map(register)];
}

/** The first step that is still open; undefined when none is. */
export const nextStep = (book: Book, now: string): FirstStep | undefined => firstSteps(book, now)?.find((step) => !step.done);
