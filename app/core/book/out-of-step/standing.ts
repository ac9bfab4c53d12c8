/**
 * The site's standing, expired or contradicted: none stated, an authority past its last day, "none held" with mercury on the book, and entries that run
 * against what the site says it does. The site's own words are all that is held against it.
 */
import { dayOf } from '../../time.ts';
import type { Book } from '../book.ts';
import { stocksAt } from '../movements/gathering.ts';
import { isStock } from '../places.ts';
import { latest } from '../registers.ts';
import { doneOn, standingAt } from '../site.ts';
import { type Asked, fromFlags, type OutOfStep, ofEntry, ofThing } from './item.ts';

function stated(book: Book, at: string): OutOfStep[] {
  const day = dayOf(at);
  const standing = standingAt(book.current, at);
  if (!standing) {
    const first = book.entries[0];
    return first ? [{ code: 'standing-none', group: 'standing', opens: null, since: first.happened, data: {} }] : [];
  }
  const { done, held } = standing.body;
  const lapsed = done.flatMap(({ authority, until }) =>
    authority && authority.expiry !== 'none stated' && authority.expiry < day && (until === undefined || until >= day)
      ? [
          ofEntry('standing', 'authority-expired', standing.id, authority.expiry, {
            name: authority.name,
            number: authority.number,
            due: authority.expiry,
          }),
        ]
      : [],
  );
  const ends = done.flatMap(({ until }) => (until === undefined ? [] : [until])).sort();
  const over =
    doneOn(standing.body, day).length === 0 && lapsed.length === 0
      ? [ofEntry('standing', 'standing-expired', standing.id, ends.at(-1) ?? standing.happened)]
      : [];
  const covering = held.filter(
    ({ since, until }) => (since === undefined || since <= day) && (until === undefined || day <= until),
  );
  const stockUg = [...stocksAt(book.movements.all, at)].reduce((s, [place, { ug }]) => (isStock(place) ? s + ug : s), 0);
  const none = covering.length > 0 && covering.every(({ what }) => what === 'none');
  const denied =
    none && Math.round(stockUg) > 0
      ? [ofEntry('standing', 'standing-holds-none', standing.id, standing.happened, { ug: stockUg })]
      : [];
  return [...lapsed, ...over, ...denied];
}

const authorities = (book: Book, day: string): OutOfStep[] =>
  [...book.registers.authority.values()].flatMap((thing) => {
    const { name, number, expiry, out } = latest(thing).body;
    return expiry !== 'none stated' && expiry < day && (out === undefined || out >= day)
      ? [ofThing('standing', 'authority-expired', 'authority', thing.id, expiry, { name, number, due: expiry })]
      : [];
  });

export const standingOutOfStep = (book: Book, { at }: Asked): OutOfStep[] => [
  ...stated(book, at),
  ...authorities(book, dayOf(at)),
  ...fromFlags(book, 'standing', ['outside-standing', 'no-standing', 'whole-ore-over-mercury']),
];
