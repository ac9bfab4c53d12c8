/**
 * What is doubtful about a paper: flags of the entries it rests on, weights nobody knows the uncertainty of, and entries that this program cannot
 * read. Reservations print before every figure; remarks after them. Nothing is held back because it is awkward.
 */
import type { Book } from '../core/book/book.ts';
import type { Reading } from '../core/book/current.ts';
import { type Flag, reservations } from '../core/book/flags.ts';
import type { Entry } from '../core/entry.ts';
import { entryName } from '../words/daybook-naming.ts';
import { frameWords, remarkText } from '../words/papers.ts';
import { commonWords } from '../words/papers-common.ts';
import { weighingsOf } from './weighings.ts';

/** Sentences once each, in their order. */
export const once = (sentences: readonly string[]): string[] => [...new Set(sentences)];

export const isReservation = ({ code }: Flag): boolean => reservations.has(code);

/** What the whole book cannot say, which any paper from it must tell. */
export function bookReservations({ current: { notUnderstood, adrift } }: Book): string[] {
  const kinds = once(notUnderstood.map(({ kind }) => kind)).join(', ');
  return [
    ...(notUnderstood.length > 0 ? [frameWords.notUnderstood(notUnderstood.length, kinds)] : []),
    ...(adrift.length > 0 ? [frameWords.adrift(adrift.length)] : []),
  ];
}

/** An entry of a kind this program does not know that names one of these: what it says of it cannot be left out. */
export function notUnderstoodNaming(book: Book, ids: readonly string[]): Entry | undefined {
  return book.current.notUnderstood.find(({ body }) => {
    const text = JSON.stringify(body);
    return ids.some((id) => text.includes(`"${id}"`));
  });
}

/** Flags with the entry each is about named before it, as a paper over many entries needs them. */
export const namedFlags = (book: Book, flags: readonly Flag[]): string[] =>
  once(flags.map((flag) => commonWords.about(entryName(book, flag.entry), remarkText(flag))));

/** Says how many weights of these entries have no known uncertainty; nothing where all have one. */
export function unknownU(book: Book, readings: readonly Reading[]): string[] {
  const n = readings.flatMap((reading) => weighingsOf(book, reading)).filter(({ weighed }) => !weighed.uKnown).length;
  return n === 0 ? [] : [commonWords.uUnknown(n)];
}

/** Reservations and remarks of a paper about these entries. */
export function doubtsOf(book: Book, readings: readonly Reading[]): { reservations: string[]; remarks: string[] } {
  const flags = readings.flatMap(({ id }) => book.flags.get(id) ?? []);
  return {
    reservations: [...bookReservations(book), ...unknownU(book, readings), ...once(flags.filter(isReservation).map(remarkText))],
    remarks: once(flags.filter((flag) => !isReservation(flag)).map(remarkText)),
  };
}
