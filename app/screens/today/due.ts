/**
 * What falls due: calibrations of scales, inspections of retorts, checks of the place, drums that must go, the last day of an authority. Things out of
 * use fall due no more. A check of one person is no matter of this list: whose it is and when is for the safety officer.
 */
import type { Book } from '../../core/book/book.ts';
import { drumsDue } from '../../core/book/drums.ts';
import { lastChecks } from '../../core/book/out-of-step/due.ts';
import { latest } from '../../core/book/registers.ts';
import { standingAt } from '../../core/book/site.ts';
import { dayNumber, dayOf } from '../../core/time.ts';
import { checkDueNames } from '../../words/daybook-names-year.ts';
import { todayWords as words } from '../../words/today.ts';
import { entryHref, registerHref, standingHref } from '../shared/places.ts';

export interface Due {
  readonly text: string;
  readonly href: string;
  readonly day: string;
  /** Days from today; below zero once it is past. */
  readonly inDays: number;
}

/** How long before its day a thing is told of. */
export const leadDays = 30;

/** Everything due within the lead time or past, the most pressing first. `now`: the daybook's clock. */
export function dueAt(book: Book, now: string): readonly Due[] {
  const today = dayNumber(dayOf(now)) ?? 0;
  const found: Due[] = [];
  const add = (day: string | undefined, text: (day: string) => string, href: string) => {
    if (day === undefined) return;
    const inDays = (dayNumber(day) ?? 0) - today;
    if (inDays <= leadDays) found.push({ text: text(day), href, day, inDays });
  };
  const inUse = (out: string | undefined): boolean => out === undefined || out >= dayOf(now);
  for (const scale of book.registers.scale.values()) {
    const { body } = latest(scale);
    if (inUse(body.out)) add(body.certificate?.due, (day) => words.dueScale(body.label, day), registerHref('scale', scale.id));
  }
  for (const retort of book.registers.retort.values()) {
    const { body } = latest(retort);
    if (inUse(body.out)) add(body.inspected?.due, (day) => words.dueRetort(body.label, day), registerHref('retort', retort.id));
  }
  for (const drum of drumsDue(book.current, book.registers))
    add(drum.due, (day) => words.dueDrum(drum.label, day), registerHref('vessel', drum.vessel));
  for (const { id, body } of lastChecks(book.current))
    if (body.person === undefined) add(body.next, (day) => words.dueCheck(checkDueNames[body.what], day), entryHref(id));
  for (const done of standingAt(book.current, now)?.body.done ?? []) {
    const expiry = done.authority?.expiry;
    if (done.authority && expiry !== 'none stated' && (done.until === undefined || done.until >= dayOf(now)))
      add(expiry, (day) => words.dueAuthority(done.authority?.name ?? '', day), standingHref);
  }
  return found.sort((a, b) => a.inDays - b.inDays);
}
