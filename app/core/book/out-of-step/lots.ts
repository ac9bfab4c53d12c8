/** Lots that lie in the safe longer than the site chose, and lots that were not found. Amalgam that lies is mercury that nobody has accounted for yet. */
import { dayNumber, dayOf } from '../../time.ts';
import type { Book } from '../book.ts';
import { lotDaysAt } from '../site-figures.ts';
import { type Asked, fromFlags, type OutOfStep, ofEntry } from './item.ts';

export const lotsOutOfStep = (book: Book, { at, lotDays = lotDaysAt(book.current, at) }: Asked): OutOfStep[] => [
  ...fromFlags(book, 'lots', ['lot-not-found', 'lot-charged-twice', 'lot-unwritten']),
  ...[...book.lots.all.values()].flatMap((lot) => {
    const days = (dayNumber(dayOf(at)) ?? 0) - (dayNumber(dayOf(lot.made)) ?? 0);
    return lot.fate === 'in-safe' && days > lotDays
      ? [ofEntry('lots', 'lot-old', lot.madeBy, lot.made, { label: lot.label, days, ug: lot.net.ug })]
      : [];
  }),
];
