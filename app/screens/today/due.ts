/**
 * What falls due, in one list: calibrations of scales and meters, inspections of retorts, checks of the place and of people, drums that must go, the last
 * day of an authority, the next count of the stock. Each is told from its lead time on. Things out of use, and people who have left, fall due no more.
 * A check of one person is told to whoever may see it and to nobody else.
 */
import type { Book } from '../../core/book/book.ts';
import { drumsDue } from '../../core/book/drums.ts';
import { leadDaysAt, nextCount, usualLeadDays } from '../../core/book/lead-times.ts';
import type { Hidden } from '../../core/book/may-see.ts';
import { lastChecks } from '../../core/book/out-of-step/due.ts';
import { latest } from '../../core/book/registers.ts';
import { standingAt } from '../../core/book/site.ts';
import { type DueThing, dueThings } from '../../core/kinds/site-says.ts';
import { dayFrom, dayNumber, dayOf } from '../../core/time.ts';
import { dueThingNames } from '../../words/daybook-names-site.ts';
import { checkDueNames } from '../../words/daybook-names-year.ts';
import { todayWords as words } from '../../words/today.ts';
import { stockTakeHref } from '../mercury/stock-take/href.ts';
import { entryHref, registerHref, standingHref } from '../shared/places.ts';

export interface Due {
  readonly text: string;
  readonly href: string;
  readonly day: string;
  /** Days from today; below zero once it is past. */
  readonly inDays: number;
}

type Sees = (what: Hidden) => boolean;
const nobody: Sees = () => false;

/** How far ahead was looked. */
export interface Ahead {
  readonly until: string;
  /** Days of it. */
  readonly days: number;
  /** Things with a lead time of their own, in words. */
  readonly own: readonly string[];
  /** Checks of people are in the book, and whoever asks may not see their days. */
  readonly withheld: boolean;
}

/** How far ahead `dueAt` looks on that day. */
export function aheadAt(book: Book, now: string, sees: Sees = nobody): Ahead {
  const leads = leadDaysAt(book.current, now);
  const day = (days: number): string => dayFrom((dayNumber(dayOf(now)) ?? 0) + days);
  return {
    until: day(usualLeadDays),
    days: usualLeadDays,
    own: dueThings.filter((t) => leads[t] !== usualLeadDays).map((t) => words.ownLead(dueThingNames[t], day(leads[t]))),
    withheld: !sees('personal-air') && lastChecks(book.current).some(({ body }) => body.person !== undefined),
  };
}

/** Everything past or due within its lead time, the most pressing first. `now`: the daybook's clock; `sees`: whether who asks may see it. */
export function dueAt(book: Book, now: string, sees: Sees = nobody): readonly Due[] {
  const { registers, current } = book;
  const today = dayNumber(dayOf(now)) ?? 0;
  const leads = leadDaysAt(current, now);
  const found: Due[] = [];
  const add = (thing: DueThing, day: string | undefined, text: (day: string) => string, href: string) => {
    if (day === undefined) return;
    const inDays = (dayNumber(day) ?? 0) - today;
    if (inDays <= leads[thing]) found.push({ text: text(day), href, day, inDays });
  };
  const inUse = (out: string | undefined): boolean => out === undefined || out >= dayOf(now);
  for (const scale of registers.scale.values()) {
    const { body } = latest(scale);
    if (inUse(body.out))
      add('scale', body.certificate?.due, (day) => words.dueScale(body.label, day), registerHref('scale', scale.id));
  }
  for (const meter of registers.meter.values()) {
    const { body } = latest(meter);
    if (inUse(body.out))
      add('meter', body.calibrated?.due, (day) => words.dueMeter(body.label, day), registerHref('meter', meter.id));
  }
  for (const retort of registers.retort.values()) {
    const { body } = latest(retort);
    if (inUse(body.out))
      add('inspection', body.inspected?.due, (day) => words.dueRetort(body.label, day), registerHref('retort', retort.id));
  }
  for (const drum of drumsDue(current, registers))
    add('drum', drum.due, (day) => words.dueDrum(drum.label, day), registerHref('vessel', drum.vessel));
  for (const { id, body } of lastChecks(current)) {
    const check = checkDueNames[body.what];
    if (body.person === undefined) {
      add('site-check', body.next, (day) => words.dueCheck(check, day), entryHref(id));
      continue;
    }
    const person = registers.person.get(body.person);
    if (!sees('personal-air') || !person || !inUse(latest(person).body.left)) continue;
    add('person-check', body.next, (day) => words.duePerson(check, latest(person).body.name, day), entryHref(id));
  }
  authorities(book, now, (day, name, href) => add('authority', day, (d) => words.dueAuthority(name, d), href));
  const count = nextCount(current, now);
  if (count) add('stock-take', count.day, (day) => words.dueCount(day, count.everyDays), stockTakeHref);
  return found.sort((a, b) => a.inDays - b.inDays);
}

/** Last days of authorities: of the register, and of the standing where the register has not the same one. */
function authorities(book: Book, now: string, add: (day: string, name: string, href: string) => void): void {
  const told = new Set<string>();
  for (const thing of book.registers.authority.values()) {
    const { name, number, expiry, out } = latest(thing).body;
    told.add(`${number}\n${expiry}`);
    if (expiry !== 'none stated' && (out === undefined || out >= dayOf(now)))
      add(expiry, name, registerHref('authority', thing.id));
  }
  for (const { authority, until } of standingAt(book.current, now)?.body.done ?? []) {
    if (!authority || authority.expiry === 'none stated' || (until !== undefined && until < dayOf(now))) continue;
    if (!told.has(`${authority.number}\n${authority.expiry}`)) add(authority.expiry, authority.name, standingHref);
  }
}
