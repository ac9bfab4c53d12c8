/**
 * What is shown of the Mercury room, as it stands in the address: `#/mercury` for the newest answer and the index,
 * `#/mercury/account/from=2025-07-01/to=2025-12-31` for the account of a period of days or of moments (the same without `account` leads there too),
 * `#/mercury/account/whole` for the whole book, `#/mercury/place/vessel%3Aabc/page=2` for the movements of one place.
 */
import type { Period } from '../../core/book/account.ts';
import type { Book } from '../../core/book/book.ts';
import { periodFrom } from '../../core/book/period.ts';
import { afterItsCount } from '../../core/book/periods.ts';
import { good, type Result } from '../../core/result.ts';
import { roomHref } from '../shared/places.ts';

export interface Days {
  /** First day or moment, inside (a count itself lies before); empty: from the beginning. */
  readonly from: string;
  /** Last day or moment, inside; empty: to the end. */
  readonly to: string;
}

/** A band of the flow drawing, by its name, and the days of its period. */
export interface ShownBand extends Days {
  readonly id: string;
}

export type Shown =
  | { readonly page: 'room' | 'stocks' | 'yields' }
  /** `chosen` false: nothing was asked for, and the newest counted period is shown where there is one. */
  | ({ readonly page: 'account'; readonly chosen: boolean } & Days)
  /** `place` empty: every place. `number` counts pages from 1. */
  | {
      readonly page: 'movements';
      readonly place: string;
      readonly number: number;
      /** Only those of a band of the flow of a period. */
      readonly band?: ShownBand;
    };

const pairsOf = (parts: readonly string[]): ReadonlyMap<string, string> =>
  new Map(parts.filter((p) => p.includes('=')).map((p) => [p.slice(0, p.indexOf('=')), p.slice(p.indexOf('=') + 1)]));

/** The days that the parts of an address name; empty where open. */
export function daysFrom(parts: readonly string[]): Days {
  const pairs = pairsOf(parts);
  return { from: pairs.get('from') ?? '', to: pairs.get('to') ?? '' };
}

/** Read from the parts of the address after the room; what is not understood is left out. */
export function shownFrom(rest: readonly string[]): Shown {
  const pairs = pairsOf(rest);
  const page = Number(pairs.get('page') ?? 1);
  const number = Number.isInteger(page) && page > 0 ? page : 1;
  if (rest[0] === 'place' && rest[1] !== undefined) return { page: 'movements', place: rest[1], number };
  const days = daysFrom(rest);
  const band = pairs.get('band');
  if (rest[0] === 'movements') return { page: 'movements', place: '', number, ...(band ? { band: { id: band, ...days } } : {}) };
  if (rest[0] === 'stocks' || rest[0] === 'yields') return { page: rest[0] };
  const chosen = days.from !== '' || days.to !== '' || rest[1] === 'whole';
  return rest[0] === 'account' || chosen ? { page: 'account', chosen, ...days } : { page: 'room' };
}

const room = roomHref('mercury');

export const accountHref = `${room}/account`;
export const stocksHref = `${room}/stocks`;
export const yieldsHref = `${room}/yields`;

/** The account of a period; of the whole book where both ends are open. */
export function periodHref({ from, to }: Days): string {
  const pairs = [
    ['from', from],
    ['to', to],
  ].filter(([, day]) => day !== '');
  const parts = pairs.length === 0 ? ['whole'] : pairs.map(([key, day]) => `${key}=${encodeURIComponent(day ?? '')}`);
  return [accountHref, ...parts].join('/');
}

/** A period as an address names it. */
export const daysOf = ({ from, to }: Pick<Period, 'from' | 'to'>): Days => ({ from: from ?? '', to: to ?? '' });

/** Movements of a place, or of every place where it is empty. */
export function movementsHref(place = '', number = 1): string {
  const base = place === '' ? `${room}/movements` : `${room}/place/${encodeURIComponent(place)}`;
  return number > 1 ? `${base}/page=${number}` : base;
}

/** Movements of a band of the flow of a period. */
export function bandHref(id: string, { from, to }: Days, number = 1): string {
  const pairs = [
    ['band', id],
    ['from', from],
    ['to', to],
    ['page', number > 1 ? String(number) : ''],
  ].filter(([, value]) => value !== '');
  return [`${room}/movements`, ...pairs.map(([key, value]) => `${key}=${encodeURIComponent(value ?? '')}`)].join('/');
}

/** The period of days or moments that the address asks for, or why there is none; one that begins at a count of this book begins after it. */
export function periodOf({ from, to }: Days, book?: Book): Result<Period> {
  const period = periodFrom({ from: from === '' ? undefined : from, to: to === '' ? undefined : to });
  return period.ok && book ? good(afterItsCount(book, period.value)) : period;
}
