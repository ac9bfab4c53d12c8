/**
 * What is shown of the Mercury room, as it stands in the address: `#/mercury/from=2025-07-01/to=2025-12-31` for a period of days,
 * `#/mercury/place/vessel%3Aabc/page=2` for the movements of one place, `#/mercury/movements` for all of them.
 */
import type { Period } from '../../core/book/account.ts';
import { bad, good, type Problem, problem, type Result } from '../../core/result.ts';
import { isDay } from '../../core/time.ts';
import { roomHref } from '../shared/places.ts';

export interface Days {
  /** First day, inside; empty: from the beginning. */
  readonly from: string;
  /** Last day, inside; empty: to the end. */
  readonly to: string;
}

/** A band of the flow drawing, by its name, and the days of its period. */
export interface ShownBand extends Days {
  readonly id: string;
}

export type Shown =
  | ({ readonly page: 'room' } & Days)
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
  return { page: 'room', ...days };
}

const room = roomHref('mercury');

export function periodHref({ from, to }: Days): string {
  const pairs = [
    ['from', from],
    ['to', to],
  ].filter(([, day]) => day !== '');
  return [room, ...pairs.map(([key, day]) => `${key}=${encodeURIComponent(day ?? '')}`)].join('/');
}

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

/** The period of whole days that the address asks for, or why there is none. */
export function periodOf({ from, to }: Days): Result<Period> {
  const problems: Problem[] = [];
  for (const [name, day] of [
    ['from', from],
    ['to', to],
  ] as const)
    if (day !== '' && !isDay(day)) problems.push(problem('not-a-day', name));
  if (problems.length === 0 && from !== '' && to !== '' && to < from)
    problems.push(problem('period-reversed', 'to', { from, to }));
  return problems.length > 0 ? bad(...problems) : good({ from: from === '' ? null : from, to: to === '' ? null : to });
}
